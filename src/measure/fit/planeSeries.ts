import type { BinPlanes } from './binPlanes.ts';
import { HIGHER_WAVES } from './tiltFit.ts';
import { choleskyInPlace } from './smallMatrix.ts';

/**
 * Planes of bins, scaled to unit white noise: what the filter over time takes in. Column 0 holds
 * the heights' planes, the others those of unknowns to be fitted.
 */
export interface PlaneSeries {
  readonly count: number;
  readonly columnCount: number;
  readonly timeS: Float64Array;
  readonly turnRad: Float64Array;
  /** 1 where the wheel was knocked on the way to this bin; count. */
  readonly knocked: Uint8Array;
  /** Lower triangle of L⁻¹ (00, 10, 11, 20, 21, 22), L·Lᵀ the plane's noise; count × 6. */
  readonly root: Float64Array;
  /** L⁻¹·plane of each column; count × 3 × columnCount. */
  readonly columns: Float64Array;
}

/** What is thought of each bin: how much it counts, and whether a knock came just before it. */
export interface BinVerdicts {
  /** 0 to 1: the bin's noise covariance is divided by it. */
  readonly weight: Float64Array;
  /** 1 where the wheel's speed jumps between the bin before and this one. */
  readonly knocked: Uint8Array;
}

/** Plane (offset, tilt 0°, tilt 90°) columns before scaling, with noise and weight for each bin. */
export interface RawPlanes {
  readonly count: number;
  readonly columnCount: number;
  readonly timeS: Float64Array;
  readonly turnRad: Float64Array;
  /** count × 3 × columnCount. */
  readonly plane: Float64Array;
  /** count × 9, mm². */
  readonly covariance: Float64Array;
}

/** Heights' planes with known waves and constants taken out, and columns for g₀ and stand. */
export function basicPlanes(planes: BinPlanes, known: Float64Array): RawPlanes {
  const { count, columnCount: n } = planes;
  const plane = new Float64Array(count * 12);
  for (let b = 0; b < count; b++) {
    for (let i = 0; i < 3; i++) {
      const at = (b * 3 + i) * n;
      let y = planes.plane[at];
      for (let k = 1; k < n; k++) y -= planes.plane[at + k] * known[k - 1];
      plane[(b * 3 + i) * 4] = y;
      plane[(b * 3 + i) * 4 + 1 + i] = 1;
    }
  }
  return { ...planes, columnCount: 4, plane };
}

/** All columns: heights, g₀, stand, waves n = 2..4, azimuth constants when asked for. */
export function fullPlanes(planes: BinPlanes, withConstants: boolean): RawPlanes {
  const { count, columnCount: n } = planes;
  const carried = withConstants ? n - 1 : HIGHER_WAVES;
  const width = 4 + carried;
  const plane = new Float64Array(count * 3 * width);
  for (let row = 0; row < count * 3; row++) {
    plane[row * width] = planes.plane[row * n];
    plane[row * width + 1 + (row % 3)] = 1;
    for (let k = 0; k < carried; k++) plane[row * width + 4 + k] = planes.plane[row * n + 1 + k];
  }
  return { ...planes, columnCount: width, plane };
}

/**
 * Averages runs of up to `run` bins by their information: fewer steps for the search of the motion.
 * A run ends at a knock, whose jump it would smear. The noise common to a bin's azimuths goes into
 * the covariance.
 */
