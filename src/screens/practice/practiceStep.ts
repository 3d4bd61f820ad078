import type { Weight } from '../../contract/reading.ts';
import type { RefusalCode } from '../../contract/refusals.ts';
import type { PracticeState } from '../../session/practice/practiceRoom.ts';
import { readingSummary } from '../read/readingSummary.ts';

/** The one thing to do next at the practice wheel. */
export type PracticeStep =
  | { readonly todo: 'guess' | 'read' | 'prove' | 'done' | 'leave' }
  | { readonly todo: 'again'; readonly code: RefusalCode }
  | { readonly todo: 'stick'; readonly weights: readonly Weight[] };

/** What a practice wheel asks for, from what has been done with it. */
export function practiceStep(state: PracticeState): PracticeStep {
  const { stand, guess, sweeps, weights, truthShown } = state;
  const last = sweeps.at(-1);
  if (last === undefined) {
    return { todo: guess === null && weights.length === 0 ? 'guess' : 'read' };
  }
  if (last.withWeights !== weights) return { todo: 'prove' };
  const { reading } = last.result;
  if (reading.status === 'refused') return { todo: 'again', code: reading.refusals[0]!.code };
  const advised = readingSummary(reading, stand.setup).weights;
  if (advised.length > 0) return { todo: 'stick', weights: advised };
  return { todo: truthShown ? 'leave' : 'done' };
}
