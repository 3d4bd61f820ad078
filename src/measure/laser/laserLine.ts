import type { YuvPicture } from '../../contract/picture.ts';
import {
  CELL_PX,
  makeCellGrid,
  type CellGrid,
  type PictureRegion,
  type RowWindow,
} from './cellGrid.ts';
import { coarseWindow } from './coarseWindow.ts';
import { sampleRangeOf, type LaserColour } from './laserColour.ts';
import { laserContrastOf, type LaserContrast } from './laserContrast.ts';
import { contrastOnPath, findLaserPath, type LaserPath } from './laserPath.ts';
import { HALF_HEIGHT_PER_RMS, matchedCentrePx, templateFor } from './lineCentre.ts';
import { measureLineShape, type LineSeed, type LineShape } from './lineShape.ts';
import { smoothOverNeighbours, type ColumnMeasures } from './neighbourColumns.ts';

export interface LaserLineOptions {
  /** Only this part of the picture is searched; default all. */
  readonly region?: PictureRegion;
  /** Only these rows are searched in each column; arrays as long as the picture is wide. */
  readonly window?: RowWindow;
  /** Distance of the columns that are measured, pixels; default 1. */
  readonly columnStepPx?: number;
}

/** The laser line in one picture, one entry a measured column. Rows: NaN where no line is seen. */
export interface LaserLine {
  readonly colour: LaserColour;
  /** Column centres, px, increasing. */
  readonly columnsPx: Float32Array;
  /** Row of the line's centre, px (y down, centre of the top pixel 0.5). */
  readonly rowPx: Float32Array;
  /** RMS width of the line, px (half-height width / 2.355); 0 where absent. */
  readonly spreadPx: Float32Array;
  /** Colour contrast over the ambient, full-range 8-bit chroma steps; 0 where absent. */
  readonly strength: Float32Array;
  /** Luma of the crest above the ambient, full-range 8-bit steps; 0 where absent. */
  readonly lumaRise: Float32Array;
  /** Columns in which the line is present. */
  readonly presentCount: number;
  /** Noise of one cell's colour signal, chroma steps: `strength` is to be held against it. */
  readonly noise: number;
}

/**
 * A crest lower than this part of its neighbours' is not the line: the floor of a slot or a
 * shadow into which only the codec has smeared the line's colour.
 */
const LEAST_RISE_OF_NEIGHBOURS = 0.2;
/**
 * Cells beside the path that keep this part of its contrast belong to the line: a green plateau
 * beside a white core (which counts three times) does, the ambient one cell off a thin line not.
 */
const COLOURED_SHARE = 0.25;
/** Columns of the coarse search: a piece of line shorter than two of them, 16 px, may be passed over. */
const COARSE_STEP_CELLS = 4;
/** Least crest, luma steps: below, the half-height crossings are made by rounding. */
const LEAST_RISE = 3;

/**
 * Finds the laser line in a picture: one path over the columns by colour at half resolution, then
 * in every column the centre by luma at full resolution. Never fails: without a line every row is
 * NaN and `presentCount` is 0.
 */
export function findLaserLine(
  picture: YuvPicture,
  hue: LaserColour,
  options: LaserLineOptions = {},
): LaserLine {
  const columnStepPx = options.columnStepPx ?? 1;
  if (!Number.isInteger(columnStepPx) || columnStepPx < 1) {
    throw new RangeError(`columnStepPx must be a whole number from 1 on, got ${columnStepPx}`);
  }
  const { window } = options;
  if (window !== undefined && Math.min(window.loPx.length, window.hiPx.length) < picture.widthPx) {
    throw new RangeError(
      `a window needs ${picture.widthPx} columns, got ${window.loPx.length} and ${window.hiPx.length}`,
    );
  }
  const stepCells = Math.max(1, Math.floor(columnStepPx / CELL_PX));
  const coarse =
    window === undefined ? coarseSearch(picture, hue, stepCells, options.region) : null;
  const grid = makeCellGrid(picture, stepCells, options.region, window ?? coarse?.window);
  const { contrast, noise } = laserContrastOf(picture, hue, grid);
  // A window along the line is mostly line: noise and contrast are told from the whole picture.
  const laser = { contrast, noise: coarse?.noise ?? noise };
  const path = findLaserPath(grid, laser, coarse?.halfContrast);
  return measureAlongPath(picture, hue, columnStepPx, grid, laser, path);
}

/**
 * Where the line lies, from every so many cells' columns: a picture is searched whole there, and in a
 * window along the line only in the columns between. Null when the columns wanted are sparse anyhow,
 * or when nothing was found.
 */
function coarseSearch(
  picture: YuvPicture,
  hue: LaserColour,
  stepCells: number,
  region: PictureRegion | undefined,
): { window: RowWindow; halfContrast: number; noise: number } | null {
  if (2 * stepCells > COARSE_STEP_CELLS) return null;
  const grid = makeCellGrid(picture, COARSE_STEP_CELLS, region);
  const laser = laserContrastOf(picture, hue, grid);
  const path = findLaserPath(grid, laser);
  const window = coarseWindow(grid, path, picture.widthPx);
  return window && { window, halfContrast: path.halfContrast, noise: laser.noise };
}

