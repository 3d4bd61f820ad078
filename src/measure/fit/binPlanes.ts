import type { SweepObservations } from '../../contract/observations.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';
import type { FrameBins } from './frameBins.ts';
import { choleskyInPlace } from './smallMatrix.ts';
import { HIGHER_WAVES } from './tiltFit.ts';

/**
 * Every bin of frames, split in two by exact algebra (weighted least squares within the bin):
 *
 * - its *plane*: offset and two tilts, with their covariance. Rocking lives here;
 * - what *deviates* from the plane: it knows nothing of rocking, and tells the higher waves and
 *   the azimuths' own constants.
 *
 * Columns of both: the heights, waves n = 2..4 (cosine, sine), then one constant an azimuth.
 */
export interface BinPlanes {
  readonly count: number;
  /** 1 + HIGHER_WAVES + A. */
  readonly columnCount: number;
  readonly timeS: Float64Array;
  readonly turnRad: Float64Array;
  /** Weighted least-squares plane of each column; count × 3 × columnCount. */
  readonly plane: Float64Array;
  /** Covariance of the plane of heights for their standard errors; count × 9. */
  readonly covariance: Float64Array;
  /** Σ over bins of the deviations' weighted products; columnCount². */
  readonly deviations: Float64Array;
  /** Degrees of freedom in the deviations: distinct (bin, azimuth) cells less three a bin. */
  readonly deviationFreedom: number;
}

/** Heights of one bin averaged by azimuth, with the averages of the waves' columns. */
interface BinMeans {
  readonly weight: Float64Array;
  /** A × (1 + HIGHER_WAVES). */
  readonly mean: Float64Array;
}

const CARRIED = 1 + HIGHER_WAVES;

/** @param cellWeight weight of each height, 1/mm²; 0 where none; length F·A. */
export function reduceToPlanes(
  observations: SweepObservations,
  bins: FrameBins,
  cellWeight: Float64Array,
): BinPlanes {
  const azimuths = observations.azimuthsDeg.length;
  const columnCount = CARRIED + azimuths;
  const { count } = bins;
  const out = {
    count,
    columnCount,
    timeS: new Float64Array(count),
    turnRad: new Float64Array(count),
    plane: new Float64Array(count * 3 * columnCount),
    covariance: new Float64Array(count * 9),
    deviations: new Float64Array(columnCount * columnCount),
    deviationFreedom: 0,
  };
  const trig = waveTable(observations.azimuthsDeg);
  const means: BinMeans = {
    weight: new Float64Array(azimuths),
    mean: new Float64Array(azimuths * CARRIED),
  };
  let f = 0;
  for (let b = 0; b < count; b++) {
    means.weight.fill(0);
    means.mean.fill(0);
    let frames = 0;
    for (; f < bins.binOfFrame.length && bins.binOfFrame[f] <= b; f++) {
      if (bins.binOfFrame[f] !== b) continue;
      out.timeS[b] += observations.timeS[f];
      out.turnRad[b] += observations.turnDeg[f] * RAD_PER_DEG;
      frames++;
      addFrame(means, observations, cellWeight, trig, f);
    }
    out.timeS[b] /= frames;
    out.turnRad[b] /= frames;
    for (let a = 0; a < azimuths; a++) {
      if (means.weight[a] === 0) continue;
      for (let k = 0; k < CARRIED; k++) means.mean[a * CARRIED + k] /= means.weight[a];
    }
    out.deviationFreedom += splitBin(out, bins, means, b);
  }
  fillSymmetric(out.deviations, columnCount);
  return out;
}

/** cos nα and sin nα for n = 2..4; A × HIGHER_WAVES. */
function waveTable(azimuthsDeg: Float64Array): Float64Array {
  const table = new Float64Array(azimuthsDeg.length * HIGHER_WAVES);
  azimuthsDeg.forEach((azimuthDeg, a) => {
    for (let n = 2; n <= 4; n++) {
      table[a * HIGHER_WAVES + 2 * (n - 2)] = Math.cos(n * azimuthDeg * RAD_PER_DEG);
      table[a * HIGHER_WAVES + 2 * (n - 2) + 1] = Math.sin(n * azimuthDeg * RAD_PER_DEG);
    }
  });
  return table;
}

