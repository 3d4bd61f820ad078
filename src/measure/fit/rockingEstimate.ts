import { minimise } from './minimise.ts';
import type { PlaneSeries } from './planeSeries.ts';
import { whitenColumns } from './whitenedColumns.ts';
import type { RockingParameters } from './rockingMotion.ts';
import { solveSymmetric } from './smallMatrix.ts';

/**
 * The random motion's parameters by restricted maximum likelihood (Patterson & Thompson 1971)
 * with priors: those of a car wheel on a ball.
 *
 * Searched in logarithms: [ω₀, ζ, kick, plane scale, slow, slow time, sway down, sway across].
 */
export interface RockingEstimate {
  readonly motion: RockingParameters;
  readonly logPoint: Float64Array;
  /** −log posterior at the point, up to a constant. */
  readonly value: number;
  readonly converged: boolean;
}

export interface RockingPrior {
  readonly periodS: number;
  readonly periodLogSd: number;
}

/** Period of a wheel on a ball: 3 to 8 s typical, 2 to 12 possible. */
export const DEFAULT_PERIOD_PRIOR: RockingPrior = { periodS: 4.6, periodLogSd: 0.4 };
/**
 * Damping ratio of a steel ball on a hard plate, lightly damped: 0.011 to 0.036 are one sd off, 0.12
 * three, where a swing has half of itself left after one period.
 */
const DAMPING_PRIOR = { median: 0.02, logSd: 0.6 };
/** Kick: rocking of a few tenths of a millimetre to several; one sd off is a factor of 4.5. */
const KICK_PRIOR = { medianMm: 0.1, logSd: 1.5 };
/** Slow change (a hand's weight, creep, drift of the edge in the picture): 0.04 to 0.18 mm. */
const SLOW_PRIOR = { medianMm: 0.08, logSd: 0.8 };
const SLOW_TIME_PRIOR = { medianS: 3, logSd: 0.8 };
/** Sway of the picture: none to speak of on a firm arm, some tenths of a millimetre on a lively one. */
const SWAY_PRIOR = { medianMm: 0.03, logSd: 1.2 };
/** Planes are at least as uncertain as their heights say, seldom four times more. */
const SCALE_PRIOR = { median: 1.3, logSd: 0.7 };

/** Periods tried first, s; steps of 15 % cannot miss the line of a swing with ζ = 0.05. */
const PERIODS_TRIED_S = [1.9, 2.2, 2.55, 2.95, 3.4, 3.9, 4.5, 5.2, 6, 6.9, 8, 9.2, 10.6, 12.2];
const FIRST_DAMPING = 0.05;
/** No wheel swings faster or slower, s; slower would be as slow as the turn itself. */
const SHORTEST_PERIOD_S = 1.5;
const LONGEST_PERIOD_S = 15;
/** Sway tried: a firm arm and a lively one, mm. With the wrong one the search ends at a swing that is none. */
const FIRST_SWAYS_MM = [SWAY_PRIOR.medianMm, 0.4];
/** Kicks tried: the middle one for all periods, the others for the best of them. */
const FIRST_KICK_MM = 0.2;
const OTHER_KICKS_MM = [0.05, 0.8];
/** Half widths of the likelihood's peak, for the search's first steps. */
const SIZES = new Float64Array([0.03, 0.5, 0.3, 0.1, 0.4, 0.5, 0.5, 0.5]);
/** A change of 0.02 in a log likelihood decides nothing. */
const FALL_TOLERANCE = 0.02;
const MAX_ITERATIONS = 30;

/** A wheel just let go swings by a few millimetres at the edge. */
const START_SD_MM = 3;

export function motionAt(logPoint: ArrayLike<number>): RockingParameters {
  return {
    rateRadPerS: Math.exp(logPoint[0]),
    dampingRatio: Math.exp(logPoint[1]),
    kickMm: Math.exp(logPoint[2]),
    planeScale: Math.exp(logPoint[3]),
    slowMm: Math.exp(logPoint[4]),
    slowTimeS: Math.exp(logPoint[5]),
    swayDownMm: Math.exp(logPoint[6]),
    swayAcrossMm: Math.exp(logPoint[7]),
    startMm: START_SD_MM,
  };
}

