import type { YuvPicture } from '../../contract/picture.ts';
import type { LineRows, SeenLine } from '../../contract/sweep.ts';
import { BLOCK_WIDTH_DEG } from '../edge/blockProfiles.ts';
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
  /** Block of azimuth to which each picture column belongs, −1 for none. */
  readonly blockOfColumn: Int16Array;
  readonly blocks: number;
  /** Rows found in each picture, by its time, for another look over the same film; null: none is to come. */
  kept: Map<number, LineRows> | null;
  /** Rows that an earlier look found. */
  known: SeenLine['rows'] | null;
}

export interface LineSeen {
  /** Share of the watched columns in which a line was found. */
  readonly share: number;
  /** Distance of the line from its curve in each block, px, positive down; NaN where not seen. */
  readonly offsetPx: Float32Array;
}

/** The sheet falls up to 10 mm deeper into a groove: so many pixels higher at most, per mm of picture scale. */
const ABOVE_MM = 11;
const BELOW_MM = 5;
/** Columns of a block that must show the line before the block has a row of it. */
const MIN_COLUMNS = 3;

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
  const blocks = view.layout.azimuthsDeg.length;
  return {
    loPx,
    hiPx,
    x0,
    x1,
    curvePx,
    stepPx,
    blocks,
    blockOfColumn: blockColumns(view, widthPx),
    kept: null,
    known: null,
  };
}

/**
 * A curve that lies nearer than this to the earlier look's has the line in both windows: a groove is
 * seldom deeper than 9 mm of the ABOVE_MM, and a face bulges by 1 or 2 of the BELOW_MM.
 */
const SAME_CURVE_MM = 2;
/** Columns at either end that the earlier look may have left out, px of a picture 1280 wide: half a block. */
const LEFT_OUT_PX = 16;

/** Takes over where an earlier look found the line, if it looked where this one would; else it is looked for. */
export function knowLine(watch: LineWatch, seen: SeenLine): void {
  const { x0, x1, curvePx, loPx } = watch;
  const { length } = curvePx;
  if (seen.curvePx.length !== length) return;
  const marginPx = Math.ceil((LEFT_OUT_PX * length) / 1280);
  for (let x = x0; x < x1; x++) {
    if (curvePx[x] !== curvePx[x]) continue;
    const offPx = Math.abs(curvePx[x] - seen.curvePx[x]);
    const isInside = x >= x0 + marginPx && x < x1 - marginPx;
    if (offPx !== offPx ? isInside : offPx > (SAME_CURVE_MM / ABOVE_MM) * (curvePx[x] - loPx[x]))
      return;
  }
  watch.known = seen.rows;
}

function fillBetween(
  curve: Float32Array,
  a: { x: number; y: number },
  b: { x: number; y: number },
): void {
  const [from, to] = a.x < b.x ? [a, b] : [b, a];
  for (let x = Math.max(0, Math.ceil(from.x - 0.5)); x + 0.5 <= to.x && x < curve.length; x++) {
    const part = to.x > from.x ? (x + 0.5 - from.x) / (to.x - from.x) : 0;
    curve[x] = from.y + part * (to.y - from.y);
  }
}

export function watchLine(watch: LineWatch, view: WheelView, picture: YuvPicture): LineSeen {
  const rows = watch.known?.get(picture.timeS) ?? lineRows(watch, view, picture);
  watch.kept?.set(picture.timeS, rows);
  const { rowPx, firstColumn, stepPx } = rows;
  const offsets: number[][] = Array.from({ length: watch.blocks }, () => []);
  let present = 0;
  for (let i = 0, column = firstColumn; i < rowPx.length; i++, column += stepPx) {
    if (rowPx[i] !== rowPx[i]) continue;
    present++;
    const block = watch.blockOfColumn[column];
    const offset = rowPx[i] - watch.curvePx[column];
    if (block >= 0 && offset === offset) offsets[block].push(offset);
  }
  return {
    share: present / Math.max(1, rowPx.length),
    offsetPx: Float32Array.from(offsets, (o) => (o.length >= MIN_COLUMNS ? middle(o) : NaN)),
  };
}

function lineRows(watch: LineWatch, view: WheelView, picture: YuvPicture): LineRows {
  const { x0, x1, loPx, hiPx, stepPx } = watch;
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
  const firstColumn = Math.floor(line.columnsPx[0] ?? x0);
  return { firstColumn, stepPx, rowPx: line.rowPx };
}

function middle(values: number[]): number {
  return values.sort((a, b) => a - b)[values.length >> 1];
}

function blockColumns(view: WheelView, widthPx: number): Int16Array {
  const out = new Int16Array(widthPx).fill(-1);
  const at = new Float64Array(2);
  const columnAt = (azimuthDeg: number): number => {
    const { xMm, yMm } = roomPoint(view, azimuthDeg);
    return projectPoint(view.sight.camera, xMm, yMm, 0, at) ? at[0] : NaN;
  };
  view.layout.azimuthsDeg.forEach((azimuthDeg, b) => {
    // Azimuth rises to the left.
    const from = Math.max(0, Math.round(columnAt(azimuthDeg + BLOCK_WIDTH_DEG / 2)));
    const to = Math.min(widthPx, Math.round(columnAt(azimuthDeg - BLOCK_WIDTH_DEG / 2)));
    for (let x = from; x < to; x++) out[x] = b;
  });
  return out;
}
