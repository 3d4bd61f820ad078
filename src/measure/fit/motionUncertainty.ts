import { posteriorFit, restrictedLikelihood, type RockingPrior } from './rockingEstimate.ts';
import type { SettledMotion } from './settledState.ts';
import { eigenOfSymmetric } from './symmetricEigen.ts';
import { COMMON_UNKNOWNS } from './tiltFit.ts';

/**
 * What not knowing the motion's parameters adds to the covariance.
 *
 * The unknowns' covariance at the likeliest parameters is too small: parameters that allow more
 * slow change are nearly as likely and much less certain of the tilt. So it is averaged over the
 * parameters' posterior, by five points along each of its axes, each weighed by the posterior itself
 * (trapezoidal rule; after Rue, Martino & Chopin 2009, from memory).
 */
export interface MotionUncertainty {
  /** Covariance to be added for g₀, stand 0°, stand 90°, a₁, b₁; 5×5. */
  readonly added: Float64Array;
  /**
   * Factor ≥ 1 on the whole covariance: a mixture of narrow and wide errors has longer tails than
   * a Gaussian of the same covariance, and the 95 % region has to hold 95 %.
   */
  readonly tailFactor: number;
  readonly frequencyLogSd: number;
  /** Log likelihood of the motion found over that of the best one without a swing. */
  readonly evidence: number;
}

/** Unknowns of the series that the motion's search runs on. */
const UNKNOWNS = 5;
const PARAMETERS = 8;
/** Steps for the second differences, in the parameters' logarithms: about a third of an sd. */
const STEPS = [0.01, 0.15, 0.1, 0.03, 0.2, 0.3, 0.3, 0.3];
/**
 * Points along an axis beside the middle, in standard deviations. For a Gaussian the trapezoidal
 * rule with this spacing is exact to six digits; a posterior with a long tail shows it at ±2.4.
 */
const NODES = [-2.4, -1.2, 1.2, 2.4];
/** The priors' own widths bound every axis: an sd above 1.5 in a logarithm is none of theirs. */
const LEAST_CURVATURE = 1 / 1.5 ** 2;

export function measureMotionUncertainty(
  settled: SettledMotion,
  spinRatio: number,
  spinRatioSd: number,
  prior: RockingPrior,
): MotionUncertainty {
  const { coarse, estimate } = settled;
  const centre = estimate.logPoint;
  const at = (point: Float64Array) => posteriorFit(coarse, point, spinRatio, prior);
  const middle = at(centre);
  const added = new Float64Array(UNKNOWNS * UNKNOWNS);
  if (middle === null) return { added, tailFactor: 1, frequencyLogSd: 0, evidence: 0 };
  const curvature = secondDifferences((point) => at(point)?.cost ?? Infinity, centre, middle.cost);
  const axes = eigenOfSymmetric(curvature, PARAMETERS);
  let frequencyVariance = 0;
  let relativeVariance = 0;
  for (let j = 0; j < PARAMETERS; j++) {
    const sd = 1 / Math.sqrt(Math.max(axes.values[j], LEAST_CURVATURE));
    frequencyVariance += (axes.vectors[j] * sd) ** 2;
    const sides = NODES.map((z) => {
      const point = centre.map((x, i) => x + z * sd * axes.vectors[i * PARAMETERS + j]);
      const fit = at(point);
      return fit === null ? null : { fit, weight: Math.exp(middle.cost - fit.cost) };
    });
    relativeVariance += addSpread(added, middle, sides);
  }
  const spun = posteriorFit(coarse, centre, spinRatio + spinRatioSd, prior);
  if (spun !== null) addApart(added, spun, middle);
  return {
    added,
    tailFactor: tailFactorOf(relativeVariance),
    frequencyLogSd: Math.sqrt(frequencyVariance),
    evidence: swingEvidence(settled, spinRatio),
  };
}

/** Outer product of what a change of one standard deviation does to the unknowns. */
function addApart(added: Float64Array, changed: PosteriorFit, middle: PosteriorFit): void {
  const apart = changed.coefficients.map((x, i) => x - middle.coefficients[i]);
  for (let i = 0; i < UNKNOWNS; i++) {
    for (let k = 0; k < UNKNOWNS; k++) added[i * UNKNOWNS + k] += apart[i] * apart[k];
  }
}

/** Slow changes without a swing to compare with: standard deviations mm, and times s. */
const RIVAL_SLOW_MM = [0.005, 0.05, 0.2, 0.8, 2.5];
const RIVAL_TIMES_S = [0.5, 3];

