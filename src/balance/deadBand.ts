import { failed, succeeded } from '../contract/outcome.ts';
import { subtractVectors, vectorAmount } from '../quantities/vector.ts';
import type { BalanceOutcome } from './failures.ts';
import {
  FRACTION,
  NOT_NEGATIVE,
  POSITIVE,
  rejectCovariances,
  rejectNumbers,
  rejectVectors,
} from './inputs.ts';
import type { Unbalance } from './unbalance.ts';

/** Within this of its true rest the wheel stays where it is put. */
export interface DeadBand {
  readonly deadBandGmm: number;
  /** The same at the weight radius. */
  readonly deadBandG: number;
}

/** Rolling friction of a hard ball on a hard smooth plate as a share of the load (CHECKS, Contact). */
export const HARD_SMOOTH_ROLLING_SHARE: readonly [number, number] = [1e-5, 1e-4];

const band = (deadBandGmm: number, weightRadiusMm: number): DeadBand => ({
  deadBandGmm,
  deadBandG: deadBandGmm / weightRadiusMm,
});

/**
 * From rolling friction: the moment M·g·f that friction resists equals that of an unbalance M·f,
 * f = share·R, g·mm. Source: rolling-friction length, DESIGN section 3.
 */
export function deadBandFromFriction(input: {
  readonly massKg: number;
  readonly ballDiameterMm: number;
  /** Rolling friction over load; {@link HARD_SMOOTH_ROLLING_SHARE} for good plates. */
  readonly rollingShare: number;
  readonly weightRadiusMm: number;
}): BalanceOutcome<DeadBand> {
  const bad = rejectNumbers({
    massKg: [input.massKg, POSITIVE],
    ballDiameterMm: [input.ballDiameterMm, POSITIVE],
    rollingShare: [input.rollingShare, FRACTION],
    weightRadiusMm: [input.weightRadiusMm, POSITIVE],
  });
  if (bad) return bad;
  const lengthMm = (input.rollingShare * input.ballDiameterMm) / 2;
  return succeeded(band(input.massKg * 1000 * lengthMm, input.weightRadiusMm));
}

/**
 * From two sweeps of the untouched wheel: rests spread evenly over a disc of radius β differ by
 * E|D|² = β² + tr(C₁ + C₂), so β² = |D|² − tr(C₁ + C₂), not below nothing. One pair tells it to
 * about half its size.
 */
export function deadBandFromRepeats(
  first: Pick<Unbalance, 'unbalanceGmm' | 'covarianceGmm2'>,
  second: Pick<Unbalance, 'unbalanceGmm' | 'covarianceGmm2'>,
  weightRadiusMm: number,
): BalanceOutcome<DeadBand> {
  const bad =
    rejectVectors({ first: first.unbalanceGmm, second: second.unbalanceGmm }) ??
    rejectCovariances({ first: first.covarianceGmm2, second: second.covarianceGmm2 }) ??
    rejectNumbers({ weightRadiusMm: [weightRadiusMm, POSITIVE] });
  if (bad) return bad;
  const distance = vectorAmount(subtractVectors(first.unbalanceGmm, second.unbalanceGmm));
  const [[a], [, b]] = first.covarianceGmm2;
  const [[c], [, d]] = second.covarianceGmm2;
  const squared = Math.max(0, distance ** 2 - (a + b + c + d));
  return succeeded(band(Math.sqrt(squared), weightRadiusMm));
}

/**
 * From trying weights on the resting wheel: the band lies between the largest that did not move it
 * and the smallest that did; the middle is taken, and half the difference is its error.
 */
export function deadBandFromWeights(input: {
  readonly largestStillG: number;
  readonly smallestMovedG: number;
  readonly weightRadiusMm: number;
}): BalanceOutcome<DeadBand & { readonly halfWidthG: number }> {
  const { largestStillG, smallestMovedG, weightRadiusMm } = input;
  const bad = rejectNumbers({
    largestStillG: [largestStillG, NOT_NEGATIVE],
    smallestMovedG: [smallestMovedG, NOT_NEGATIVE],
    weightRadiusMm: [weightRadiusMm, POSITIVE],
  });
  if (bad) return bad;
  if (smallestMovedG < largestStillG) {
    return failed('amounts-contradict', { largestStillG, smallestMovedG });
  }
  const middleG = (largestStillG + smallestMovedG) / 2;
  return succeeded({
    ...band(middleG * weightRadiusMm, weightRadiusMm),
    halfWidthG: (smallestMovedG - largestStillG) / 2,
  });
}
