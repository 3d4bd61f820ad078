import type { PlaneSeries } from './planeSeries.ts';
import { stepMotion, turningTilt, type RockingParameters } from './rockingMotion.ts';

/**
 * Kalman filter of the wheel's random motion, and generalised least squares through it: every
 * column (heights and unknowns alike) is whitened by the same filter; the whitened columns'
 * products are the normal equations. Source: Rosenberg 1973, de Jong 1991 (augmented Kalman
 * filter), from memory.
 *
 * State, all mm at the edge: tilt z beyond stand and wheel (2 axes), its rate (2), slow change of
 * the offset (1), slow lean (2): a slow force towards which z is drawn as towards the stand's own.
 */
export const STATE = 7;

export interface WhitenedProducts {
  /** Products of the whitened columns, K×K lower triangle; K = columnCount + 2: a₁, b₁ come last. */
  readonly products: Float64Array;
  /** Σ log of the innovations' variances, noise scale included. */
  readonly logDeterminant: number;
}

/** Numbers a bin in `transitionsOf`. */
export const PER_STEP = 16;

/**
 * Step matrices of every bin: twelve numbers as `stepMotion` gives them, then how the slow lean at
 * the step's start shows in z and its rate at the step's end (complex). The first is unused.
 *
 * A lean that dies away as e^{−t/τ} has the steady answer H·e^{−t/τ},
 * H = ω₀²/(1/τ² − p/τ + ω₀²), p = 2ζω₀ − isΩ; the difference from it swings freely.
 */
export function transitionsOf(
  series: Pick<PlaneSeries, 'count' | 'timeS' | 'turnRad'>,
  motion: RockingParameters,
  spinRatio: number,
): Float64Array {
  const out = new Float64Array(series.count * PER_STEP);
  const { rateRadPerS, dampingRatio, slowTimeS } = motion;
  const step = new Float64Array(12);
  for (let b = 1; b < series.count; b++) {
    const stepS = series.timeS[b] - series.timeS[b - 1];
    const gyro = (spinRatio * (series.turnRad[b] - series.turnRad[b - 1])) / stepS;
    stepMotion(rateRadPerS, dampingRatio, gyro, stepS, step);
    const at = b * PER_STEP;
    out.set(step, at);
    const w2 = rateRadPerS * rateRadPerS;
    const denRe = 1 / (slowTimeS * slowTimeS) - (2 * dampingRatio * rateRadPerS) / slowTimeS + w2;
    const denIm = gyro / slowTimeS;
    const den2 = denRe * denRe + denIm * denIm;
    const hRe = (w2 * denRe) / den2;
    const hIm = (-w2 * denIm) / den2;
    const keep = Math.exp(-stepS / slowTimeS);
    for (let row = 0; row < 2; row++) {
      // Steady part at the end, less the swing started by the steady part at the beginning.
      const end = row === 0 ? keep : -keep / slowTimeS;
      const mRe = end - step[4 * row] + step[4 * row + 2] / slowTimeS;
      const mIm = -step[4 * row + 1] + step[4 * row + 3] / slowTimeS;
      out[at + 12 + 2 * row] = mRe * hRe - mIm * hIm;
      out[at + 13 + 2 * row] = mRe * hIm + mIm * hRe;
    }
  }
  return out;
}

/** State covariance before the first frame, 7×7. */
export function startCovariance(motion: RockingParameters): Float64Array {
  const p = new Float64Array(STATE * STATE);
  const lasting = motion.kickMm ** 2 / (4 * motion.dampingRatio);
  const slow = motion.slowMm ** 2;
  const z = lasting + motion.startMm ** 2 + slow;
  const v = z * motion.rateRadPerS ** 2;
  [z, z, v, v, slow, slow, slow].forEach((variance, i) => {
    p[i * STATE + i] = variance;
  });
  for (const [i, j] of [[0, 5], [1, 6]]) {
    p[i * STATE + j] = slow;
    p[j * STATE + i] = slow;
  }
  return p;
}

