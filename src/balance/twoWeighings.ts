import { succeeded } from '../contract/outcome.ts';
import type { BalanceOutcome } from './failures.ts';
import { NOT_NEGATIVE, POSITIVE, rejectNumbers, SIGNED } from './inputs.ts';

/**
 * The wheel stands upright, its axle level, on two rails under the tread; one end at a time is set
 * on the scale, the other on a block of the same height. "Upper" is the side that looks up when the
 * wheel lies on the ball.
 */
export interface TwoWeighings {
  readonly upperRailLoadKg: number;
  readonly lowerRailLoadKg: number;
  /** Standard deviation of one reading of the scale. */
  readonly scaleSdKg: number;
  /** Distance of the rails along the axle. */
  readonly railSpacingMm: number;
  /** From the upper rail to the bore's seating edge along the axle, positive toward the lower rail. */
  readonly seatFromUpperRailMm: number;
  /** Standard deviation of the two lengths. */
  readonly rulerSdMm: number;
}

export interface WeighedCentre {
  readonly massKg: number;
  /** d: centre of mass below the bore's seating edge as the wheel lies. */
  readonly centreDepthMm: number;
  readonly standardErrorMm: number;
}

/**
 * Lever rule: the centre of mass lies x = L·F_lower/(F_upper + F_lower) from the upper rail, so
 * d = x − seat. Errors: ∂x/∂F_lower = L·F_upper/F², ∂x/∂F_upper = −L·F_lower/F², ∂x/∂L = x/L.
 */
export function centreDepthFromWeighings(input: TwoWeighings): BalanceOutcome<WeighedCentre> {
  const { upperRailLoadKg: upper, lowerRailLoadKg: lower, railSpacingMm } = input;
  const massKg = upper + lower;
  const bad = rejectNumbers({
    upperRailLoadKg: [upper, NOT_NEGATIVE],
    lowerRailLoadKg: [lower, NOT_NEGATIVE],
    massKg: [massKg, POSITIVE],
    scaleSdKg: [input.scaleSdKg, NOT_NEGATIVE],
    railSpacingMm: [railSpacingMm, POSITIVE],
    seatFromUpperRailMm: [input.seatFromUpperRailMm, SIGNED],
    rulerSdMm: [input.rulerSdMm, NOT_NEGATIVE],
  });
  if (bad) return bad;
  const share = lower / massKg;
  const perKg = railSpacingMm / massKg;
  return succeeded({
    massKg,
    centreDepthMm: railSpacingMm * share - input.seatFromUpperRailMm,
    standardErrorMm: Math.hypot(
      perKg * (1 - share) * input.scaleSdKg,
      perKg * share * input.scaleSdKg,
      share * input.rulerSdMm,
      input.rulerSdMm,
    ),
  });
}
