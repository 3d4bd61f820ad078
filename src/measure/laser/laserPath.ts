import type { CellGrid } from './cellGrid.ts';
import type { LaserContrast } from './laserContrast.ts';

/**
 * Prices of the path search. One column (2 px) of a line of boundless contrast earns 1; a line of
 * the half contrast earns 0.5.
 */
const PATH_PRICES = {
  /** What a column must earn to be worth calling line: "no line here" costs nothing instead. */
  presence: 0.25,
  /** Each cell (2 px) by which the line moves up or down from one column to the next. */
  movePerCell: 0.1,
  /**
   * A break: the line ends and begins elsewhere. Worth some 6 columns (12 px) of good line, more
   * than a slot's blob or a flare gives and less than any piece of rib between two slots.
   */
  break: 3,
} as const;

/** Half contrast in noise deviations: ridges that noise makes (2σ) then earn less than presence. */
const HALF_CONTRAST_PER_NOISE = 8;
/** Half contrast as a part of the strong columns' best contrast: fainter doubles earn less. */
const HALF_CONTRAST_PER_STRONG = 0.25;
/** Strong columns: the share of columns that lie below them. */
const STRONG_QUANTILE = 0.95;
/**
 * Least half contrast, chroma steps. Crates, rims and the codec's blocks make ridges of 1 to 3
 * steps; with this a ridge earns from 2 steps on, and one of 6 as much as a third of full.
 */
const LEAST_HALF_CONTRAST = 6;

export interface LaserPath {
  /** Row of the path in each grid column, counted within the column, or −1 for no line. */
  readonly row: Int16Array;
  /** Contrast at which a cell earns one half, chroma steps. */
  readonly halfContrast: number;
  /** What the path earned in all, in columns. */
  readonly earned: number;
}

/**
 * The one path over the columns that earns most: Σ (c/(c + half) − presence) − moves − breaks,
 * by dynamic programming over all rows and the state "no line". Exact for these prices.
 */
export function findLaserPath(
  grid: CellGrid,
  laser: LaserContrast,
  halfContrast: number = halfContrastOf(grid, laser),
): LaserPath {
  const { columns, rows } = grid;
  const row = new Int16Array(columns).fill(-1);
  if (columns === 0 || rows === 0) return { row, halfContrast, earned: 0 };
  const cameFrom = new Int16Array(columns * rows);
  const noneCameFrom = new Int16Array(columns);
  let best = new Float32Array(rows).fill(-Infinity);
  let next = new Float32Array(rows);
  const from = new Int16Array(rows);
  let bestRow = -1;
  let bestScore = -Infinity;
  let none = 0;
  for (let k = 0; k < columns; k++) {
    if (k > 0) {
      carry(best, grid.firstCellY[k] - grid.firstCellY[k - 1], next, from);
    } else {
      next.fill(-Infinity);
    }
    // Cheapest way in from elsewhere: from "no line", or straight from the best row by a break.
    const fromNone = none - PATH_PRICES.break / 2;
    const fromBest = bestScore - PATH_PRICES.break;
    const entry = fromNone >= fromBest ? fromNone : fromBest;
    const entryFrom = fromNone >= fromBest ? -1 : bestRow;
    noneCameFrom[k] = -1;
    if (bestScore - PATH_PRICES.break / 2 > none) {
      none = bestScore - PATH_PRICES.break / 2;
      noneCameFrom[k] = bestRow;
    }
    bestScore = -Infinity;
    const at = k * rows;
    for (let i = 0; i < rows; i++) {
      const c = laser.contrast[at + i];
      const gain = (c / (c + halfContrast) - PATH_PRICES.presence) * grid.stepCells;
      let score = next[i];
      let source = from[i];
      if (entry > score) {
        score = entry;
        source = entryFrom;
      }
      score += gain;
      next[i] = score;
      cameFrom[at + i] = source;
      if (score > bestScore) {
        bestScore = score;
        bestRow = i;
      }
    }
    const swap = best;
    best = next;
    next = swap;
  }
  const earned = Math.max(none, bestScore);
  traceBack(row, bestScore > none ? bestRow : -1, rows, cameFrom, noneCameFrom);
  return { row, halfContrast, earned };
}

/**
 * Contrast at the path's cell in column k; 0 where the path says "no line" or runs over a gap too
 * short to leave: such a column earns less than its price of presence.
 */
export function contrastOnPath(
  grid: CellGrid,
  laser: LaserContrast,
  path: LaserPath,
  k: number,
): number {
  const row = path.row[k];
  if (row < 0) return 0;
  const contrast = laser.contrast[k * grid.rows + row];
  const earned = contrast / (contrast + path.halfContrast);
  return earned < PATH_PRICES.presence ? 0 : contrast;
}

/**
 * Best score by which each row can be reached by moving from the column before, and from where:
 * the lower envelope of linear prices in two passes (Felzenszwalb & Huttenlocher 2012).
 */
function carry(before: Float32Array, shift: number, into: Float32Array, from: Int16Array): void {
  const rows = before.length;
  const price = PATH_PRICES.movePerCell;
  let running = -Infinity;
  let source = -1;
  for (let i = 0; i < rows; i++) {
    const j = i + shift;
    running -= price;
    if (j >= 0 && j < rows && before[j] >= running) {
      running = before[j];
      source = j;
    }
    into[i] = running;
    from[i] = source;
  }
  running = -Infinity;
  for (let i = rows - 1; i >= 0; i--) {
    running -= price;
    if (into[i] >= running) {
      running = into[i];
      source = from[i];
    } else {
      into[i] = running;
      from[i] = source;
    }
  }
}

function traceBack(
  row: Int16Array,
  last: number,
  rows: number,
  cameFrom: Int16Array,
  noneCameFrom: Int16Array,
): void {
  let state = last;
  for (let k = row.length - 1; k >= 0; k--) {
    row[k] = state;
    state = state < 0 ? noneCameFrom[k] : cameFrom[k * rows + state];
  }
}

/** The contrast that earns one half in this picture: from its noise and its strongest columns. */
export function halfContrastOf(grid: CellGrid, laser: LaserContrast): number {
  const peaks = new Float32Array(grid.columns);
  for (let k = 0; k < grid.columns; k++) {
    let peak = 0;
    for (let at = k * grid.rows; at < (k + 1) * grid.rows; at++) {
      if (laser.contrast[at] > peak) peak = laser.contrast[at];
    }
    peaks[k] = peak;
  }
  peaks.sort();
  const strong = grid.columns > 0 ? peaks[Math.floor(STRONG_QUANTILE * (grid.columns - 1))] : 0;
  return Math.max(
    HALF_CONTRAST_PER_STRONG * strong,
    HALF_CONTRAST_PER_NOISE * laser.noise,
    LEAST_HALF_CONTRAST,
  );
}
