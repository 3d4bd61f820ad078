import type { AcceptedReading, Weight } from '../../contract/reading.ts';
import type { StandRecord } from '../../contract/logbook.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import { wheelOfSetup } from '../../job/proposals.ts';
import { proposedPlan, weightsByPlace } from '../../job/weightPlan.ts';
import type { PracticeState } from '../../session/practice/practiceRoom.ts';

/** The one thing to do next at the practice wheel. */
export type PracticeStep =
  | { readonly todo: 'guess' | 'read' | 'again' | 'prove' | 'done' | 'leave' }
  | { readonly todo: 'stick'; readonly weights: readonly Weight[] };

/** The weights on hand, as the person's stand has them; none entered: whole pieces and halves, by the wheel's step. */
export type Stock = StandRecord['stock'];

/** A common strip of 5 g is 13 mm long. */
const STRIP_MM_PER_G = 13 / 5;

/** What a practice wheel asks for, from what has been done with it and the weights on hand. */
export function practiceStep(state: PracticeState, stock: Stock): PracticeStep {
  const { stand, guess, sweeps, weights, truthShown } = state;
  const last = sweeps.at(-1);
  if (last === undefined) {
    return { todo: guess === null && weights.length === 0 ? 'guess' : 'read' };
  }
  if (last.withWeights !== weights) return { todo: 'prove' };
  const { reading } = last.result;
  if (reading.status === 'refused') return { todo: 'again' };
  const advised = proposedWeights(reading, stand.setup, stock);
  if (advised.length > 0) return { todo: 'stick', weights: advised };
  return { todo: truthShown ? 'leave' : 'done' };
}

/** The same proposal as for a wheel of the shed; with no weight that fits, whole pieces and halves. */
function proposedWeights(
  reading: AcceptedReading,
  setup: SweepSetup,
  stock: Stock,
): readonly Weight[] {
  const wheel = wheelOfSetup('practice', setup, '');
  const plan = proposedPlan(reading, wheel, {
    stock: stock.length > 0 ? stock : cutStock(setup.weightStepG),
  });
  if (plan.ok) return weightsByPlace(plan.value);
  return plan.failure.code === 'stock-empty' && stock.length > 0
    ? proposedWeights(reading, setup, [])
    : [];
}

/** The step is half a piece: of halves alone a strip for an ordinary wheel would go over two places. */
function cutStock(stepG: number): Stock {
  return [stepG, 2 * stepG].map((massG) => ({
    label: '',
    massG,
    lengthMm: massG * STRIP_MM_PER_G,
    fitting: 'adhesive' as const,
  }));
}
