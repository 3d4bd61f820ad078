import type { RawPlanes } from './planeSeries.ts';
import { LEAST_NOISE_SCALE } from './tiltFit.ts';

/**
 * White noise of the bins' planes from third differences between neighbours, in which a smooth
 * motion drops out. Medians, so that kicks and wild bins do not count.
 */
export interface PlaneNoise {
  /** Factor on the planes' standard errors, from the tilt across the sight. */
  readonly scale: number;
  /** Noise of the mean height beyond that, common to all azimuths, mm. */
  readonly offsetSdMm: number;
}

const THIRD_DIFFERENCE = [-1, 3, -3, 1] as const;
/** Variance of a third difference over that of one value: 1 + 9 + 9 + 1. */
const THIRD_DIFFERENCE_GAIN = 20;
/** Median of the square of a Gaussian with variance 1. */
const MEDIAN_SQUARE = 0.4549;
/** Four bins further apart than this, s, have a gap among them and no smooth motion. */
const LONGEST_RUN_S = 0.8;
/** A wild bin among the four would be taken for noise; weight below which it is, no unit. */
const WILD_BELOW = 0.5;
/** Fewer runs than this give no median worth having; the heights' own errors then stand. */
const LEAST_RUNS = 10;

export function measurePlaneNoise(raw: RawPlanes, weight: Float64Array): PlaneNoise {
  const across: number[] = [];
  const level: number[] = [];
  let varianceSum = 0;
  for (let b = 0; b + 3 < raw.count; b++) {
    if (raw.timeS[b + 3] - raw.timeS[b] > LONGEST_RUN_S) continue;
    if (Math.min(weight[b], weight[b + 1], weight[b + 2], weight[b + 3]) < WILD_BELOW) continue;
    const run = thirdDifferences(raw, b);
    across.push((run.tiltMm * run.tiltMm) / run.tiltVariance);
    level.push(run.levelMm * run.levelMm);
    varianceSum += run.levelVariance;
  }
  if (across.length < LEAST_RUNS) return { scale: 1, offsetSdMm: 0 };
  const scaleSquared = median(across) / MEDIAN_SQUARE;
  const excess = median(level) / MEDIAN_SQUARE - (scaleSquared * varianceSum) / level.length;
  return {
    scale: Math.max(Math.sqrt(scaleSquared), LEAST_NOISE_SCALE),
    offsetSdMm: Math.sqrt(Math.max(excess, 0) / THIRD_DIFFERENCE_GAIN),
  };
}

function thirdDifferences(raw: RawPlanes, b: number) {
  const n = raw.columnCount;
  const first = raw.covariance.subarray(b * 9, b * 9 + 9);
  // Height where the plane is steadiest: offset + tilt·m, m chosen for the least variance.
  const m = -first[1] / first[4];
  let [tiltMm, levelMm, tiltVariance, levelVariance] = [0, 0, 0, 0];
  for (let k = 0; k < 4; k++) {
    const factor = THIRD_DIFFERENCE[k];
    const at = (b + k) * 3 * n;
    const c = raw.covariance.subarray((b + k) * 9, (b + k) * 9 + 9);
    tiltMm += factor * raw.plane[at + 2 * n];
    levelMm += factor * (raw.plane[at] + m * raw.plane[at + n]);
    tiltVariance += factor * factor * c[8];
    levelVariance += factor * factor * (c[0] + 2 * m * c[1] + m * m * c[4]);
  }
  return { tiltMm, levelMm, tiltVariance, levelVariance };
}

function median(values: number[]): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[sorted.length >> 1];
}
