import type { SweepObservations } from '../../contract/observations.ts';
import { FLAT_UP_TO, fitPlane, readRow, robustShare } from './framePlane.ts';
import type { FrameBins } from './frameBins.ts';
import { LEAST_NOISE_SCALE } from './tiltFit.ts';

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
  return Math.max(sorted[sorted.length >> 1] / GAUSSIAN_MEDIAN, LEAST_NOISE_SCALE);
}

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
