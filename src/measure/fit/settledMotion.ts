import { measurePlaneNoise } from './planeNoise.ts';
import {
  basicPlanes,
  LEAST_WEIGHT,
  mergePlanes,
  scaleToUnitNoise,
  type PlaneSeries,
  type RawPlanes,
} from './planeSeries.ts';
import {
  estimateRocking,
  motionAt,
  restrictedLikelihood,
  type RockingEstimate,
  type RockingPrior,
} from './rockingEstimate.ts';
import { PER_STEP, transitionsOf } from './rockingState.ts';
import { turningTilt, type RockingParameters } from './rockingMotion.ts';
import { smoothMotion, type SmoothedMotion } from './rockingSmoother.ts';
import { deviationScale, type SettledHeights } from './settledHeights.ts';
import { fitWhole, type WholeFit } from './wholeFit.ts';

/** The random motion and the weights of the bins, found in turns. */
export interface SettledMotion {
  readonly estimate: RockingEstimate;
  readonly binWeight: Float64Array;
  /** Noise common to all azimuths of a bin, mm, before the plane scale is applied. */
  readonly offsetSdMm: number;
  /** What the search ran on. */
  readonly coarse: PlaneSeries;
}

/** Steps that the search runs on at most: its time is in proportion. */
const COARSE_STEPS = 170;
/** Bins merged at most: 0.3 s, which a swing of 2 s still shows nine tenths of. */
const LONGEST_MERGE = 3;
/** Three freedoms exceed this squared distance once in a thousand times. */
const FLAT_UP_TO_SQUARED = 16.3;
/** A stretch seen on the wrong edge for seconds is let go of bin by bin; clean sweeps need one. */
const CAUTIOUS_ROUNDS = 4;

export function settleMotion(
  heights: SettledHeights,
  spinRatio: number,
  biasSdMm: number,
  prior: RockingPrior,
): SettledMotion {
  const agreement = heights.binAgreement;
  const first = basicPlanes(heights.planes, heights.waves.known);
  const noise = measurePlaneNoise(first, agreement);
  const offsetSdMm = noise.offsetSdMm / noise.scale;
  let weight = agreement;
  // Before the motion is known: one lively enough to follow any wheel, so that only what no
  // wheel can do is weighed down.
  const cautious = cautiousMotion(prior, noise.scale);
  for (let round = 0; round < CAUTIOUS_ROUNDS; round++) {
    const next = reweigh(first, agreement, weight, offsetSdMm, cautious, spinRatio);
    const settled = !changed(weight, next);
    weight = next;
    if (settled) break;
  }
  // Deviations alone know the n = 2 wave to a few hundredths of a millimetre; what is left of it
  // turns with the wheel and would be taken for a swing. Planes and deviations together do better.
  const refined = fitWhole(
    heights.planes,
    weight,
    offsetSdMm,
    cautious,
    spinRatio,
    biasSdMm,
    deviationScale(heights),
  );
  const raw =
    refined === null ? first : basicPlanes(heights.planes, carriedUnknowns(heights, refined));
  const run = Math.min(LONGEST_MERGE, Math.max(1, Math.ceil(raw.count / COARSE_STEPS)));
  let coarse = coarseSeries(raw, weight, run, offsetSdMm);
  let estimate = estimateRocking(coarse, spinRatio, prior, null, noise.scale);
  const next = reweigh(raw, agreement, weight, offsetSdMm, estimate.motion, spinRatio);
  if (changed(weight, next)) {
    coarse = coarseSeries(raw, next, run, offsetSdMm);
    estimate = estimateRocking(coarse, spinRatio, prior, estimate.logPoint, noise.scale);
  }
  return { estimate, binWeight: next, offsetSdMm, coarse };
}

/** Change of a bin's weight that is worth a second search, no unit. */
const WEIGHT_CHANGE = 0.2;

function changed(before: Float64Array, after: Float64Array): boolean {
  return after.some((w, b) => Math.abs(w - before[b]) > WEIGHT_CHANGE);
}