/** Restricted log likelihood, and the coefficients of the unknowns (columns 1 … K−1). */
export function restrictedLikelihood(
  series: PlaneSeries,
  motion: RockingParameters,
  spinRatio: number,
): { logLikelihood: number; coefficients: Float64Array; covariance: Float64Array } | null {
  const { products, logDeterminant } = whitenColumns(series, motion, spinRatio);
  const width = series.columnCount + 2;
  const n = width - 1;
  const normal = new Float64Array(n * n);
  const right = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    right[i] = products[(i + 1) * width];
    for (let j = 0; j <= i; j++) {
      normal[i * n + j] = products[(i + 1) * width + j + 1];
      normal[j * n + i] = normal[i * n + j];
    }
  }
  const solved = solveSymmetric(normal, right, n);
  if (solved === null) return null;
  let squares = products[0];
  for (let i = 0; i < n; i++) squares -= right[i] * solved.solution[i];
  return {
    logLikelihood: -0.5 * (squares + logDeterminant + solved.logDeterminant),
    coefficients: solved.solution,
    covariance: solved.inverse,
  };
}

export interface PosteriorFit {
  /** −log posterior, up to a constant. */
  readonly cost: number;
  /** g₀, stand 0°, stand 90°, …, a₁, b₁ at these parameters, and their covariance. */
  readonly coefficients: Float64Array;
  readonly covariance: Float64Array;
}

export function posteriorFit(
  series: PlaneSeries,
  logPoint: Float64Array,
  spinRatio: number,
  prior: RockingPrior,
): PosteriorFit | null {
  // Beyond these the swing is no swing and the exact step would lose its meaning.
  if (!(logPoint[1] < Math.log(0.7))) return null;
  const periodS = (2 * Math.PI) / Math.exp(logPoint[0]);
  if (!(periodS > SHORTEST_PERIOD_S && periodS < LONGEST_PERIOD_S)) return null;
  const fit = restrictedLikelihood(series, motionAt(logPoint), spinRatio);
  if (fit === null || !Number.isFinite(fit.logLikelihood)) return null;
  const { coefficients, covariance } = fit;
  return { cost: priorCost(logPoint, prior) - fit.logLikelihood, coefficients, covariance };
}

function priorCost(logPoint: ArrayLike<number>, prior: RockingPrior): number {
  const far = (value: number, median: number, logSd: number): number =>
    0.5 * ((value - Math.log(median)) / logSd) ** 2;
  return (
    far(logPoint[0], (2 * Math.PI) / prior.periodS, prior.periodLogSd) +
    far(logPoint[1], DAMPING_PRIOR.median, DAMPING_PRIOR.logSd) +
    far(logPoint[2], KICK_PRIOR.medianMm, KICK_PRIOR.logSd) +
    far(logPoint[3], SCALE_PRIOR.median, SCALE_PRIOR.logSd) +
    far(logPoint[4], SLOW_PRIOR.medianMm, SLOW_PRIOR.logSd) +
    far(logPoint[5], SLOW_TIME_PRIOR.medianS, SLOW_TIME_PRIOR.logSd) +
    far(logPoint[6], SWAY_PRIOR.medianMm, SWAY_PRIOR.logSd) +
    far(logPoint[7], SWAY_PRIOR.medianMm, SWAY_PRIOR.logSd)
  );
}

/**
 * @param start an earlier estimate to go on from, or null to search all periods.
 * @param planeScale where the search for the planes' scale starts.
 */
export function estimateRocking(
  series: PlaneSeries,
  spinRatio: number,
  prior: RockingPrior,
  start: Float64Array | null,
  planeScale: number,
): RockingEstimate {
  const cost = (point: Float64Array): number =>
    posteriorFit(series, point, spinRatio, prior)?.cost ?? Infinity;
  const best = minimise(
    cost,
    start ?? bestStart(cost, planeScale),
    SIZES,
    FALL_TOLERANCE,
    MAX_ITERATIONS,
  );
  return {
    motion: motionAt(best.point),
    logPoint: best.point,
    value: best.value,
    converged: best.converged,
  };
}

function bestStart(cost: (point: Float64Array) => number, planeScale: number): Float64Array {
  let best = new Float64Array(SIZES.length);
  let bestValue = Infinity;
  const attempt = (periodS: number, kickMm: number, swayMm: number): void => {
    const rate = (2 * Math.PI) / periodS;
    const slow = [SLOW_PRIOR.medianMm, SLOW_TIME_PRIOR.medianS];
    const point = Float64Array.of(rate, FIRST_DAMPING, kickMm, planeScale, ...slow, swayMm, swayMm);
    const logPoint = point.map(Math.log);
    const value = cost(logPoint);
    if (value >= bestValue) return;
    bestValue = value;
    best = logPoint;
  };
  for (const swayMm of FIRST_SWAYS_MM) {
    for (const periodS of PERIODS_TRIED_S) attempt(periodS, FIRST_KICK_MM, swayMm);
  }
  const [logRate, swayMm] = [best[0], Math.exp(best[6])];
  for (const kickMm of OTHER_KICKS_MM) attempt((2 * Math.PI) / Math.exp(logRate), kickMm, swayMm);
  return best;
}