/** Rows of z and its rate in the step matrix, 4×7, from the complex numbers at bin `b`. */
export function realTransition(transitions: Float64Array, b: number, out: Float64Array): void {
  const at = b * PER_STEP;
  for (let i = 0; i < 2; i++) {
    for (let j = 0; j < 3; j++) {
      const from = j < 2 ? at + (i * 2 + j) * 2 : at + 12 + 2 * i;
      const column = j < 2 ? 2 * j : 5;
      const re = transitions[from];
      const im = transitions[from + 1];
      out[2 * i * STATE + column] = re;
      out[2 * i * STATE + column + 1] = -im;
      out[(2 * i + 1) * STATE + column] = im;
      out[(2 * i + 1) * STATE + column + 1] = re;
    }
  }
}

const scratch = new Float64Array(4 * STATE);

/** P ← F·P·Fᵀ + Q: the first four rows of F are `f` (4×7), the slow parts only die away. */
export function predictCovariance(
  p: Float64Array,
  f: Float64Array,
  keep: number,
  transitions: Float64Array,
  b: number,
  motion: RockingParameters,
): void {
  for (let i = 0; i < 4; i++) {
    const at = i * STATE;
    const f0 = f[at];
    const f1 = f[at + 1];
    const f2 = f[at + 2];
    const f3 = f[at + 3];
    const f5 = f[at + 5];
    const f6 = f[at + 6];
    for (let j = 0; j < STATE; j++) {
      scratch[at + j] =
        f0 * p[j] + f1 * p[7 + j] + f2 * p[14 + j] + f3 * p[21 + j] + f5 * p[35 + j] + f6 * p[42 + j];
    }
  }
  for (let i = 0; i < 4; i++) {
    const row = i * STATE;
    for (let j = 0; j <= i; j++) {
      const at = j * STATE;
      const sum =
        scratch[row] * f[at] +
        scratch[row + 1] * f[at + 1] +
        scratch[row + 2] * f[at + 2] +
        scratch[row + 3] * f[at + 3] +
        scratch[row + 5] * f[at + 5] +
        scratch[row + 6] * f[at + 6];
      p[row + j] = sum;
      p[at + i] = sum;
    }
    for (let j = 4; j < STATE; j++) {
      const value = scratch[row + j] * keep;
      p[row + j] = value;
      p[j * STATE + i] = value;
    }
  }
  const slowNoise = motion.slowMm * motion.slowMm * (1 - keep * keep);
  for (let i = 4; i < STATE; i++) {
    for (let j = 4; j < STATE; j++) p[i * STATE + j] *= keep * keep;
    p[i * STATE + i] += slowNoise;
  }
  const at = b * PER_STEP;
  const q = motion.kickMm * motion.kickMm * motion.rateRadPerS ** 3;
  const qzz = transitions[at + 8] * q;
  const qRe = transitions[at + 9] * q;
  const qIm = transitions[at + 10] * q;
  const qvv = transitions[at + 11] * q;
  addNoise(p, 0, 0, qzz);
  addNoise(p, 1, 1, qzz);
  addNoise(p, 2, 2, qvv);
  addNoise(p, 3, 3, qvv);
  // E[z·v*] = Qzv: same axes share its real part, crossed axes its imaginary part with a sign.
  addNoise(p, 0, 2, qRe);
  addNoise(p, 1, 3, qRe);
  addNoise(p, 1, 2, qIm);
  addNoise(p, 0, 3, -qIm);
}

function addNoise(p: Float64Array, i: number, j: number, value: number): void {
  p[i * STATE + j] += value;
  if (i !== j) p[j * STATE + i] += value;
}

/** Row `r` of the scaled observation: how it depends on the state. */
export function observationRow(
  root: Float64Array,
  bin: number,
  r: number,
  perScale: number,
  h: Float64Array,
): void {
  const at = bin * 6 + (r * (r + 1)) / 2;
  const l0 = root[at] * perScale;
  const l1 = r > 0 ? root[at + 1] * perScale : 0;
  const l2 = r > 1 ? root[at + 2] * perScale : 0;
  h[0] = l1;
  h[1] = l2;
  h[4] = l0;
}

