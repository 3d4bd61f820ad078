import type { YuvPicture } from '../../contract/picture.ts';

/** Part of a picture, pixels, half open: x0 ≤ x < x1, y0 ≤ y < y1. */
export interface PictureRegion {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** Rows between which the line is looked for, one pair for every pixel column of the picture. */
export interface RowWindow {
  readonly loPx: Float32Array | Int16Array;
  readonly hiPx: Float32Array | Int16Array;
}

/**
 * Side of a search cell, pixels. Chroma of 4:2:0 has one sample in 2 × 2 pixels, so nothing finer
 * can be told by colour; the sub-pixel centre is made later from luma at full resolution.
 */
export const CELL_PX = 2;

/**
 * Cells in which the line is searched: column k holds cell column `firstCellX + k·stepCells`, and
 * in it the cell rows `firstCellY[k]` … `firstCellY[k] + rows − 1`. With a window the rows follow
 * it, so that a curved line needs no more rows than a straight one.
 */
export interface CellGrid {
  readonly columns: number;
  readonly rows: number;
  readonly firstCellX: number;
  readonly stepCells: number;
  readonly firstCellY: Int16Array;
  /** Cells of the whole picture. */
  readonly pictureColumns: number;
  readonly pictureRows: number;
}

/** The grid that covers `region` (default: all), narrowed to `window` where one is given. */
export function makeCellGrid(
  picture: YuvPicture,
  stepCells: number,
  region?: PictureRegion,
  window?: RowWindow,
): CellGrid {
  const pictureColumns = Math.floor(picture.widthPx / CELL_PX);
  const pictureRows = Math.floor(picture.heightPx / CELL_PX);
  const clampTo = (value: number, top: number): number => Math.min(Math.max(value, 0), top);
  const x0 = clampTo(Math.floor((region?.x0 ?? 0) / CELL_PX), pictureColumns);
  const x1 = clampTo(Math.ceil((region?.x1 ?? picture.widthPx) / CELL_PX), pictureColumns);
  const y0 = clampTo(Math.floor((region?.y0 ?? 0) / CELL_PX), pictureRows);
  const y1 = clampTo(Math.ceil((region?.y1 ?? picture.heightPx) / CELL_PX), pictureRows);
  const columns = Math.max(0, Math.ceil((x1 - x0) / stepCells));
  const firstCellY = new Int16Array(columns).fill(y0);
  let rows = Math.max(0, y1 - y0);
  if (window !== undefined) rows = followWindow(window, x0, stepCells, y0, y1, firstCellY);
  return { columns, rows, firstCellX: x0, stepCells, firstCellY, pictureColumns, pictureRows };
}

/** Sets each column's first row from the window and returns the rows that the widest one needs. */
function followWindow(
  window: RowWindow,
  firstCellX: number,
  stepCells: number,
  y0: number,
  y1: number,
  firstCellY: Int16Array,
): number {
  const last = window.loPx.length - 1;
  let rows = 1;
  for (let k = 0; k < firstCellY.length; k++) {
    const x = Math.min((firstCellX + k * stepCells) * CELL_PX, last);
    const lo = Math.floor(window.loPx[x] / CELL_PX);
    rows = Math.max(rows, Math.ceil(window.hiPx[x] / CELL_PX) - lo);
    firstCellY[k] = lo;
  }
  rows = Math.min(rows, y1 - y0);
  for (let k = 0; k < firstCellY.length; k++) {
    firstCellY[k] = Math.min(Math.max(firstCellY[k], y0), y1 - rows);
  }
  return rows;
}
