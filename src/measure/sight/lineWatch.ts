import type { YuvPicture } from '../../contract/picture.ts';
import { cylinderPointAtPixel } from '../geometry/cylinder.ts';
import { projectPoint } from '../geometry/camera.ts';
import { findLaserLine } from '../laser/laserLine.ts';
import { roomPoint, type WheelView } from '../sweep/wheelView.ts';

/**
 * Watches the line where it must be: on the fixed curve that the level sheet draws on the rib's
 * face, or a little above it in the picture where it falls into slots and the groove.
 */
export interface LineWatch {
  readonly loPx: Int16Array;
  readonly hiPx: Int16Array;
  readonly x0: number;
  readonly x1: number;
  /** Row of the curve in each picture column, NaN outside the band. */
  readonly curvePx: Float32Array;
  readonly stepPx: number;
  /** Where the line was found over all frames: counts by bin of columns and by offset from the curve. */
  readonly offsetCounts: Uint32Array;
}

export interface LineSeen {
  /** Share of the watched columns in which a line was found. */
  readonly share: number;
  /** Median distance of the line on the face from its curve, px, positive down; NaN with too few. */
  readonly offsetPx: number;
}

/** The sheet falls up to 10 mm deeper into a groove: so many pixels higher at most, per mm of picture scale. */
const ABOVE_MM = 11;
const BELOW_MM = 5;
/** Offsets from the curve that are looked at for a camera that moved, px. */
const NEAR_CURVE_PX = 6.4;
const MIN_NEAR = 12;
/** The pool of offsets: bins along the picture, and by offset in quarter pixels from −16 to +16. */
export const COLUMN_BINS = 160;
const OFFSET_STEP_PX = 0.25;
const OFFSET_REACH_PX = 16;
export const OFFSET_BINS = (2 * OFFSET_REACH_PX) / OFFSET_STEP_PX;

export function createLineWatch(view: WheelView): LineWatch {
  const { widthPx, heightPx } = view.sight.camera.pose;
  const curvePx = new Float32Array(widthPx).fill(NaN);
  const mmPerPx = new Float32Array(widthPx).fill(NaN);
  const at = new Float64Array(2);
  let last: { x: number; y: number } | null = null;
  for (const azimuthDeg of view.band.azimuthDeg) {
    const { xMm, yMm } = roomPoint(view, azimuthDeg);
    projectPoint(view.sight.camera, xMm, yMm, -1, at);
    const yBelow = at[1];
    projectPoint(view.sight.camera, xMm, yMm, 0, at);
    const here = { x: at[0], y: at[1] };
    if (last) fillBetween(curvePx, last, here);
    const column = Math.floor(here.x);
    if (column >= 0 && column < widthPx) mmPerPx[column] = 1 / Math.max(0.2, yBelow - here.y);
    last = here;
  }
  const loPx = new Int16Array(widthPx).fill(1);
  const hiPx = new Int16Array(widthPx).fill(0);
  let [x0, x1, scale] = [widthPx, 0, 1];
  for (let x = 0; x < widthPx; x++) {
    if (mmPerPx[x] === mmPerPx[x]) scale = mmPerPx[x];
    if (curvePx[x] !== curvePx[x]) continue;
    loPx[x] = Math.max(0, Math.floor(curvePx[x] - ABOVE_MM / scale));
    hiPx[x] = Math.min(heightPx - 1, Math.ceil(curvePx[x] + BELOW_MM / scale));
    x0 = Math.min(x0, x);
    x1 = Math.max(x1, x + 1);
  }
  const stepPx = Math.max(2, 2 * Math.round(widthPx / 640));
  const offsetCounts = new Uint32Array(COLUMN_BINS * OFFSET_BINS);
  return { loPx, hiPx, x0, x1, curvePx, stepPx, offsetCounts };
}

function fillBetween(curve: Float32Array, a: { x: number; y: number }, b: { x: number; y: number }): void {
  const [from, to] = a.x < b.x ? [a, b] : [b, a];
  for (let x = Math.max(0, Math.ceil(from.x - 0.5)); x + 0.5 <= to.x && x < curve.length; x++) {
    const part = to.x > from.x ? (x + 0.5 - from.x) / (to.x - from.x) : 0;
    curve[x] = from.y + part * (to.y - from.y);
  }
}

