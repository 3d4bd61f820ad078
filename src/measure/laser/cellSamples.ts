import type { YuvPicture } from '../../contract/picture.ts';
import { CELL_PX, type CellGrid } from './cellGrid.ts';
import { HUE_AXES, sampleRangeOf, type LaserColour } from './laserColour.ts';

/** Cells kept above and below the searched rows: the farthest at which ambient is looked for. */
export const MARGIN_CELLS = 20;

/**
 * Part of the colour across the laser's hue that is held against a cell. Purple and orange
 * scenery lies 40° and more off the axis, a laser under a wrong white balance within 15°.
 */
const OFF_HUE_PENALTY = 0.5;

/**
 * Hue signal and mean luma, full-range steps, of `count` grid columns from `first` on: column
 * after column, each `grid.rows` cells and a margin on both sides. Outside the picture its edge
 * repeats. Goes row by row over the picture, because that is how it lies in memory.
 */
export function readCellColumns(
  picture: YuvPicture,
  colour: LaserColour,
  grid: CellGrid,
  first: number,
  count: number,
  hue: Float32Array,
  luma: Float32Array,
): void {
  const tall = grid.rows + 2 * MARGIN_CELLS;
  const lastRow = grid.pictureRows - 1;
  let from = Infinity;
  let to = -Infinity;
  for (let k = first; k < first + count; k++) {
    from = Math.min(from, grid.firstCellY[k] - MARGIN_CELLS);
    to = Math.max(to, grid.firstCellY[k] - MARGIN_CELLS + tall);
  }
  const reader = makeRowReader(picture, colour, grid, first, count);
  for (let row = from; row < to; row++) {
    const cellY = row < 0 ? 0 : row > lastRow ? lastRow : row;
    reader(row, cellY, tall, hue, luma);
  }
}

type RowReader = (
  row: number,
  cellY: number,
  tall: number,
  hue: Float32Array,
  luma: Float32Array,
) => void;

function makeRowReader(
  picture: YuvPicture,
  colour: LaserColour,
  grid: CellGrid,
  first: number,
  count: number,
): RowReader {
  const { y, yStride, u, v, chromaStride, chromaStep, chromaShift } = picture;
  const range = sampleRangeOf(picture);
  const lumaGain = range.lumaScale / 4;
  const lumaBase = range.lumaOffset * range.lumaScale;
  // Four chroma samples a cell are added where there are four, one is counted four times else.
  const perCell = chromaShift === 0 ? CELL_PX : 1;
  const right = chromaShift === 0 ? chromaStep : 0;
  const below = chromaShift === 0 ? chromaStride : 0;
  const gain = range.chromaScale / 4;
  const alongU = HUE_AXES[colour].alongU * gain;
  const alongV = HUE_AXES[colour].alongV * gain;
  const { firstCellX, stepCells, firstCellY } = grid;
  return (row, cellY, tall, hue, luma) => {
    let p = cellY * CELL_PX * yStride + (firstCellX + first * stepCells) * CELL_PX;
    let c = (cellY * chromaStride + (firstCellX + first * stepCells) * chromaStep) * perCell;
    for (let k = 0; k < count; k++) {
      const i = row - firstCellY[first + k] + MARGIN_CELLS;
      if (i >= 0 && i < tall) {
        const du = u[c] + u[c + right] + u[c + below] + u[c + below + right] - 512;
        const dv = v[c] + v[c + right] + v[c + below] + v[c + below + right] - 512;
        const across = dv * alongU - du * alongV;
        hue[k * tall + i] =
          du * alongU + dv * alongV - OFF_HUE_PENALTY * (across < 0 ? -across : across);
        luma[k * tall + i] =
          (y[p] + y[p + 1] + y[p + yStride] + y[p + yStride + 1]) * lumaGain - lumaBase;
      }
      p += stepCells * CELL_PX;
      c += stepCells * chromaStep * perCell;
    }
  };
}
