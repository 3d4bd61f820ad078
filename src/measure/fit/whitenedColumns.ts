import { stepTo, type Step } from './motionStep.ts';
import type { PlaneSeries } from './planeSeries.ts';
import type { RockingParameters } from './rockingMotion.ts';
import {
  crossCovariance,
  observationRow,
  predictCovariance,
  realTransition,
  startCovariance,
  STATE,
  SWAY,
  transitionsOf,
  turningOf,
} from './rockingState.ts';

/** A constant of this file: some module loaders look an imported one up at every use. */
const SIZE = STATE;

export interface WhitenedProducts {
  /** Products of the whitened columns, K×K lower triangle; K = columnCount + 2: a₁, b₁ come last. */
  readonly products: Float64Array;
  /** Σ log of the innovations' variances, noise scale included. */
  readonly logDeterminant: number;
}

/**
 * Generalised least squares through a Kalman filter of the random motion: every column (heights
 * and unknowns alike) is whitened by the same filter; the whitened columns' products are the
 * normal equations. Source: Rosenberg 1973, de Jong 1991 (augmented Kalman filter), from memory.
 */
export function whitenColumns(
  series: PlaneSeries,
  motion: RockingParameters,
  spinRatio: number,
): WhitenedProducts {
  const { count, columnCount, root, columns } = series;
  const transitions = transitionsOf(series, motion, spinRatio);
  const turning = turningOf(series, motion, spinRatio, transitions);
  const width = columnCount + 2;
  const products = new Float64Array(width * width);
  const p = startCovariance(motion);
  const mean = new Float64Array(SIZE * width);
  const f = new Float64Array(4 * SIZE);
  const h = new Float64Array(SIZE);
  const gain = new Float64Array(SIZE);
  const e = new Float64Array(width);
  const perScale = 1 / motion.planeScale;
  let logDeterminant = 0;
  let rows = 0;
  for (let b = 0; b < count; b++) {
    if (b > 0) {
      const kept = stepTo(series, b, motion);
      realTransition(transitions, b, f);
      predictCovariance(p, f, kept, transitions, b, motion);
      predictMeans(mean, f, kept, width);
    }
    if (root[b * 6] === 0) continue;
    const tiltRe = turning[4 * b];
    const tiltIm = turning[4 * b + 1];
    for (let r = 0; r < 3; r++) {
      observationRow(root, b, r, perScale, h);
      const variance = crossCovariance(p, h, gain) + 1;
      const at = (b * 3 + r) * columnCount;
      for (let c = 0; c < columnCount; c++) e[c] = columns[at + c] * perScale;
      e[columnCount] = h[0] * tiltRe + h[1] * tiltIm;
      e[columnCount + 1] = h[1] * tiltRe - h[0] * tiltIm;
      innovate(mean, h, gain, e, 1 / variance, width);
      accumulate(products, e, 1 / variance, width);
      for (let i = 0; i < SIZE; i++) {
        const g = gain[i] / variance;
        for (let j = 0; j < SIZE; j++) p[i * SIZE + j] -= g * gain[j];
      }
      logDeterminant += Math.log(variance);
      rows++;
    }
  }
  logDeterminant += 2 * rows * Math.log(motion.planeScale);
  return { products, logDeterminant };
}

/** Means are stored state by state, one entry a column. */
function predictMeans(mean: Float64Array, f: Float64Array, kept: Step, width: number): void {
  for (let c = 0; c < width; c++) {
    const m0 = mean[c];
    const m1 = mean[width + c];
    const m2 = mean[2 * width + c];
    const m3 = mean[3 * width + c];
    const m5 = mean[5 * width + c];
    const m6 = mean[6 * width + c];
    for (let i = 0; i < 4; i++) {
      const at = i * SIZE;
      mean[i * width + c] =
        f[at] * m0 +
        f[at + 1] * m1 +
        f[at + 2] * m2 +
        f[at + 3] * m3 +
        f[at + 5] * m5 +
        f[at + 6] * m6;
    }
    mean[4 * width + c] *= kept.slow;
    mean[5 * width + c] = m5 * kept.slow;
    mean[6 * width + c] = m6 * kept.slow;
    mean[SWAY * width + c] *= kept.sway;
    mean[(SWAY + 1) * width + c] *= kept.sway;
  }
}

/** Turns `e` from observation to innovation, and updates the means by it. */
function innovate(
  mean: Float64Array,
  h: Float64Array,
  gain: Float64Array,
  e: Float64Array,
  perVariance: number,
  width: number,
): void {
  const h0 = h[0];
  const h1 = h[1];
  const h4 = h[4];
  const swayAcross = h[SWAY + 1];
  for (let c = 0; c < width; c++) {
    e[c] -=
      h0 * mean[c] +
      h1 * mean[width + c] +
      swayAcross * mean[(SWAY + 1) * width + c] +
      h4 * (mean[4 * width + c] + mean[SWAY * width + c]);
  }
  for (let i = 0; i < SIZE; i++) {
    const g = gain[i] * perVariance;
    const row = i * width;
    for (let c = 0; c < width; c++) mean[row + c] += g * e[c];
  }
}

function accumulate(
  products: Float64Array,
  e: Float64Array,
  perVariance: number,
  width: number,
): void {
  for (let i = 0; i < width; i++) {
    const ei = e[i] * perVariance;
    if (ei === 0) continue;
    const row = i * width;
    for (let j = 0; j <= i; j++) products[row + j] += ei * e[j];
  }
}
