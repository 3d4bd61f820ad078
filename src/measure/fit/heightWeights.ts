import type { SweepObservations } from '../../contract/observations.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { isUsable, type FrameBins } from './frameBins.ts';
import { HIGHER_WAVES } from './tiltFit.ts';

/**
 * Weight of each height by how well it lies on its frame's plane: 1 up to `FLAT_UP_TO` standard
 * deviations, then falling with the square, as for a Student t. A finger on half of the tread
 * thus does not pull the plane along.
 */
export interface HeightWeights {
  /** weight / standardError², 1/mm²; 0 where there is no height; length F·A. */
  readonly cellWeight: Float64Array;
  /** Mean robust weight of each frame's heights, 0 to 1; length F. */
  readonly frameAgreement: Float64Array;
  /** Scatter about the planes over the standard errors. */
  readonly whiteScale: number;
  /** Correlation of neighbouring azimuths' deviations in one frame, and of one azimuth's a bin later. */
  readonly azimuthCorrelation: number;
  readonly timeCorrelation: number;
}

/** Standard deviations up to which a height counts in full: one in eighty lies beyond. */
const FLAT_UP_TO = 2.5;
const PLANE_ROUNDS = 3;
/** |z| that half of Gaussian values stay under. */
const GAUSSIAN_MEDIAN = 0.6745;

/**
 * @param known waves n = 2..4, then one constant an azimuth; length HIGHER_WAVES + A.
 * @param earlierScale scatter found in an earlier round, or null to find it by plain planes first.
 */
export function weighHeights(
  observations: SweepObservations,
  bins: FrameBins,
  known: Float64Array,
  earlierScale: number | null,
): HeightWeights {
  const firstScale =
    earlierScale ?? medianScale(planeResiduals(observations, bins, known, null).scaled);
  const residual = planeResiduals(observations, bins, known, firstScale);
  return weightsFrom(observations, bins, residual, medianScale(residual.scaled));
}

interface PlaneResiduals {
  /** (height − frame's robust plane) / its standard error; NaN where none; length F·A. */
  readonly scaled: Float64Array;
}

function planeResiduals(
  observations: SweepObservations,
  bins: FrameBins,
  known: Float64Array,
  scale: number | null,
): PlaneResiduals {
  const azimuths = observations.azimuthsDeg.length;
  const frames = observations.timeS.length;
  const scaled = new Float64Array(frames * azimuths).fill(NaN);
  const row = new Float64Array(azimuths);
  const error = new Float64Array(azimuths);
  const plane = new Float64Array(3);
  const last = new Float64Array(3);
  let haveLast = false;
  for (let f = 0; f < frames; f++) {
    if (bins.binOfFrame[f] < 0) continue;
    readRow(observations, bins, known, f, row, error);
    let loss = fitPlane(bins, row, error, scale, null, plane);
    if (haveLast && scale !== null) {
      // A start from the frame before finds the plane even where a hand hides half of the tread.
      const other = new Float64Array(3);
      const otherLoss = fitPlane(bins, row, error, scale, last, other);
      if (otherLoss < loss) {
        loss = otherLoss;
        plane.set(other);
      }
    }
    last.set(plane);
    haveLast = true;
    // A plane takes up three freedoms of what is seen: the rest scatters less than it should.
    let seen = 0;
    for (let a = 0; a < azimuths; a++) if (error[a] > 0) seen++;
    const widen = Math.sqrt(seen / (seen - 3));
    for (let a = 0; a < azimuths; a++) {
      if (error[a] === 0) continue;
      const off = row[a] - plane[0] - plane[1] * bins.cosAzimuth[a] - plane[2] * bins.sinAzimuth[a];
      scaled[f * azimuths + a] = (widen * off) / error[a];
    }
  }
  return { scaled };
}

/** Heights of a frame less known waves and constants; `error` is 0 where there is none. */
function readRow(
  observations: SweepObservations,
  bins: FrameBins,
  known: Float64Array,
  f: number,
  row: Float64Array,
  error: Float64Array,
): void {
  const azimuths = row.length;
  const turn = observations.turnDeg[f] * RAD_PER_DEG;
  const ct = Math.cos(turn);
  const st = Math.sin(turn);
  for (let a = 0; a < azimuths; a++) {
    const at = f * azimuths + a;
    if (!isUsable(observations.heightMm[at], observations.standardErrorMm[at])) {
      error[a] = 0;
      continue;
    }
    error[a] = observations.standardErrorMm[at];
    // cos β and sin β for β = α − φ; higher waves by Chebyshev's recurrence.
    const c = bins.cosAzimuth[a] * ct + bins.sinAzimuth[a] * st;
    const s = bins.sinAzimuth[a] * ct - bins.cosAzimuth[a] * st;
    const c2 = 2 * c * c - 1;
    const s2 = 2 * s * c;
    const c3 = 2 * c * c2 - c;
    const s3 = 2 * c * s2 - s;
    const c4 = 2 * c * c3 - c2;
    const s4 = 2 * c * s3 - s2;
    const wave =
      known[0] * c2 + known[1] * s2 + known[2] * c3 + known[3] * s3 + known[4] * c4 + known[5] * s4;
    row[a] = observations.heightMm[at] - wave - known[HIGHER_WAVES + a];
  }
}