/** Adds one frame: cos n(α − φ) and sin n(α − φ) come from the table by the addition theorem. */
function addFrame(
  means: BinMeans,
  observations: SweepObservations,
  cellWeight: Float64Array,
  trig: Float64Array,
  f: number,
): void {
  const { weight, mean } = means;
  const azimuths = weight.length;
  const turn = observations.turnDeg[f] * RAD_PER_DEG;
  const c2 = Math.cos(2 * turn);
  const s2 = Math.sin(2 * turn);
  const c3 = Math.cos(3 * turn);
  const s3 = Math.sin(3 * turn);
  const c4 = Math.cos(4 * turn);
  const s4 = Math.sin(4 * turn);
  for (let a = 0; a < azimuths; a++) {
    const w = cellWeight[f * azimuths + a];
    if (w === 0) continue;
    const at = a * CARRIED;
    const t = a * HIGHER_WAVES;
    weight[a] += w;
    mean[at] += w * observations.heightMm[f * azimuths + a];
    mean[at + 1] += w * (trig[t] * c2 + trig[t + 1] * s2);
    mean[at + 2] += w * (trig[t + 1] * c2 - trig[t] * s2);
    mean[at + 3] += w * (trig[t + 2] * c3 + trig[t + 3] * s3);
    mean[at + 4] += w * (trig[t + 3] * c3 - trig[t + 2] * s3);
    mean[at + 5] += w * (trig[t + 4] * c4 + trig[t + 5] * s4);
    mean[at + 6] += w * (trig[t + 5] * c4 - trig[t + 4] * s4);
  }
}

type MutablePlanes = { -readonly [K in keyof BinPlanes]: BinPlanes[K] };

/** Plane of each column and the products of what deviates from it. Returns the freedom added. */
function splitBin(out: MutablePlanes, bins: FrameBins, means: BinMeans, b: number): number {
  const { weight, mean } = means;
  const azimuths = weight.length;
  const { columnCount, plane, deviations } = out;
  const information = new Float64Array(9);
  // UᵀWX: 3 × columnCount.
  const crossed = plane.subarray(b * 3 * columnCount, (b + 1) * 3 * columnCount);
  let cells = 0;
  for (let a = 0; a < azimuths; a++) {
    const w = weight[a];
    if (w === 0) continue;
    cells++;
    const c = bins.cosAzimuth[a];
    const s = bins.sinAzimuth[a];
    information[0] += w;
    information[3] += w * c;
    information[4] += w * c * c;
    information[6] += w * s;
    information[7] += w * s * c;
    information[8] += w * s * s;
    for (let k = 0; k < CARRIED; k++) {
      const wx = w * mean[a * CARRIED + k];
      crossed[k] += wx;
      crossed[columnCount + k] += wx * c;
      crossed[2 * columnCount + k] += wx * s;
      for (let j = 0; j <= k; j++) deviations[k * columnCount + j] += wx * mean[a * CARRIED + j];
    }
    const at = CARRIED + a;
    crossed[at] = w;
    crossed[columnCount + at] = w * c;
    crossed[2 * columnCount + at] = w * s;
    for (let k = 0; k < CARRIED; k++) deviations[at * columnCount + k] += w * mean[a * CARRIED + k];
    deviations[at * columnCount + at] += w;
  }
  if (!choleskyInPlace(information, 3)) throw new RangeError(`bin ${b} has no plane`);
  solvePlane(out, information, crossed, b);
  return cells - 3;
}

function solvePlane(out: MutablePlanes, l: Float64Array, crossed: Float64Array, b: number): void {
  const { columnCount: n, deviations, covariance } = out;
  const half = new Float64Array(3 * n);
  for (let k = 0; k < n; k++) {
    const h0 = crossed[k] / l[0];
    const h1 = (crossed[n + k] - l[3] * h0) / l[4];
    const h2 = (crossed[2 * n + k] - l[6] * h0 - l[7] * h1) / l[8];
    half[k] = h0;
    half[n + k] = h1;
    half[2 * n + k] = h2;
    const x2 = h2 / l[8];
    const x1 = (h1 - l[7] * x2) / l[4];
    crossed[k] = (h0 - l[3] * x1 - l[6] * x2) / l[0];
    crossed[n + k] = x1;
    crossed[2 * n + k] = x2;
  }
  for (let k = 0; k < n; k++) {
    const h0 = half[k];
    const h1 = half[n + k];
    const h2 = half[2 * n + k];
    if (h0 === 0 && h1 === 0 && h2 === 0) continue;
    for (let j = 0; j <= k; j++) {
      deviations[k * n + j] -= h0 * half[j] + h1 * half[n + j] + h2 * half[2 * n + j];
    }
  }
  // (L·Lᵀ)⁻¹ from the inverse of L.
  const i00 = 1 / l[0];
  const i11 = 1 / l[4];
  const i22 = 1 / l[8];
  const i10 = -l[3] * i00 * i11;
  const i21 = -l[7] * i11 * i22;
  const i20 = -(l[6] * i00 + l[7] * i10) * i22;
  covariance.set(
    [
      i00 * i00 + i10 * i10 + i20 * i20,
      i10 * i11 + i20 * i21,
      i20 * i22,
      i10 * i11 + i20 * i21,
      i11 * i11 + i21 * i21,
      i21 * i22,
      i20 * i22,
      i21 * i22,
      i22 * i22,
    ],
    b * 9,
  );
}

function fillSymmetric(a: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) a[j * n + i] = a[i * n + j];
}
