import { knockAt } from './knockAt.ts';
import { stepTo, type Step } from './motionStep.ts';
import type { PlaneSeries } from './planeSeries.ts';
import {
  crossCovariance,
  observationRow,
  predictCovariance,
  realTransition,
  startCovariance,
  STATE,
  SWAY,
  transitionsOf,
} from './rockingState.ts';
import type { RockingParameters } from './rockingMotion.ts';

/** A constant of this file: some module loaders look an imported one up at every use. */
const SIZE = STATE;

/**
 * What the whole sweep says of the random motion at each bin, and how far each bin's plane stands
 * off it. Fixed-interval smoother in the form of Bryson & Frazier; the standing-off is the
 * auxiliary residual of Harvey & Koopman 1992 (both from memory).
 */
export interface SmoothedMotion {
  /** Rocking, its rate, slow change, sway of the picture; count × STATE, mm and mm/s. */
  readonly state: Float64Array;
  /** Squared distance of each bin's plane from the motion in standard deviations, 3 freedoms. */
  readonly distance: Float64Array;
  /**
   * Squared size of a jump of the speed on the way to each bin in standard deviations, 2 freedoms; and
   * by how much −2·log likelihood is lower with it as a knock than without. Count each.
   */
  readonly jump: Float64Array;
  readonly knockGain: Float64Array;
}

interface Record {
  /** count × STATE and count × STATE²: state and covariance before the bin's own plane is used. */
  readonly mean: Float64Array;
  readonly covariance: Float64Array;
  /** count × 3 × STATE: gain of each scaled observation. */
  readonly gain: Float64Array;
  /** count × 3: innovation over its variance, and 1/variance. */
  readonly innovation: Float64Array;
  readonly perVariance: Float64Array;
  readonly transitions: Float64Array;
}

/** @param residual scaled planes (as in `PlaneSeries.columns`) less everything fitted; count × 3. */
export function smoothMotion(
  series: PlaneSeries,
  residual: Float64Array,
  motion: RockingParameters,
  spinRatio: number,
): SmoothedMotion {
  const record = filterForward(series, residual, motion, spinRatio);
  return smoothBackward(series, record, motion);
}

function filterForward(
  series: PlaneSeries,
  residual: Float64Array,
  motion: RockingParameters,
  spinRatio: number,
): Record {
  const { count, root } = series;
  const record: Record = {
    mean: new Float64Array(count * SIZE),
    covariance: new Float64Array(count * SIZE * SIZE),
    gain: new Float64Array(count * 3 * SIZE),
    innovation: new Float64Array(count * 3),
    perVariance: new Float64Array(count * 3),
    transitions: transitionsOf(series, motion, spinRatio),
  };
  const p = startCovariance(motion);
  const m = new Float64Array(SIZE);
  const f = new Float64Array(4 * SIZE);
  const h = new Float64Array(SIZE);
  const k = new Float64Array(SIZE);
  const perScale = 1 / motion.planeScale;
  for (let b = 0; b < count; b++) {
    if (b > 0) {
      const kept = stepTo(series, b, motion);
      realTransition(record.transitions, b, f);
      predictCovariance(p, f, kept, record.transitions, b, motion);
      predictMean(m, f, kept);
    }
    record.mean.set(m, b * SIZE);
    record.covariance.set(p, b * SIZE * SIZE);
    if (root[b * 6] === 0) continue;
    for (let r = 0; r < 3; r++) {
      observationRow(root, b, r, perScale, h);
      const perVariance = 1 / (crossCovariance(p, h, k) + 1);
      let e = residual[b * 3 + r] * perScale;
      for (let i = 0; i < SIZE; i++) e -= h[i] * m[i];
      for (let i = 0; i < SIZE; i++) {
        const g = k[i] * perVariance;
        record.gain[(b * 3 + r) * SIZE + i] = g;
        m[i] += g * e;
        for (let j = 0; j < SIZE; j++) p[i * SIZE + j] -= g * k[j];
      }
      record.innovation[b * 3 + r] = e * perVariance;
      record.perVariance[b * 3 + r] = perVariance;
    }
  }
  return record;
}

function predictMean(m: Float64Array, f: Float64Array, kept: Step): void {
  const before = Float64Array.from(m);
  for (let i = 0; i < 4; i++) {
    m[i] = 0;
    for (let j = 0; j < SIZE; j++) m[i] += f[i * SIZE + j] * before[j];
  }
  for (let i = 4; i < SIZE; i++) m[i] *= i < SWAY ? kept.slow : kept.sway;
}

