import type { WeightPlan } from '../../job/weightPlan.ts';

/**
 * The weights that the person settled on for a reading, from the screen where they were chosen to
 * the one that leads the hand. Gone with the page: they can be chosen again at any time.
 */
const plans = new Map<string, WeightPlan>();

export function settlePlan(entryId: string, plan: WeightPlan): void {
  plans.set(entryId, plan);
}

export function settledPlan(entryId: string): WeightPlan | null {
  return plans.get(entryId) ?? null;
}
