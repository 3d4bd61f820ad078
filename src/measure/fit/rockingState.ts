import type { Step } from './motionStep.ts';
import type { PlaneSeries } from './planeSeries.ts';
import { stepMotion, turningTilt, type RockingParameters } from './rockingMotion.ts';

/**
 * The random motion's state and how it moves from bin to bin.
 *
 * State, all mm at the edge: tilt z beyond stand and wheel (2 axes), its rate (2), slow change of
 * the offset (1), slow lean (2): a slow force towards which z is drawn as towards the stand's own;
 * then what the picture's own sway looks like: a rise of the whole edge (1), a lean across the sight (1).
 */
export const STATE = 9;

/**
 * Slow change of the offset over that of the lean. A wheel that creeps or leans hardly rises as a
 * whole (0.01 mm or less in ray-marched sweeps); what is left is drift of the edge in the picture.
 */
const OFFSET_SHARE = 0.3;

/**
 * First of the two states of the sway. A tablet on an arm that goes up and down lifts the whole edge;
 * to and fro sideways it lifts one flank and lowers the other, as a lean across the sight does. But no
 * wheel answers it: without states of its own it would be taken for a heavily damped swing, and the
 * lag that goes with such a swing turned every reading the same way by three degrees and more.
 */
export const SWAY = 7;
/** Numbers a bin in `transitionsOf`. */
export const PER_STEP = 16;

/** The tilt of a wheel with W = 1 at every bin, or from the bin `addedAt` on, as `turningTilt` gives it. */
export function turningOf(
  { timeS, turnRad }: Pick<PlaneSeries, 'timeS' | 'turnRad'>,
  { rateRadPerS: rate, dampingRatio }: RockingParameters,
  spinRatio: number,
  transitions: Float64Array,
  addedAt = 0,
): Float64Array {
  const steps = [transitions, PER_STEP, addedAt] as const;
  return turningTilt(timeS, turnRad, spinRatio, rate, dampingRatio, ...steps);
}

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

/** State covariance before the first frame, STATE × STATE. */
export function startCovariance(motion: RockingParameters): Float64Array {
  const p = new Float64Array(STATE * STATE);
  const lasting = motion.kickMm ** 2 / (4 * motion.dampingRatio);
  const slow = motion.slowMm ** 2;
  const z = lasting + motion.startMm ** 2 + slow;
  const v = z * motion.rateRadPerS ** 2;
  const sway = [motion.swayDownMm ** 2, motion.swayAcrossMm ** 2];
  [z, z, v, v, OFFSET_SHARE ** 2 * slow, slow, slow, ...sway].forEach((variance, i) => {
    p[i * STATE + i] = variance;
  });
  for (const [i, j] of [
    [0, 5],
    [1, 6],
  ]) {
    p[i * STATE + j] = slow;
    p[j * STATE + i] = slow;
  }
  return p;
}

/** Rows of z and its rate in the step matrix, 4 × STATE, from the complex numbers at bin `b`. */
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

/** P ← F·P·Fᵀ + Q: the first four rows of F are `f` (4 × STATE), slow parts and sway only die away. */
export function predictCovariance(
  p: Float64Array,
  f: Float64Array,
  kept: Step,
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
        f0 * p[j] +
        f1 * p[STATE + j] +
        f2 * p[2 * STATE + j] +
        f3 * p[3 * STATE + j] +
        f5 * p[5 * STATE + j] +
        f6 * p[6 * STATE + j];
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
      const value = scratch[row + j] * (j < SWAY ? kept.slow : kept.sway);
      p[row + j] = value;
      p[j * STATE + i] = value;
    }
  }
  for (let i = 4; i < STATE; i++) {
    const here = i < SWAY ? kept.slow : kept.sway;
    for (let j = 4; j < STATE; j++) p[i * STATE + j] *= here * (j < SWAY ? kept.slow : kept.sway);
  }
  const slowNoise = motion.slowMm ** 2 * (1 - kept.slow ** 2);
  addNoise(p, 4, 4, OFFSET_SHARE ** 2 * slowNoise);
  addNoise(p, 5, 5, slowNoise);
  addNoise(p, 6, 6, slowNoise);
  addNoise(p, SWAY, SWAY, motion.swayDownMm ** 2 * (1 - kept.sway ** 2));
  addNoise(p, SWAY + 1, SWAY + 1, motion.swayAcrossMm ** 2 * (1 - kept.sway ** 2));
  const at = b * PER_STEP;
  const q = kept.force;
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
  h[SWAY] = l0;
  h[SWAY + 1] = l2;
}

/** K = P·h for an `h` of `observationRow`; returns h·P·h. */
export function crossCovariance(p: Float64Array, h: Float64Array, out: Float64Array): number {
  let variance = 0;
  const h0 = h[0];
  const h1 = h[1];
  const h4 = h[4];
  const swayAcross = h[SWAY + 1];
  for (let i = 0; i < STATE; i++) {
    const row = i * STATE;
    const value =
      p[row] * h0 +
      p[row + 1] * h1 +
      (p[row + 4] + p[row + SWAY]) * h4 +
      p[row + SWAY + 1] * swayAcross;
    out[i] = value;
    variance += h[i] * value;
  }
  return variance;
}
