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
 * Hue signal of `count` grid columns from `first` on, full-range chroma steps: column after column,
 * each `grid.rows` cells and a margin on both sides. Outside the picture its edge repeats.
 *
 * @param meanOfCells odd number of cells side by side whose mean colour counts as the cell's own
 */
export function readHue(
  picture: YuvPicture,
  colour: LaserColour,
  grid: CellGrid,
  first: number,
  count: number,
  hue: Float32Array,
  meanOfCells = 1,
): void {
  if (meanOfCells > 1) {
    readMeanHue(picture, colour, grid, first, count, hue, meanOfCells);
    return;
  }
  const { u, v, chromaStride, chromaStep, chromaShift } = picture;
  const { rows, firstCellX, stepCells, firstCellY, pictureRows } = grid;
  const tall = rows + 2 * MARGIN_CELLS;
  const gain = sampleRangeOf(picture).chromaScale / 4;
  const alongU = HUE_AXES[colour].alongU * gain;
  const alongV = HUE_AXES[colour].alongV * gain;
  // Four chroma samples a cell are added where there are four, one is counted four times else.
  const isFull = chromaShift === 0;
  const perCell = isFull ? CELL_PX : 1;
  for (let k = 0; k < count; k++) {
    const left = (firstCellX + (first + k) * stepCells) * chromaStep * perCell;
    const top = firstCellY[first + k] - MARGIN_CELLS;
    for (let i = 0; i < tall; i++) {
      const c = within(top + i, pictureRows) * perCell * chromaStride + left;
      const du = (isFull ? fourSamples(u, c, chromaStep, chromaStride) : 4 * u[c]) - 512;
      const dv = (isFull ? fourSamples(v, c, chromaStep, chromaStride) : 4 * v[c]) - 512;
      const across = dv * alongU - du * alongV;
      hue[k * tall + i] = du * alongU + dv * alongV - OFF_HUE_PENALTY * Math.abs(across);
    }
  }
}

/** The same where a cell's colour is the mean of some side by side: the noise of one is too much. */
function readMeanHue(
  picture: YuvPicture,
  colour: LaserColour,
  grid: CellGrid,
  first: number,
  count: number,
  hue: Float32Array,
  meanOfCells: number,
): void {
  const { u, v, chromaStride, chromaStep, chromaShift } = picture;
  const { rows, firstCellX, stepCells, firstCellY, pictureColumns, pictureRows } = grid;
  const tall = rows + 2 * MARGIN_CELLS;
  const gain = sampleRangeOf(picture).chromaScale / (4 * meanOfCells);
  const alongU = HUE_AXES[colour].alongU * gain;
  const alongV = HUE_AXES[colour].alongV * gain;
  const reach = meanOfCells >> 1;
  const isFull = chromaShift === 0;
  const perCell = isFull ? CELL_PX : 1;
  for (let k = 0; k < count; k++) {
    const column = firstCellX + (first + k) * stepCells;
    for (let i = 0; i < tall; i++) {
      const row = within(firstCellY[first + k] - MARGIN_CELLS + i, pictureRows);
      let du = -512 * meanOfCells;
      let dv = du;
      for (let d = -reach; d <= reach; d++) {
        const beside = within(column + d, pictureColumns);
        const c = perCell * (row * chromaStride + beside * chromaStep);
        du += isFull ? fourSamples(u, c, chromaStep, chromaStride) : 4 * u[c];
        dv += isFull ? fourSamples(v, c, chromaStep, chromaStride) : 4 * v[c];
      }
      const across = dv * alongU - du * alongV;
      hue[k * tall + i] = du * alongU + dv * alongV - OFF_HUE_PENALTY * Math.abs(across);
    }
  }
}

/** Mean luma of the same cells in the same order, full-range steps. */
export function readLuma(
  picture: YuvPicture,
  grid: CellGrid,
  first: number,
  count: number,
  luma: Float32Array,
): void {
  const { yStride } = picture;
  const y = new DataView(picture.y.buffer, picture.y.byteOffset, picture.y.byteLength);
  const { rows, firstCellX, stepCells, firstCellY, pictureRows } = grid;
  const tall = rows + 2 * MARGIN_CELLS;
  const { lumaScale, lumaOffset } = sampleRangeOf(picture);
  const gain = lumaScale / 4;
  const base = lumaOffset * lumaScale;
  for (let k = 0; k < count; k++) {
    const left = (firstCellX + (first + k) * stepCells) * CELL_PX;
    const top = firstCellY[first + k] - MARGIN_CELLS;
    for (let i = 0; i < tall; i++) {
      const p = within(top + i, pictureRows) * CELL_PX * yStride + left;
      // Two pixels side by side are read at once.
      const upper = y.getUint16(p, true);
      const lower = y.getUint16(p + yStride, true);
      const sum = (upper & 0xff) + (upper >> 8) + (lower & 0xff) + (lower >> 8);
      luma[k * tall + i] = sum * gain - base;
    }
  }
}

function within(row: number, rows: number): number {
  return row < 0 ? 0 : row >= rows ? rows - 1 : row;
}

function fourSamples(plane: Uint8Array, at: number, right: number, below: number): number {
  return plane[at] + plane[at + right] + plane[at + below] + plane[at + below + right];
}
