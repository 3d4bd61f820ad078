import { coefficientsOfChange, withChangeAt } from './changedSeries.ts';
import type { PlaneSeries } from './planeSeries.ts';
import {
  estimateRocking,
  motionAt,
  posteriorFit,
  type RockingEstimate,
  type RockingPrior,
} from './rockingEstimate.ts';
import type { SettledMotion } from './settledState.ts';

/** A wheel whose own tilt was another one from some time of the sweep on. */
export interface WheelChange {
  readonly atS: number;
  /** Length of the change of the rise, mm at the edge. */
  readonly changeMm: number;
}

/** The time of a change is looked for in steps of about a second; a wheel swings in three to eight. */
const TIME_STEP_S = 1;
/** Nearer than this to either end of the sweep a wheel has not shown a tilt of its own, degrees. */
const LEAST_TURN_DEG = 30;
/**
 * A change that is less is none to speak of: half of what a reading by eye resolves (a quarter ounce
 * lifts the edge by 3 mm), mm.
 */
const LEAST_CHANGE_MM = 1.5;
/** Changes that are thought of beforehand, one standard deviation of a component, mm. */
const CHANGE_SD_MM = 4;
/** Odds against a weight coming off, or a wheel shifting on its ball, in a sweep. */
const CHANGE_ODDS = 10_000;
/** What the account with a change has to be better by, −log posterior. */
const CHANGE_PRICE = Math.log(CHANGE_ODDS) + Math.log(2 * Math.PI * CHANGE_SD_MM ** 2);

/**
 * Whether the wheel turned into another one on its way: a weight came off or slid, or the bore shifted on
 * the ball. From then on it is drawn to another tilt and swings about that; a figure for the whole sweep
 * would lie somewhere between the two, and its ± know of neither.
 *
 * Both accounts, with the change and without, find a motion of their own: the one without takes a change
 * for slow leaning and strong kicks.
 *
 * @returns null where the wheel stayed the same, as far as the sweep tells.
 */
export function wheelChange(
  { coarse, estimate }: SettledMotion,
  spinRatio: number,
  prior: RockingPrior,
): WheelChange | null {
  const search = { series: coarse, spinRatio, prior, times: timesOf(coarse) };
  const first = likeliestChange(search, estimate);
  if (first === null || first.changeMm < LEAST_CHANGE_MM) return null;
  const changed = withChangeAt(coarse, estimate.motion, spinRatio, first.bin);
  const { logPoint, motion } = estimate;
  const moved = estimateRocking(changed, spinRatio, prior, logPoint, motion.planeScale);
  const found = likeliestChange(search, moved);
  if (found === null || found.changeMm < LEAST_CHANGE_MM) return null;
  if (found.cost + CHANGE_PRICE >= estimate.value) return null;
  return { atS: coarse.timeS[found.bin], changeMm: found.changeMm };
}

interface ChangeSearch {
  readonly series: PlaneSeries;
  readonly spinRatio: number;
  readonly prior: RockingPrior;
  /** Bins at which a change is tried. */
  readonly times: readonly number[];
}

interface TriedChange {
  readonly bin: number;
  /** −log posterior. */
  readonly cost: number;
  readonly changeMm: number;
}

function likeliestChange(
  { series, spinRatio, prior, times }: ChangeSearch,
  { logPoint }: Pick<RockingEstimate, 'logPoint'>,
): TriedChange | null {
  const motion = motionAt(logPoint);
  let best: TriedChange | null = null;
  for (const bin of times) {
    const changed = withChangeAt(series, motion, spinRatio, bin);
    const fit = posteriorFit(changed, logPoint, spinRatio, prior);
    if (fit === null || (best !== null && fit.cost >= best.cost)) continue;
    const changeMm = Math.hypot(...coefficientsOfChange(changed, fit.coefficients));
    best = { bin, cost: fit.cost, changeMm };
  }
  return best;
}

function timesOf({ count, timeS, turnRad }: PlaneSeries): number[] {
  const leastRad = (LEAST_TURN_DEG * Math.PI) / 180;
  const times: number[] = [];
  let lastS = -Infinity;
  for (let b = 1; b < count; b++) {
    const before = Math.abs(turnRad[b] - turnRad[0]);
    const after = Math.abs(turnRad[count - 1] - turnRad[b]);
    if (before < leastRad || after < leastRad || timeS[b] - lastS < TIME_STEP_S) continue;
    times.push(b);
    lastS = timeS[b];
  }
  return times;
}
