import type { YuvPicture } from '../../contract/picture.ts';
import type { LinePoints } from '../geometry/circleResiduals.ts';
import type { PictureRegion } from '../laser/cellGrid.ts';
import type { LaserColour } from '../laser/laserColour.ts';
import { findLaserLine } from '../laser/laserLine.ts';

/**
 * The line of many pictures, pooled by picture column. Camera and laser stand still, so the line on
 * the rib's face is one fixed curve; where it falls into slots and grooves it lies higher, at one
 * time here and at another there, since the wheel leans as it turns. The lowest row at which the line
 * often lies is the face's: after a third of a turn nearly every column has shown it.
 */
export interface LinePool {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Rows of the line, one array of {@link BINS_PER_PICTURE} a picture, NaN where not seen. */
  readonly rowsPx: Float32Array[];
  readonly spreadsPx: number[];
  lastS: number;
}

const BINS_PER_PICTURE = 160;
/** At most so many pictures: a minute of them at four a second. Then every second one goes. */
const MOST_PICTURES = 240;
/** A column counts when it showed the line in so many pictures, and in this share of all. */
const LEAST_SEEN = 4;
const LEAST_SEEN_SHARE = 0.12;
/** Rows of one place lie within this of its middle, px: noise, creep and lean of the face. */
const CLUSTER_HALF_PX = 1.2;
/** A place counts when it holds this share of the fullest place's rows. */
const CLUSTER_SHARE = 0.3;
const MOST_SPREADS = 4000;
/** Rows above and below the line so far, by the picture's height: twice what a groove moves it. */
const REGION_MARGIN = 0.1;

export function createLinePool(widthPx: number, heightPx: number): LinePool {
  return { widthPx, heightPx, rowsPx: [], spreadsPx: [], lastS: -Infinity };
}

/** Looks for the line in a picture, whole unless a region is given, and adds its rows. */
export function poolLine(
  pool: LinePool,
  picture: YuvPicture,
  colour: LaserColour,
  region?: PictureRegion,
): void {
  const step = Math.max(1, Math.floor(picture.widthPx / BINS_PER_PICTURE));
  const line = findLaserLine(picture, colour, { columnStepPx: step, ...(region && { region }) });
  const rows = new Float32Array(BINS_PER_PICTURE).fill(NaN);
  for (let i = 0; i < line.rowPx.length; i++) {
    if (line.rowPx[i] !== line.rowPx[i]) continue;
    rows[Math.floor((line.columnsPx[i] / picture.widthPx) * BINS_PER_PICTURE)] = line.rowPx[i];
    if (pool.spreadsPx.length < MOST_SPREADS) pool.spreadsPx.push(line.spreadPx[i]);
  }
  pool.rowsPx.push(rows);
  pool.lastS = picture.timeS;
  if (pool.rowsPx.length <= MOST_PICTURES) return;
  const kept = pool.rowsPx.filter((_, i) => i % 2 === 0);
  pool.rowsPx.splice(0, pool.rowsPx.length, ...kept);
}

/** Where the line can lie in later pictures, from where it lay so far; undefined without a line. */
export function regionOfPool(pool: LinePool): PictureRegion | undefined {
  const rows = Array.from(pooledLine(pool).points.yPx);
  if (rows.length === 0) return undefined;
  const marginPx = REGION_MARGIN * pool.heightPx;
  const y0 = Math.max(0, Math.floor(Math.min(...rows) - marginPx));
  const y1 = Math.min(pool.heightPx, Math.ceil(Math.max(...rows) + marginPx));
  return { x0: 0, y0, x1: pool.widthPx, y1 };
}

/** The lowest place of the line in each column, and the line's typical RMS width, px. */
export function pooledLine(pool: LinePool): { points: LinePoints; lineSpreadPx: number } {
  const least = Math.max(LEAST_SEEN, LEAST_SEEN_SHARE * pool.rowsPx.length);
  const seen = new Float32Array(pool.rowsPx.length);
  const xPx: number[] = [];
  const yPx: number[] = [];
  for (let bin = 0; bin < BINS_PER_PICTURE; bin++) {
    let count = 0;
    for (const rows of pool.rowsPx) if (rows[bin] === rows[bin]) seen[count++] = rows[bin];
    if (count < least) continue;
    xPx.push(((bin + 0.5) / BINS_PER_PICTURE) * pool.widthPx);
    yPx.push(lowestPlacePx(seen.subarray(0, count).sort()));
  }
  const spreads = Float64Array.from(pool.spreadsPx).sort();
  return { points: { xPx, yPx }, lineSpreadPx: spreads[spreads.length >> 1] ?? 1.5 };
}

/** Mean of the lowest strong cluster of rows; `rows` in order, at least one. */
function lowestPlacePx(rows: Float32Array): number {
  const near = neighbourCounts(rows);
  let at = rows.length - 1;
  const enough = CLUSTER_SHARE * near.reduce((most, n) => Math.max(most, n), 0);
  while (at > 0 && near[at] < enough) at--;
  // From the cluster's lower border to its middle.
  const border = rows[at];
  while (at > 0 && near[at - 1] >= near[at] && border - rows[at - 1] <= CLUSTER_HALF_PX) at--;
  return meanAbout(rows, rows[at]);
}

/** How many rows lie within {@link CLUSTER_HALF_PX} of each, itself included; `rows` in order. */
function neighbourCounts(rows: Float32Array): Uint16Array {
  const near = new Uint16Array(rows.length);
  let from = 0;
  let to = 0;
  for (let i = 0; i < rows.length; i++) {
    while (rows[i] - rows[from] > CLUSTER_HALF_PX) from++;
    while (to < rows.length && rows[to] - rows[i] <= CLUSTER_HALF_PX) to++;
    near[i] = to - from;
  }
  return near;
}

function meanAbout(rows: Float32Array, middle: number): number {
  let count = 0;
  let sum = 0;
  for (const row of rows) {
    if (Math.abs(row - middle) > CLUSTER_HALF_PX) continue;
    count++;
    sum += row;
  }
  return sum / count;
}
