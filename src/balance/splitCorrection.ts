import { failed, succeeded } from '../contract/outcome.ts';
import { RAD_PER_DEG, shortWayDeg } from '../quantities/angle.ts';
import type { BalanceOutcome } from './failures.ts';
import { DIRECTION_DEG, NOT_NEGATIVE, rejectNumbers } from './inputs.ts';

export interface SplitInput {
  /** Correction wanted, g (both places at one radius) or g·mm. */
  readonly amount: number;
  readonly angleDeg: number;
  readonly placeADeg: number;
  readonly placeBDeg: number;
}

export interface Split {
  readonly atA: number;
  readonly atB: number;
}

/** Places closer than this do not span an angle that can be aimed within, degrees. */
const SPAN_MIN_DEG = 1e-6;

/**
 * A correction W at θ shared by two places: W_a = W·sin(b − θ)/sin(b − a),
 * W_b = W·sin(θ − a)/sin(b − a). The places must stand on either side of the spot, less than 180°
 * apart. Source: US Bureau of Reclamation field-balancing manual; parallelogram of vectors.
 */
export function splitCorrection(input: SplitInput): BalanceOutcome<Split> {
  const bad = rejectNumbers({
    amount: [input.amount, NOT_NEGATIVE],
    angleDeg: [input.angleDeg, DIRECTION_DEG],
    placeADeg: [input.placeADeg, DIRECTION_DEG],
    placeBDeg: [input.placeBDeg, DIRECTION_DEG],
  });
  if (bad) return bad;
  const toA = shortWayDeg(input.angleDeg, input.placeADeg);
  const toB = shortWayDeg(input.angleDeg, input.placeBDeg);
  const spanDeg = Math.abs(toA - toB);
  // One of the two may stand on the spot itself: it then carries all.
  const straddles = toA * toB <= 0 && spanDeg > SPAN_MIN_DEG && spanDeg < 180 - SPAN_MIN_DEG;
  if (!straddles) return failed('places-not-either-side', { toADeg: toA, toBDeg: toB });
  const whole = Math.sin(spanDeg * RAD_PER_DEG);
  return succeeded({
    atA: (input.amount * Math.sin(Math.abs(toB) * RAD_PER_DEG)) / whole,
    atB: (input.amount * Math.sin(Math.abs(toA) * RAD_PER_DEG)) / whole,
  });
}