export function mergePlanes(
  raw: RawPlanes,
  { weight, knocked }: BinVerdicts,
  offsetSdMm: number,
  run: number,
): { planes: RawPlanes; verdicts: BinVerdicts } {
  const starts = runStarts(knocked, run);
  const count = starts.length;
  const n = raw.columnCount;
  const merged = {
    count,
    columnCount: n,
    timeS: new Float64Array(count),
    turnRad: new Float64Array(count),
    plane: new Float64Array(count * 3 * n),
    covariance: new Float64Array(count * 9),
  };
  const mergedWeight = new Float64Array(count);
  for (let m = 0; m < count; m++) {
    const end = m + 1 < count ? starts[m + 1] : raw.count;
    let sum = 0;
    for (let b = starts[m]; b < end; b++) sum += Math.max(weight[b], LEAST_WEIGHT);
    for (let b = starts[m]; b < end; b++) {
      const share = Math.max(weight[b], LEAST_WEIGHT) / sum;
      merged.timeS[m] += share * raw.timeS[b];
      merged.turnRad[m] += share * raw.turnRad[b];
      const size = 3 * n;
      for (let k = 0; k < size; k++) merged.plane[m * size + k] += share * raw.plane[b * size + k];
      for (let k = 0; k < 9; k++) {
        const noise = raw.covariance[b * 9 + k] + (k === 0 ? offsetSdMm * offsetSdMm : 0);
        // A bin of weight w stands for noise covariance/w.
        merged.covariance[m * 9 + k] += (share * share * noise) / Math.max(weight[b], LEAST_WEIGHT);
      }
    }
    // The weights are in the covariance now; only bins that are out entirely stay out.
    mergedWeight[m] = sum <= LEAST_WEIGHT * (end - starts[m]) ? 0 : 1;
  }
  const verdicts = { weight: mergedWeight, knocked: Uint8Array.from(starts, (b) => knocked[b]) };
  return { planes: merged, verdicts };
}

function runStarts(knocked: Uint8Array, run: number): number[] {
  const starts: number[] = [];
  knocked.forEach((knock, b) => {
    if (b === 0 || knock === 1 || b - starts[starts.length - 1] === run) starts.push(b);
  });
  return starts;
}

/** A bin with less weight than this tells nothing and is left out, no unit. */
export const LEAST_WEIGHT = 1e-6;

/**
 * @param offsetSdMm noise common to all azimuths of a bin, beside the heights' own, mm.
 */
export function scaleToUnitNoise(
  raw: RawPlanes,
  { weight, knocked }: BinVerdicts,
  offsetSdMm: number,
): PlaneSeries {
  const { count, columnCount: n } = raw;
  const root = new Float64Array(count * 6);
  const columns = new Float64Array(count * 3 * n);
  const l = new Float64Array(9);
  for (let b = 0; b < count; b++) {
    // A zero root marks a bin that is left out.
    if (weight[b] <= LEAST_WEIGHT) continue;
    for (let k = 0; k < 9; k++) l[k] = raw.covariance[b * 9 + k] / weight[b];
    l[0] += (offsetSdMm * offsetSdMm) / weight[b];
    if (!choleskyInPlace(l, 3)) throw new RangeError(`noise of bin ${b} is not positive definite`);
    const i00 = 1 / l[0];
    const i11 = 1 / l[4];
    const i22 = 1 / l[8];
    const i10 = -l[3] * i00 * i11;
    const i21 = -l[7] * i11 * i22;
    const i20 = -(l[6] * i00 + l[7] * i10) * i22;
    root.set([i00, i10, i11, i20, i21, i22], b * 6);
    const at = b * 3 * n;
    for (let k = 0; k < n; k++) {
      const p0 = raw.plane[at + k];
      const p1 = raw.plane[at + n + k];
      const p2 = raw.plane[at + 2 * n + k];
      columns[at + k] = i00 * p0;
      columns[at + n + k] = i10 * p0 + i11 * p1;
      columns[at + 2 * n + k] = i20 * p0 + i21 * p1 + i22 * p2;
    }
  }
  const { timeS, turnRad } = raw;
  return { count, columnCount: n, timeS, turnRad, knocked, root, columns };
}

/** The series on which the search of the motion runs: bins merged `run` at a time. */
export function coarseSeries(
  raw: RawPlanes,
  verdicts: BinVerdicts,
  run: number,
  offsetSdMm: number,
): PlaneSeries {
  if (run === 1) return scaleToUnitNoise(raw, verdicts, offsetSdMm);
  const merged = mergePlanes(raw, verdicts, offsetSdMm, run);
  return scaleToUnitNoise(merged.planes, merged.verdicts, 0);
}
