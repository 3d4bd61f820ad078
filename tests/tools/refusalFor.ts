import type { Refusal } from '../../src/contract/reading.ts';
import { REFUSALS, type RefusalCode } from '../../src/contract/refusals.ts';

/** A refusal in the words of the table. */
export function refusalFor(code: RefusalCode, evidence?: Refusal['evidence']): Refusal {
  const { cause, remedy } = REFUSALS[code];
  return { code, message: cause, remedy, ...(evidence ? { evidence } : {}) };
}
