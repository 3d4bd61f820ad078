import { succeeded } from '../contract/outcome.ts';
import type { BalanceOutcome } from './failures.ts';
import { NOT_NEGATIVE, rejectNumbers } from './inputs.ts';

/**
 * Lateral run-out of wheel and tyre that service literature lets pass, mm from peak to peak: 1.2 to
 * 1.3 (CHECKS, Tyre and rim).
 */
export const PUBLISHED_LATERAL_RUN_OUT_MM = 1.2;

/** Radial run-out that service literature lets pass, mm from peak to peak: 0.8 to 1.3, its middle. */
const PUBLISHED_RADIAL_RUN_OUT_MM = 1;

/**
 * A band of tape that a hand stuck round a shoulder by eye, from its high to its low side, mm: along a
 * moulded line a hand is good to a millimetre or two on either side (an estimate, nothing published).
 */
const BAND_OFF_SQUARE_MM = 3;

/** |τ| of a plane normal vector stays under 2.4477 σ in 95 of 100: √(−2·ln 0.05). */
const AMOUNT_95_PER_SIGMA = Math.sqrt(-2 * Math.log(0.05));

/**
 * Standard deviation of each component of the once-round run-out τ that one sweep cannot tell from
 * an unbalance, mm: the limit is taken as what 95 of 100 sound wheels keep within, all of it
 * once-round, amplitude half its peak-to-peak: σ = (limit/2)/2.4477.
 */
export function runOutSdMm(
  lateralPeakToPeakMm: number = PUBLISHED_LATERAL_RUN_OUT_MM,
): BalanceOutcome<number> {
  const bad = rejectNumbers({ lateralPeakToPeakMm: [lateralPeakToPeakMm, NOT_NEGATIVE] });
  if (bad) return bad;
  return succeeded(lateralPeakToPeakMm / 2 / AMOUNT_95_PER_SIGMA);
}

/**
 * The same for the run-out of the wheel's radius. From above, a tread that stands out farther looks
 * lower by κ, the slope of the line of sight: where it is once-round, that turns with the wheel as an
 * unbalance does. Standard deviation of each component of the height that it feigns, mm.
 *
 * @param sightSlope κ, mm of height for a mm of radius (a tablet above the wheel's side: 0.6 to 1)
 */
export function radialRunOutSdMm(
  sightSlope: number,
  radialPeakToPeakMm: number = PUBLISHED_RADIAL_RUN_OUT_MM,
): BalanceOutcome<number> {
  const bad = rejectNumbers({
    sightSlope: [sightSlope, NOT_NEGATIVE],
    radialPeakToPeakMm: [radialPeakToPeakMm, NOT_NEGATIVE],
  });
  if (bad) return bad;
  return succeeded((sightSlope * radialPeakToPeakMm) / 2 / AMOUNT_95_PER_SIGMA);
}

/** The same for a band of tape that a hand stuck on, where nothing moulded tells how square, mm. */
export function bandOffSquareSdMm(): number {
  return BAND_OFF_SQUARE_MM / 2 / AMOUNT_95_PER_SIGMA;
}
