import type { Outcome } from '../../../src/contract/outcome.ts';

/** The value of an outcome that must be there; the failure is shown when it is not. */
export function valueOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`failed: ${JSON.stringify(outcome.failure)}`);
  return outcome.value;
}