function smoothBackward(
  series: PlaneSeries,
  record: Record,
  motion: RockingParameters,
): SmoothedMotion {
  const { count, timeS, root } = series;
  const state = new Float64Array(count * SIZE);
  const distance = new Float64Array(count);
  const jump = new Float64Array(count);
  const knockGain = new Float64Array(count);
  const r = new Float64Array(SIZE);
  const n = new Float64Array(SIZE * SIZE);
  const f = new Float64Array(4 * SIZE);
  const h = new Float64Array(SIZE);
  const perScale = 1 / motion.planeScale;
  for (let b = count - 1; b >= 0; b--) {
    for (let i = 2; i >= 0 && root[b * 6] !== 0; i--) {
      observationRow(root, b, i, perScale, h);
      const at = b * 3 + i;
      distance[b] += takeBack(
        r,
        n,
        h,
        record.gain,
        at,
        record.innovation[at],
        record.perVariance[at],
      );
    }
    const p = record.covariance;
    for (let i = 0; i < SIZE; i++) {
      let sum = record.mean[b * SIZE + i];
      for (let j = 0; j < SIZE; j++) sum += p[b * SIZE * SIZE + i * SIZE + j] * r[j];
      state[b * SIZE + i] = sum;
    }
    if (b === 0) break;
    const isKnown = series.knocked[b] === 1;
    const knock = knockAt(r, n, timeS[b] - timeS[b - 1], motion.rateRadPerS, isKnown);
    jump[b] = knock.squared;
    knockGain[b] = knock.gain;
    const kept = stepTo(series, b, motion);
    realTransition(record.transitions, b, f);
    transposeStep(r, n, f, kept);
  }
  return { state, distance, jump, knockGain };
}

const work = new Float64Array(SIZE * SIZE);

/** One scaled observation taken back into r and N; returns its squared auxiliary residual. */
function takeBack(
  r: Float64Array,
  n: Float64Array,
  h: Float64Array,
  gains: Float64Array,
  at: number,
  innovation: number,
  perVariance: number,
): number {
  const g = gains.subarray(at * SIZE, (at + 1) * SIZE);
  let gr = 0;
  let gng = 0;
  // N·g, kept in `work`.
  for (let i = 0; i < SIZE; i++) {
    gr += g[i] * r[i];
    let sum = 0;
    for (let j = 0; j < SIZE; j++) sum += n[i * SIZE + j] * g[j];
    work[i] = sum;
    gng += g[i] * sum;
  }
  const u = innovation - gr;
  const d = perVariance + gng;
  for (let i = 0; i < SIZE; i++) {
    r[i] += h[i] * u;
    for (let j = 0; j < SIZE; j++) {
      n[i * SIZE + j] += h[i] * h[j] * d - h[i] * work[j] - work[i] * h[j];
    }
  }
  return (u * u) / d;
}

/** r ← Fᵀ·r, N ← Fᵀ·N·F; rows of F: `f` (4 × STATE), then the slow parts and sway by what is kept of them. */
function transposeStep(r: Float64Array, n: Float64Array, f: Float64Array, kept: Step): void {
  const keepOf = (j: number) => (j < 4 ? 0 : j < SWAY ? kept.slow : kept.sway);
  const [r0, r1, r2, r3] = r;
  for (let j = 0; j < SIZE; j++) {
    r[j] =
      f[j] * r0 + f[SIZE + j] * r1 + f[2 * SIZE + j] * r2 + f[3 * SIZE + j] * r3 + keepOf(j) * r[j];
  }
  for (let i = 0; i < SIZE; i++) {
    const at = i * SIZE;
    const n0 = n[at];
    const n1 = n[at + 1];
    const n2 = n[at + 2];
    const n3 = n[at + 3];
    for (let j = 0; j < SIZE; j++) {
      work[at + j] =
        n0 * f[j] +
        n1 * f[SIZE + j] +
        n2 * f[2 * SIZE + j] +
        n3 * f[3 * SIZE + j] +
        keepOf(j) * n[at + j];
    }
  }
  for (let j = 0; j < SIZE; j++) {
    const w0 = work[j];
    const w1 = work[SIZE + j];
    const w2 = work[2 * SIZE + j];
    const w3 = work[3 * SIZE + j];
    for (let i = 0; i < SIZE; i++) {
      n[i * SIZE + j] =
        f[i] * w0 +
        f[SIZE + i] * w1 +
        f[2 * SIZE + i] * w2 +
        f[3 * SIZE + i] * w3 +
        keepOf(i) * work[i * SIZE + j];
    }
  }
}