/** The line's arrays while they are being filled, and the widths that are not handed out. */
interface LineDraft extends ColumnMeasures {
  readonly columnsPx: Float32Array;
  readonly spreadPx: Float32Array;
  readonly strength: Float32Array;
}

function measureAlongPath(
  picture: YuvPicture,
  colour: LaserColour,
  columnStepPx: number,
  grid: CellGrid,
  laser: LaserContrast,
  path: LaserPath,
): LaserLine {
  const x0 = grid.firstCellX * CELL_PX;
  const x1 = Math.min(x0 + grid.columns * grid.stepCells * CELL_PX, picture.widthPx);
  const draft = emptyDraft(Math.max(0, Math.ceil((x1 - x0) / columnStepPx)));
  const seed: LineSeed = { seedPx: 0, colourTopPx: 0, colourBottomPx: 0 };
  const shape = emptyShape();
  for (let n = 0; n < draft.rowPx.length; n++) {
    const x = x0 + n * columnStepPx;
    draft.columnsPx[n] = x + 0.5;
    const k = Math.floor((x - x0) / CELL_PX / grid.stepCells);
    const contrast = contrastOnPath(grid, laser, path, k);
    if (contrast <= 0) continue;
    setSeed(grid, laser, path, k, seed);
    if (measureLineShape(picture, x, seed, shape)) keepShape(draft, n, contrast, shape);
  }
  const presentCount = centreColumns(picture, draft);
  const { columnsPx, rowPx, spreadPx, strength, lumaRise } = draft;
  const noise = laser.noise;
  return { colour, columnsPx, rowPx, spreadPx, strength, lumaRise, presentCount, noise };
}

function keepShape(draft: LineDraft, n: number, contrast: number, shape: LineShape): void {
  draft.strength[n] = contrast;
  draft.rowPx[n] = shape.midPx;
  draft.lumaRise[n] = shape.rise;
  draft.halfWidth[n] = shape.halfWidthPx;
  draft.flank[n] = shape.flankPx;
  draft.saturated[n] = shape.saturated;
  draft.above[n] = shape.ambientAbove;
  draft.below[n] = shape.ambientBelow;
}

/** Replaces each column's midpoint by its matched centre, drops what only the codec smeared. */
function centreColumns(picture: YuvPicture, draft: LineDraft): number {
  const near = smoothOverNeighbours(draft);
  const { lumaScale } = sampleRangeOf(picture);
  let presentCount = 0;
  for (let n = 0; n < draft.rowPx.length; n++) {
    const midPx = draft.rowPx[n];
    if (Number.isNaN(midPx)) continue;
    const least = Math.max(LEAST_RISE / lumaScale, LEAST_RISE_OF_NEIGHBOURS * near.rise[n]);
    if (draft.lumaRise[n] < least) {
      draft.rowPx[n] = Number.NaN;
      draft.strength[n] = 0;
      draft.lumaRise[n] = 0;
      continue;
    }
    const template = templateFor(near.halfWidth[n], near.flank[n], near.saturated[n]);
    const x = Math.floor(draft.columnsPx[n]);
    const centre = matchedCentrePx(picture, x, midPx, template, near.above[n], near.below[n]);
    // Where the matched centre runs off, the plain midpoint is still a measurement.
    draft.rowPx[n] = Number.isNaN(centre) ? midPx : centre;
    draft.spreadPx[n] = draft.halfWidth[n] / HALF_HEIGHT_PER_RMS;
    draft.lumaRise[n] *= lumaScale;
    presentCount++;
  }
  return presentCount;
}

function emptyDraft(count: number): LineDraft {
  const zeros = (): Float32Array => new Float32Array(count);
  return {
    ...{ columnsPx: zeros(), rowPx: zeros().fill(Number.NaN), spreadPx: zeros() },
    ...{ strength: zeros(), lumaRise: zeros(), halfWidth: zeros(), flank: zeros() },
    ...{ saturated: zeros(), above: zeros(), below: zeros() },
  };
}

/** The path's cell in column k and the cells around it that are coloured by it. */
function setSeed(
  grid: CellGrid,
  laser: LaserContrast,
  path: LaserPath,
  k: number,
  seed: LineSeed,
): void {
  const row = path.row[k];
  const at = k * grid.rows;
  const least = COLOURED_SHARE * laser.contrast[at + row];
  let top = row;
  while (top > 0 && laser.contrast[at + top - 1] >= least) top--;
  let bottom = row;
  while (bottom < grid.rows - 1 && laser.contrast[at + bottom + 1] >= least) bottom++;
  seed.seedPx = (grid.firstCellY[k] + row + 0.5) * CELL_PX;
  seed.colourTopPx = (grid.firstCellY[k] + top) * CELL_PX;
  seed.colourBottomPx = (grid.firstCellY[k] + bottom + 1) * CELL_PX;
}

function emptyShape(): LineShape {
  return {
    ...{ midPx: 0, halfWidthPx: 0, flankPx: 0, saturated: 0 },
    ...{ ambientAbove: 0, ambientBelow: 0, rise: 0 },
  };
}
