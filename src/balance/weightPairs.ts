import type { Load } from './weightStock.ts';
import type { Tables } from './weightTables.ts';

/** A load at an angle of the grid, counted from the light spot clockwise. */
export interface Placed {
  readonly load: Load;
  readonly step: number;
}

/** Which pairs of places a search takes. */
export interface PairRule {
  readonly mayOppose: boolean;
  /** Their pulls add up to less than this, g·mm, each by itself. */
  readonly belowGmm: number;
}

/** Searches are for less than a limit; what meets it exactly counts as well, g·mm. */
export const ROUNDING_GMM = 1e-9;

/** Whether a load may go to a step with another one in its place. */
export function mayPair(
  count: number,
  { cos }: Tables,
  { beside, rule }: { readonly beside: Placed; readonly rule: PairRule },
  load: Load,
  step: number,
): boolean {
  const between = cos[(step - beside.step + count) % count]!;
  return (
    standApart(count, beside, load, step) &&
    (rule.mayOppose || goTogether(beside.load.momentGmm, load.momentGmm, between))
  );
}

/** Whether what was found is two places that work against one another. */
export function isOpposed(
  { placed: [first, second] }: { readonly placed: readonly Placed[] },
  { cos }: Tables,
): boolean {
  if (!first || !second) return false;
  const between = cos[Math.abs(second.step - first.step)]!;
  return !goTogether(first.load.momentGmm, second.load.momentGmm, between);
}

/**
 * Two pulls with an angle of that cosine between them together pull at least as much as the stronger
 * alone: |a + b| ≥ max(a, b), for equal ones up to 120° apart. Beyond, one undoes part of the other.
 */
function goTogether(a: number, b: number, cosine: number): boolean {
  return 2 * Math.max(a, b) * cosine >= -Math.min(a, b) - ROUNDING_GMM;
}

/** Two loads on one ring may touch but not lie on each other. */
function standApart(count: number, first: Placed, load: Load, step: number): boolean {
  if (first.load.ring !== load.ring) return true;
  const onwardDeg = ((step - first.step + count) % count) * (360 / count);
  return (
    onwardDeg >= first.load.aheadDeg + load.behindDeg &&
    360 - onwardDeg >= first.load.behindDeg + load.aheadDeg
  );
}