/** Log likelihood ratio against motions that change at random but do not swing. */
function swingEvidence(settled: SettledMotion, spinRatio: number): number {
  const found = settled.estimate.motion;
  const own = restrictedLikelihood(settled.coarse, found, spinRatio);
  if (own === null) return 0;
  let best = -Infinity;
  const attempt = (slowMm: number, slowTimeS: number): void => {
    // Damped this much a push leaves no swing behind; no kicks, and no swing at the start.
    const still = { ...found, dampingRatio: 0.65, kickMm: 1e-4, startMm: 1e-3, slowMm, slowTimeS };
    const rival = restrictedLikelihood(settled.coarse, still, spinRatio);
    if (rival !== null) best = Math.max(best, rival.logLikelihood);
  };
  attempt(found.slowMm, found.slowTimeS);
  for (const slowMm of RIVAL_SLOW_MM) {
    for (const slowTimeS of RIVAL_TIMES_S) attempt(slowMm, slowTimeS);
  }
  return best === -Infinity ? 0 : own.logLikelihood - best;
}

/** χ² with two freedoms at 95 %. */
const CHI_SQUARE_95 = 5.991;

/**
 * A variance that itself is uncertain by the relative variance v mixes Gaussians to a Student t
 * with ν = 4 + 2/v. Its 95 % region, d² < 2(ν−2)/ν·F₀.₉₅(2, ν) in units of its covariance, over
 * that of a Gaussian; F₀.₉₅(2, ν) = ν/2·(0.05^(−2/ν) − 1).
 */
function tailFactorOf(relativeVariance: number): number {
  if (!(relativeVariance > 1e-6)) return 1;
  const nu = 4 + 2 / relativeVariance;
  const region = (nu - 2) * (0.05 ** (-2 / nu) - 1);
  return Math.max(1, region / CHI_SQUARE_95);
}

type PosteriorFit = NonNullable<ReturnType<typeof posteriorFit>>;

/**
 * Mean covariance plus covariance of means over one axis, less the middle's own. Returns the
 * relative variance, over that axis, of the wheel tilt's variance.
 */
function addSpread(
  added: Float64Array,
  middle: PosteriorFit,
  sides: readonly ({ fit: PosteriorFit; weight: number } | null)[],
): number {
  const known = sides.filter((side) => side !== null);
  let total = 1;
  for (const { weight } of known) total += weight;
  const shift = new Float64Array(UNKNOWNS);
  for (const { fit, weight } of known) {
    for (let i = 0; i < UNKNOWNS; i++) {
      shift[i] += (weight / total) * (fit.coefficients[i] - middle.coefficients[i]);
    }
  }
  for (let i = 0; i < UNKNOWNS; i++) {
    for (let k = 0; k < UNKNOWNS; k++) {
      const at = i * UNKNOWNS + k;
      for (const { fit, weight } of known) {
        const apart =
          (fit.coefficients[i] - middle.coefficients[i]) *
          (fit.coefficients[k] - middle.coefficients[k]);
        added[at] += (weight / total) * (fit.covariance[at] - middle.covariance[at] + apart);
      }
      added[at] -= shift[i] * shift[k];
    }
  }
  const own = tiltVariance(middle);
  let [first, second] = [0, 0];
  for (const { fit, weight } of known) {
    const change = tiltVariance(fit) / own - 1;
    first += (weight / total) * change;
    second += (weight / total) * change * change;
  }
  return (second - first * first) / (1 + first) ** 2;
}

function tiltVariance(fit: PosteriorFit): number {
  const last = UNKNOWNS - 1;
  return fit.covariance[last * UNKNOWNS + last] + fit.covariance[(last - 1) * (UNKNOWNS + 1)];
}

function secondDifferences(
  cost: (point: Float64Array) => number,
  centre: Float64Array,
  middle: number,
): Float64Array {
  const n = PARAMETERS;
  const out = new Float64Array(n * n);
  const moved = (i: number, hi: number, j: number, hj: number): number => {
    const point = Float64Array.from(centre);
    point[i] += hi;
    point[j] += hj;
    return cost(point);
  };
  const up = STEPS.map((h, i) => moved(i, h, i, 0));
  const down = STEPS.map((h, i) => moved(i, -h, i, 0));
  for (let i = 0; i < n; i++) {
    const h = STEPS[i];
    out[i * n + i] = (up[i] - 2 * middle + down[i]) / (h * h);
    for (let j = 0; j < i; j++) {
      const both = moved(i, h, j, STEPS[j]);
      const value = (both - up[i] - up[j] + middle) / (h * STEPS[j]);
      out[i * n + j] = value;
      out[j * n + i] = value;
    }
  }
  return out.map((x) => (Number.isFinite(x) ? x : 0));
}

/** Adds the 5×5 to the 11×11 of all common unknowns, whose first five are the same. */
export function addToCommon(
  covariance: Float64Array,
  { added, tailFactor }: MotionUncertainty,
): Float64Array {
  const out = Float64Array.from(covariance);
  for (let i = 0; i < UNKNOWNS; i++) {
    for (let k = 0; k < UNKNOWNS; k++) {
      out[i * COMMON_UNKNOWNS + k] += added[i * UNKNOWNS + k];
    }
  }
  return out.map((x) => x * tailFactor);
}
