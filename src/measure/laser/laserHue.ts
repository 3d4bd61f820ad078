import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import type { YuvPicture } from '../../contract/picture.ts';
import { CELL_PX, makeCellGrid, type PictureRegion } from './cellGrid.ts';
import type { LaserColour } from './laserColour.ts';
import { laserContrastOf } from './laserContrast.ts';
import { findLaserPath } from './laserPath.ts';

export type { LaserColour } from './laserColour.ts';

/** Which laser is in the picture, and what speaks for it. */
export interface LaserHue {
  readonly colour: LaserColour;
  /** Median colour contrast along the line, full-range chroma steps. */
  readonly strength: number;
  /** Share of the region's columns through which the line runs, 0 to 1. */
  readonly columnShare: number;
  /** What the other colour's best path earned, as a part of this one's; 0 is clear, 1 is a tie. */
  readonly rivalShare: number;
}

/** Columns looked at: a line over a fifth of the picture still shows in 32 of them. */
const COLUMNS_LOOKED_AT = 160;
/**
 * Least share of columns: the tread fills half of a sensible view, so a line on a tenth of the
 * columns is a reflection or a scrap of coloured scenery.
 */
const LEAST_COLUMN_SHARE = 0.1;

/**
 * Finds the colour of the laser line: for each colour the best path over sparse columns, the one
 * that earns more wins. A wide coloured thing has no ridge, a scrap spans few columns; neither
 * earns much.
 */
export function findLaserHue(
  picture: YuvPicture,
  region?: PictureRegion,
): Outcome<LaserHue, 'line-lost'> {
  const widthPx = (region?.x1 ?? picture.widthPx) - (region?.x0 ?? 0);
  const stepCells = Math.max(1, Math.round(widthPx / CELL_PX / COLUMNS_LOOKED_AT));
  const green = lookFor(picture, 'green', stepCells, region);
  const red = lookFor(picture, 'red', stepCells, region);
  const [best, other] = green.earned >= red.earned ? [green, red] : [red, green];
  if (best.columnShare < LEAST_COLUMN_SHARE) {
    return failed('line-lost', {
      greenColumnShare: green.columnShare,
      redColumnShare: red.columnShare,
    });
  }
  return succeeded({
    colour: best.colour,
    strength: best.strength,
    columnShare: best.columnShare,
    rivalShare: other.earned / best.earned,
  });
}

interface Look {
  readonly colour: LaserColour;
  readonly earned: number;
  readonly strength: number;
  readonly columnShare: number;
}

function lookFor(
  picture: YuvPicture,
  colour: LaserColour,
  stepCells: number,
  region?: PictureRegion,
): Look {
  const grid = makeCellGrid(picture, stepCells, region);
  const laser = laserContrastOf(picture, colour, grid);
  const path = findLaserPath(grid, laser);
  const strengths: number[] = [];
  for (let k = 0; k < grid.columns; k++) {
    if (path.row[k] >= 0) strengths.push(laser.contrast[k * grid.rows + path.row[k]]);
  }
  strengths.sort((a, b) => a - b);
  return {
    colour,
    earned: path.earned,
    strength: strengths.length > 0 ? strengths[strengths.length >> 1] : 0,
    columnShare: grid.columns > 0 ? strengths.length / grid.columns : 0,
  };
}