/** K = P·h for an `h` of tilt and offset only; returns h·P·h. */
export function crossCovariance(p: Float64Array, h: Float64Array, out: Float64Array): number {
  let variance = 0;
  const h0 = h[0];
  const h1 = h[1];
  const h4 = h[4];
  for (let i = 0; i < STATE; i++) {
    const row = i * STATE;
    const value = p[row] * h0 + p[row + 1] * h1 + p[row + 4] * h4;
    out[i] = value;
    variance += h[i] * value;
  }
  return variance;
}

export function whitenColumns(
  series: PlaneSeries,
  motion: RockingParameters,
  spinRatio: number,
): WhitenedProducts {
  const { count, columnCount, timeS, root, columns } = series;
  const transitions = transitionsOf(series, motion, spinRatio);
  const turning = turningTilt(
    timeS, series.turnRad, spinRatio, motion.rateRadPerS, motion.dampingRatio, transitions, PER_STEP,
  );
  const width = columnCount + 2;
  const products = new Float64Array(width * width);
  const p = startCovariance(motion);
  const mean = new Float64Array(STATE * width);
  const f = new Float64Array(4 * STATE);
  const h = new Float64Array(STATE);
  const gain = new Float64Array(STATE);
  const e = new Float64Array(width);
  const perScale = 1 / motion.planeScale;
  let logDeterminant = 0;
  let rows = 0;
  for (let b = 0; b < count; b++) {
    if (b > 0) {
      const keep = Math.exp(-(timeS[b] - timeS[b - 1]) / motion.slowTimeS);
      realTransition(transitions, b, f);
      predictCovariance(p, f, keep, transitions, b, motion);
      predictMeans(mean, f, keep, width);
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
      for (let i = 0; i < STATE; i++) {
        const g = gain[i] / variance;
        for (let j = 0; j < STATE; j++) p[i * STATE + j] -= g * gain[j];
      }
      logDeterminant += Math.log(variance);
      rows++;
    }
  }
  logDeterminant += 2 * rows * Math.log(motion.planeScale);
  return { products, logDeterminant };
}

/** Means are stored state by state, one entry a column. */
function predictMeans(mean: Float64Array, f: Float64Array, keep: number, width: number): void {
  for (let c = 0; c < width; c++) {
    const m0 = mean[c];
    const m1 = mean[width + c];
    const m2 = mean[2 * width + c];
    const m3 = mean[3 * width + c];
    const m5 = mean[5 * width + c];
    const m6 = mean[6 * width + c];
    mean[c] = f[0] * m0 + f[1] * m1 + f[2] * m2 + f[3] * m3 + f[5] * m5 + f[6] * m6;
    mean[width + c] = f[7] * m0 + f[8] * m1 + f[9] * m2 + f[10] * m3 + f[12] * m5 + f[13] * m6;
    mean[2 * width + c] =
      f[14] * m0 + f[15] * m1 + f[16] * m2 + f[17] * m3 + f[19] * m5 + f[20] * m6;
    mean[3 * width + c] =
      f[21] * m0 + f[22] * m1 + f[23] * m2 + f[24] * m3 + f[26] * m5 + f[27] * m6;
    mean[4 * width + c] *= keep;
    mean[5 * width + c] = m5 * keep;
    mean[6 * width + c] = m6 * keep;
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
  for (let c = 0; c < width; c++) {
    e[c] -= h0 * mean[c] + h1 * mean[width + c] + h4 * mean[4 * width + c];
  }
  for (let i = 0; i < STATE; i++) {
    const g = gain[i] * perVariance;
    const row = i * width;
    for (let c = 0; c < width; c++) mean[row + c] += g * e[c];
  }
}

function accumulate(products: Float64Array, e: Float64Array, perVariance: number, width: number): void {
  for (let i = 0; i < width; i++) {
    const ei = e[i] * perVariance;
    if (ei === 0) continue;
    const row = i * width;
    for (let j = 0; j <= i; j++) products[row + j] += ei * e[j];
  }
}
