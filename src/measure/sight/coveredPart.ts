import type { YuvPicture } from '../../contract/picture.ts';
import type { LinePoints } from '../geometry/circleResiduals.ts';

/**
 * Whether something that stands covers the line where no camera could be told from it. Where the line is
 * seen the pictures change as the wheel turns; where it is missing for want of light the tread turns all
 * the same, where something stands before it nothing changes.
 */
const COLUMNS = 40;
const ROWS = 8;
/** Rows looked at above the line's highest place and below its lowest, by the picture's height: tread. */
const ABOVE_HEIGHT = 0.04;
const BELOW_HEIGHT = 0.1;
/** One pixel in so many both ways. */
const GRID_PX = 2;
/** The middle of the picture, to which a person brings the wheel: beside it there may be none. */
const MIDDLE_SHARE = 0.6;
/** Part of the picture's width that must be covered before it is said. */
const COVERED_SHARE = 0.25;
/** What stands changes less than this part of what turns. */
const STANDING_PART = 0.25;
/** Lined columns that show how much turns. */
const LEAST_LINED = 4;

/** @param pictures of one sweep, in order of time; @param line the line pooled over them */
export function isPartCovered(pictures: readonly YuvPicture[], line: LinePoints): boolean {
  if (pictures.length < 2) return false;
  const { widthPx } = pictures[0];
  const lined = new Set(Array.from(line.xPx, (x) => Math.floor((x / widthPx) * COLUMNS)));
  if (lined.size < LEAST_LINED) return false;
  const change = changeByColumn(pictures, line);
  const turning = [...lined].map((c) => change[c]).sort((a, b) => a - b)[lined.size >> 1];
  const outside = ((1 - MIDDLE_SHARE) / 2) * COLUMNS;
  let covered = 0;
  for (let c = outside; c < COLUMNS - outside; c++) {
    if (!lined.has(c) && change[c] < STANDING_PART * turning) covered++;
  }
  return covered >= COVERED_SHARE * COLUMNS;
}

/** RMS step of the cells of each column about the line, from picture to picture, luma. */
function changeByColumn(pictures: readonly YuvPicture[], line: LinePoints): Float64Array {
  const squares = new Float64Array(COLUMNS);
  let before = cells(pictures[0], line);
  for (const picture of pictures.slice(1)) {
    const now = cells(picture, line);
    now.forEach((luma, i) => {
      squares[i % COLUMNS] += (luma - before[i]) ** 2;
    });
    before = now;
  }
  return squares.map((sum) => Math.sqrt(sum / (ROWS * (pictures.length - 1))));
}

/** Mean luma of a grid of cells about the line, rows × columns. */
function cells({ y, yStride, widthPx, heightPx }: YuvPicture, { yPx }: LinePoints): Float64Array {
  const rows = Array.from(yPx);
  const top = Math.max(0, Math.min(...rows) - ABOVE_HEIGHT * heightPx);
  const bottom = Math.min(heightPx, Math.max(...rows) + BELOW_HEIGHT * heightPx);
  const out = new Float64Array(ROWS * COLUMNS);
  for (let r = 0; r < ROWS; r++) {
    const fromRow = Math.round(top + ((bottom - top) * r) / ROWS);
    const toRow = Math.round(top + ((bottom - top) * (r + 1)) / ROWS);
    for (let c = 0; c < COLUMNS; c++) {
      const fromPx = Math.round((widthPx * c) / COLUMNS);
      const toPx = Math.round((widthPx * (c + 1)) / COLUMNS);
      let [sum, count] = [0, 0];
      for (let row = fromRow; row < toRow; row += GRID_PX) {
        for (let x = fromPx; x < toPx; x += GRID_PX) {
          sum += y[row * yStride + x];
          count++;
        }
      }
      out[r * COLUMNS + c] = sum / Math.max(1, count);
    }
  }
  return out;
}
