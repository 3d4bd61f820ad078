import type { PlaneSeries } from './planeSeries.ts';
import type { RockingParameters } from './rockingMotion.ts';

/** An arm goes to and fro in one to two seconds: what it does now says little of half a second later, s. */
const SWAY_TIME_S = 0.4;

/**
 * A knock sets off a swing of a millimetre to a centimetre at the rim; one sd, mm. How hard it was is
 * told by what follows: this only has to be of the right order.
 */
export const KNOCK_SD_MM = 4;

/** What a step from one bin to the next keeps of slow change and of sway, and what is done to it. */
export interface Step {
  readonly slow: number;
  readonly sway: number;
  /** Intensity of the white random force on one axis over the step, mm²/s³. */
  readonly force: number;
}

/**
 * A jump of the speed somewhere in the step, no time likelier than another, has the moments of white
 * force all through it: its variance, (K·ω₀)², spread over the step.
 */
export function stepTo(
  { timeS, knocked }: Pick<PlaneSeries, 'timeS' | 'knocked'>,
  b: number,
  motion: RockingParameters,
): Step {
  const stepS = timeS[b] - timeS[b - 1];
  const { rateRadPerS, kickMm } = motion;
  const knock = knocked[b] === 1 ? (KNOCK_SD_MM * rateRadPerS) ** 2 / stepS : 0;
  return {
    slow: Math.exp(-stepS / motion.slowTimeS),
    sway: Math.exp(-stepS / SWAY_TIME_S),
    force: kickMm * kickMm * rateRadPerS ** 3 + knock,
  };
}