/** Reweighted plane of one frame; returns the loss by which two of them are compared. */
function fitPlane(
  bins: FrameBins,
  row: Float64Array,
  error: Float64Array,
  scale: number | null,
  start: Float64Array | null,
  plane: Float64Array,
): number {
  if (start !== null) plane.set(start);
  const rounds = scale === null ? 1 : PLANE_ROUNDS;
  const { cosAzimuth, sinAzimuth } = bins;
  let loss = 0;
  for (let round = 0; round < rounds; round++) {
    let m00 = 0;
    let m10 = 0;
    let m11 = 0;
    let m20 = 0;
    let m21 = 0;
    let m22 = 0;
    let r0 = 0;
    let r1 = 0;
    let r2 = 0;
    loss = 0;
    for (let a = 0; a < row.length; a++) {
      if (error[a] === 0) continue;
      const c = cosAzimuth[a];
      const s = sinAzimuth[a];
      let w = 1 / (error[a] * error[a]);
      if (scale !== null && (round > 0 || start !== null)) {
        const z = (row[a] - plane[0] - plane[1] * c - plane[2] * s) / (error[a] * scale);
        const share = robustShare(z * z);
        w *= share;
        loss += share < 1 ? FLAT_UP_TO ** 2 * (1 - Math.log(share)) : z * z;
      }
      m00 += w;
      m10 += w * c;
      m11 += w * c * c;
      m20 += w * s;
      m21 += w * s * c;
      m22 += w * s * s;
      r0 += w * row[a];
      r1 += w * row[a] * c;
      r2 += w * row[a] * s;
    }
    solveThree(m00, m10, m11, m20, m21, m22, r0, r1, r2, plane);
  }
  return loss;
}

function solveThree(
  m00: number, m10: number, m11: number, m20: number, m21: number, m22: number,
  r0: number, r1: number, r2: number, out: Float64Array,
): void {
  const l10 = m10 / m00;
  const l20 = m20 / m00;
  const d1 = m11 - l10 * m10;
  const l21 = (m21 - l20 * m10) / d1;
  const d2 = m22 - l20 * m20 - l21 * l21 * d1;
  const y1 = r1 - l10 * r0;
  const y2 = r2 - l20 * r0 - l21 * y1;
  out[2] = y2 / d2;
  out[1] = y1 / d1 - l21 * out[2];
  out[0] = r0 / m00 - l10 * out[1] - l20 * out[2];
}

function robustShare(z2: number): number {
  return z2 <= FLAT_UP_TO ** 2 ? 1 : FLAT_UP_TO ** 2 / z2;
}

/** Robust standard deviation of values that should have 1, by their median size. */
function medianScale(scaled: Float64Array): number {
  // A thirtieth of the values is plenty for a median, and sorting all of them costs most of a fit.
  const stride = Math.max(1, Math.floor(scaled.length / 4000));
  const sizes: number[] = [];
  for (let i = 0; i < scaled.length; i += stride) {
    if (scaled[i] === scaled[i]) sizes.push(Math.abs(scaled[i]));
  }
  if (sizes.length === 0) return 1;
  const sorted = Float64Array.from(sizes).sort();
  return Math.max(sorted[sorted.length >> 1] / GAUSSIAN_MEDIAN, LEAST_SCALE);
}

/** Noise-free heights (tests, drawings) must not make the scale zero, no unit. */
const LEAST_SCALE = 1e-6;

function weightsFrom(
  observations: SweepObservations,
  bins: FrameBins,
  residuals: PlaneResiduals,
  scale: number,
): HeightWeights {
  const azimuths = observations.azimuthsDeg.length;
  const frames = observations.timeS.length;
  const cellWeight = new Float64Array(frames * azimuths);
  const frameAgreement = new Float64Array(frames);
  const { scaled } = residuals;
  const perBin = Math.max(1, Math.round(bins.usedFrames / bins.count));
  let squares = 0;
  let full = 0;
  let acrossAzimuth = 0;
  let pairs = 0;
  let acrossTime = 0;
  let timePairs = 0;
  for (let f = 0; f < frames; f++) {
    if (bins.binOfFrame[f] < 0) continue;
    let sum = 0;
    let seen = 0;
    let before = NaN;
    for (let a = 0; a < azimuths; a++) {
      const at = f * azimuths + a;
      const z = scaled[at] / scale;
      if (z !== z) {
        before = NaN;
        continue;
      }
      const share = robustShare(z * z);
      cellWeight[at] = share / observations.standardErrorMm[at] ** 2;
      sum += share;
      seen++;
      if (share < 1) {
        before = NaN;
        continue;
      }
      squares += z * z;
      full++;
      if (before === before) {
        acrossAzimuth += z * before;
        pairs++;
      }
      before = z;
      const earlier = f >= perBin ? scaled[at - perBin * azimuths] / scale : NaN;
      if (Math.abs(earlier) < FLAT_UP_TO) {
        acrossTime += z * earlier;
        timePairs++;
      }
    }
    frameAgreement[f] = sum / seen;
  }
  const variance = squares / Math.max(full, 1);
  return {
    cellWeight,
    frameAgreement,
    whiteScale: scale,
    azimuthCorrelation: variance > 0 ? acrossAzimuth / Math.max(pairs, 1) / variance : 0,
    timeCorrelation: variance > 0 ? acrossTime / Math.max(timePairs, 1) / variance : 0,
  };
}
