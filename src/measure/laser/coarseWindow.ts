import { CELL_PX, type CellGrid, type RowWindow } from './cellGrid.ts';
import type { LaserPath } from './laserPath.ts';

/**
 * Rows kept above and below the coarse path, px: half of the widest core that is looked for, what a
 * line climbs between two coarse columns, and enough beside it for the column's mean hue.
 */
const MARGIN_PX = 52;

/**
 * Rows between which the line lies, from a path over sparse columns; null when that found nothing. In
 * a gap and at a jump the window spans from the one piece to the other.
 */
export function coarseWindow(grid: CellGrid, path: LaserPath, widthPx: number): RowWindow | null {
  const before = nearestRows(grid, path, 1);
  const after = nearestRows(grid, path, -1);
  if (before.every((row) => row !== row)) return null;
  const loPx = new Float32Array(widthPx);
  const hiPx = new Float32Array(widthPx);
  for (let x = 0; x < widthPx; x++) {
    const at = (x / CELL_PX - grid.firstCellX) / grid.stepCells;
    const k = Math.max(0, Math.min(grid.columns - 1, Math.floor(at)));
    const next = Math.min(grid.columns - 1, k + 1);
    const rows = [before[k], after[k], before[next], after[next]].filter((row) => row === row);
    loPx[x] = Math.max(0, Math.min(...rows) - MARGIN_PX);
    hiPx[x] = Math.max(...rows) + MARGIN_PX;
  }
  return { loPx, hiPx };
}

/** Row of the path at each coarse column, px; in a gap that of the last column before it (`step` 1) or after it (−1). */
function nearestRows(grid: CellGrid, path: LaserPath, step: 1 | -1): Float32Array {
  const rows = new Float32Array(grid.columns).fill(NaN);
  let last = NaN;
  for (let n = 0; n < grid.columns; n++) {
    const k = step === 1 ? n : grid.columns - 1 - n;
    if (path.row[k] >= 0) last = (grid.firstCellY[k] + path.row[k] + 0.5) * CELL_PX;
    rows[k] = last;
  }
  return rows;
}
