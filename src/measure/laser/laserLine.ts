import type { YuvPicture } from '../../contract/picture.ts';
import { CELL_PX, makeCellGrid, type CellGrid, type PictureRegion, type RowWindow } from './cellGrid.ts';
import { sampleRangeOf, type LaserColour } from './laserColour.ts';
import { laserContrastOf, type LaserContrast } from './laserContrast.ts';
import { contrastOnPath, findLaserPath, type LaserPath } from './laserPath.ts';
import { HALF_HEIGHT_PER_RMS, matchedCentrePx, templateFor } from './lineCentre.ts';
import { measureLineShape, type LineSeed, type LineShape } from './lineShape.ts';
import { smoothOverNeighbours } from './neighbourColumns.ts';

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
  const grid = makeCellGrid(picture, stepCells, options.region, window);
  const laser = laserContrastOf(picture, hue, grid);
  const path = findLaserPath(grid, laser);
  return measureAlongPath(picture, hue, columnStepPx, grid, laser, path);
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
  const gridWidthPx = grid.columns * grid.stepCells * CELL_PX;
  const x1 = Math.min(x0 + gridWidthPx, picture.widthPx);
  const count = Math.max(0, Math.ceil((x1 - x0) / columnStepPx));
  const made = {
    columnsPx: new Float32Array(count),
    rowPx: new Float32Array(count).fill(Number.NaN),
    spreadPx: new Float32Array(count),
    strength: new Float32Array(count),
    lumaRise: new Float32Array(count),
  };
  const halfWidth = new Float32Array(count);
  const flank = new Float32Array(count);
  const saturated = new Float32Array(count);
  const above = new Float32Array(count);
  const below = new Float32Array(count);
  const shape: LineShape = emptyShape();
  const seed: LineSeed = { seedPx: 0, colourTopPx: 0, colourBottomPx: 0 };
  for (let n = 0; n < count; n++) {
    const x = x0 + n * columnStepPx;
    made.columnsPx[n] = x + 0.5;
    const k = Math.floor((x - x0) / CELL_PX / grid.stepCells);
    const contrast = contrastOnPath(grid, laser, path, k);
    if (contrast <= 0) continue;
    setSeed(grid, laser, path, k, seed);
    if (!measureLineShape(picture, x, seed, shape)) continue;
    made.strength[n] = contrast;
    made.rowPx[n] = shape.midPx;
    made.lumaRise[n] = shape.rise;
    halfWidth[n] = shape.halfWidthPx;
    flank[n] = shape.flankPx;
    saturated[n] = shape.saturated;
    above[n] = shape.ambientAbove;
    below[n] = shape.ambientBelow;
  }
  const near = smoothOverNeighbours({ ...made, halfWidth, flank, saturated, above, below });
  const lumaScale = sampleRangeOf(picture).lumaScale;
  let presentCount = 0;
  for (let n = 0; n < count; n++) {
    const midPx = made.rowPx[n];
    if (Number.isNaN(midPx)) continue;
    const least = Math.max(LEAST_RISE / lumaScale, LEAST_RISE_OF_NEIGHBOURS * near.rise[n]);
    if (made.lumaRise[n] < least) {
      made.rowPx[n] = Number.NaN;
      made.strength[n] = 0;
      made.lumaRise[n] = 0;
      continue;
    }
    const template = templateFor(near.halfWidth[n], near.flank[n], near.saturated[n]);
    const x = x0 + n * columnStepPx;
    const centre = matchedCentrePx(picture, x, midPx, template, near.above[n], near.below[n]);
    // Where the matched centre runs off, the plain half-height midpoint is still a measurement.
    made.rowPx[n] = Number.isNaN(centre) ? midPx : centre;
    made.spreadPx[n] = halfWidth[n] / HALF_HEIGHT_PER_RMS;
    made.lumaRise[n] *= lumaScale;
    presentCount++;
  }
  return { colour, ...made, presentCount, noise: laser.noise };
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