/** Waves and constants of a whole fit in the order of `HigherWaves.known`. */
function carriedUnknowns(heights: SettledHeights, whole: WholeFit): Float64Array {
  const known = new Float64Array(heights.waves.known.length);
  known.set(whole.coefficients.subarray(3, whole.coefficients.length - 2));
  return known;
}

/** Logarithms of damping, kick, planes' scale, slow change and its time, sway down and across: as `motionAt` takes them. */
const CAUTIOUS_LOGS = [-3, -0.7, 0, -2.3, 1, -3.5, -3.5];

function cautiousMotion(prior: RockingPrior, planeScale: number): RockingParameters {
  const motion = motionAt([Math.log((2 * Math.PI) / prior.periodS), ...CAUTIOUS_LOGS]);
  return { ...motion, planeScale };
}

function coarseSeries(
  raw: RawPlanes,
  weight: Float64Array,
  run: number,
  offsetSdMm: number,
): PlaneSeries {
  if (run === 1) return scaleToUnitNoise(raw, weight, offsetSdMm);
  const merged = mergePlanes(raw, weight, run);
  return scaleToUnitNoise(merged.planes, merged.weight, offsetSdMm / Math.sqrt(run));
}

/**
 * Weight that a wild bin keeps: its pull is nothing, yet it is still looked at in the next round
 * and can come back.
 */
const WILD_WEIGHT = 1e-5;

/**
 * Weights of bins by their distance from the smoothed motion: full up to the limit, then falling
 * with its fourth power, so that what is far away has no pull at all on motion or tilt.
 */
function reweigh(
  raw: RawPlanes,
  agreement: Float64Array,
  weight: Float64Array,
  offsetSdMm: number,
  motion: RockingParameters,
  spinRatio: number,
): Float64Array {
  const series = scaleToUnitNoise(raw, weight, offsetSdMm);
  const fit = restrictedLikelihood(series, motion, spinRatio);
  if (fit === null) return weight;
  const { smoothed } = smoothResidual(series, fit.coefficients, motion, spinRatio);
  return agreement.map((a, b) => {
    if (weight[b] <= LEAST_WEIGHT) return weight[b];
    // The distance is in units of the weighed-down noise; back to the plain one.
    const distance = (smoothed.distance[b] / weight[b]) * a;
    if (distance <= FLAT_UP_TO_SQUARED) return a;
    return a * Math.max(WILD_WEIGHT, (FLAT_UP_TO_SQUARED / distance) ** 2);
  });
}

/** Smooths what the coefficients (columns 1 …, then a₁, b₁) leave of a series. */
export function smoothResidual(
  series: PlaneSeries,
  coefficients: Float64Array,
  motion: RockingParameters,
  spinRatio: number,
): { smoothed: SmoothedMotion; turning: Float64Array } {
  const { count, columnCount, columns, root } = series;
  const transitions = transitionsOf(series, motion, spinRatio);
  const turning = turningTilt(
    series.timeS,
    series.turnRad,
    spinRatio,
    motion.rateRadPerS,
    motion.dampingRatio,
    transitions,
    PER_STEP,
  );
  const a1 = coefficients[columnCount - 1];
  const b1 = coefficients[columnCount];
  const residual = new Float64Array(count * 3);
  for (let b = 0; b < count; b++) {
    const tilt0 = a1 * turning[4 * b] - b1 * turning[4 * b + 1];
    const tilt90 = a1 * turning[4 * b + 1] + b1 * turning[4 * b];
    for (let r = 0; r < 3; r++) {
      const at = (b * 3 + r) * columnCount;
      let y = columns[at];
      for (let k = 1; k < columnCount; k++) y -= columns[at + k] * coefficients[k - 1];
      if (r === 1) y -= root[b * 6 + 2] * tilt0;
      if (r === 2) y -= root[b * 6 + 4] * tilt0 + root[b * 6 + 5] * tilt90;
      residual[b * 3 + r] = y;
    }
  }
  return { smoothed: smoothMotion(series, residual, motion, spinRatio), turning };
}