export function watchLine(watch: LineWatch, view: WheelView, picture: YuvPicture): LineSeen {
  const { x0, x1, loPx, hiPx, stepPx, curvePx } = watch;
  let yLow = picture.heightPx;
  let yHigh = 0;
  for (let x = x0; x < x1; x++) {
    if (loPx[x] > hiPx[x]) continue;
    if (loPx[x] < yLow) yLow = loPx[x];
    if (hiPx[x] > yHigh) yHigh = hiPx[x];
  }
  const line = findLaserLine(picture, view.sight.laserColour, {
    region: { x0, y0: yLow, x1, y1: yHigh + 1 },
    window: { loPx, hiPx },
    columnStepPx: stepPx,
  });
  const offsets: number[] = [];
  for (let i = 0; i < line.rowPx.length; i++) {
    const column = Math.floor(line.columnsPx[i]);
    const offset = line.rowPx[i] - curvePx[column];
    if (offset !== offset) continue;
    countOffset(watch, column / picture.widthPx, offset);
    if (Math.abs(offset) < NEAR_CURVE_PX) offsets.push(offset);
  }
  offsets.sort((a, b) => a - b);
  // The face is the lowest the line comes: the upper middle of the offsets, not their middle.
  const offsetPx = offsets.length >= MIN_NEAR ? offsets[Math.floor(offsets.length * 0.7)] : NaN;
  return { share: line.presentCount / Math.max(1, line.rowPx.length), offsetPx };
}

function countOffset(watch: LineWatch, share: number, offsetPx: number): void {
  const at = Math.floor((offsetPx + OFFSET_REACH_PX) / OFFSET_STEP_PX);
  if (at < 0 || at >= OFFSET_BINS) return;
  watch.offsetCounts[Math.floor(share * COLUMN_BINS) * OFFSET_BINS + at]++;
}

/** A cluster of offsets counts when it holds this share of the fullest one's line points. */
const CLUSTER_SHARE = 0.3;
/** Half width of a cluster: creep and the tread's crown move the line on the face by about a pixel. */
const CLUSTER_HALF_PX = 1.5;
const MIN_CLUSTER_COUNT = 20;

/**
 * The line on the rib's face, pooled over the sweep, one point for each bin of columns. Where the
 * sheet falls into a groove it lands farther away, which from above is higher in the picture: of
 * the clusters of offsets in a bin the lowest in the picture is the face.
 */
export function pooledFaceLine(watch: LineWatch, widthPx: number): { xPx: number[]; yPx: number[] } {
  const xPx: number[] = [];
  const yPx: number[] = [];
  const half = CLUSTER_HALF_PX / OFFSET_STEP_PX;
  const sums = new Float64Array(OFFSET_BINS);
  for (let bin = 0; bin < COLUMN_BINS; bin++) {
    const counts = watch.offsetCounts.subarray(bin * OFFSET_BINS, (bin + 1) * OFFSET_BINS);
    const middleColumn = ((bin + 0.5) / COLUMN_BINS) * widthPx;
    const curve = watch.curvePx[Math.floor(middleColumn)];
    let fullest = 0;
    for (let i = 0; i < OFFSET_BINS; i++) {
      sums[i] = 0;
      for (let k = Math.max(0, i - half); k <= Math.min(OFFSET_BINS - 1, i + half); k++) sums[i] += counts[k];
      fullest = Math.max(fullest, sums[i]);
    }
    if (fullest < MIN_CLUSTER_COUNT || curve !== curve) continue;
    let at = OFFSET_BINS - 1;
    while (at > 0 && sums[at] < CLUSTER_SHARE * fullest) at--;
    // Climb to the top of that cluster.
    while (at > 0 && sums[at - 1] > sums[at]) at--;
    xPx.push(middleColumn);
    yPx.push(curve + clusterMeanPx(counts, at, half));
  }
  return { xPx, yPx };
}

function clusterMeanPx(counts: Uint32Array, at: number, half: number): number {
  let sum = 0;
  let weighted = 0;
  for (let k = Math.max(0, at - half); k <= Math.min(OFFSET_BINS - 1, at + half); k++) {
    sum += counts[k];
    weighted += counts[k] * k;
  }
  return (weighted / sum + 0.5) * OFFSET_STEP_PX - OFFSET_REACH_PX;
}

/** Height on the nominal cylinder that one row is worth at the sight, mm per px. */
export function heightScaleAtSightMmPerPx(view: WheelView): number {
  const { xPx, yPx } = view.sight.sightPx;
  const radius = view.setup.wheel.edgeRadiusMm;
  const upper = cylinderPointAtPixel(view.sight.camera, radius, xPx, yPx - 0.5);
  const lower = cylinderPointAtPixel(view.sight.camera, radius, xPx, yPx + 0.5);
  return upper && lower ? upper.zMm - lower.zMm : NaN;
}
