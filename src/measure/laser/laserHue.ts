import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import type { YuvPicture } from '../../contract/picture.ts';
import { CELL_PX, makeCellGrid, type CellGrid, type PictureRegion } from './cellGrid.ts';
import type { LaserColour } from './laserColour.ts';
import { laserContrastOf, type LaserContrast } from './laserContrast.ts';
import { contrastOnPath, findLaserPath, halfContrastOf } from './laserPath.ts';

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
 * Where the other colour's best path earns more than this part, scenery was followed: a laser
 * line earns at least twice what the scenery does in the other colour.
 */
const LARGEST_RIVAL_SHARE = 0.6;

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
  const grid = makeCellGrid(picture, stepCells, region);
  const green = laserContrastOf(picture, 'green', grid);
  const red = laserContrastOf(picture, 'red', grid);
  // One measure for both: what is faint beside the other colour's line earns nothing.
  const half = Math.max(halfContrastOf(grid, green), halfContrastOf(grid, red));
  const looks = [look('green', grid, green, half), look('red', grid, red, half)];
  const [best, other] = looks[0].earned >= looks[1].earned ? looks : [looks[1], looks[0]];
  const rivalShare = best.earned > 0 ? other.earned / best.earned : 1;
  if (best.columnShare < LEAST_COLUMN_SHARE || rivalShare > LARGEST_RIVAL_SHARE) {
    return failed('line-lost', {
      rivalShare,
      greenColumnShare: looks[0].columnShare,
      redColumnShare: looks[1].columnShare,
    });
  }
  return succeeded({
    colour: best.colour,
    strength: best.strength,
    columnShare: best.columnShare,
    rivalShare,
  });
}

interface Look {
  readonly colour: LaserColour;
  readonly earned: number;
  readonly strength: number;
  readonly columnShare: number;
}

function look(
  colour: LaserColour,
  grid: CellGrid,
  laser: LaserContrast,
  halfContrast: number,
): Look {
  const path = findLaserPath(grid, laser, halfContrast);
  const strengths: number[] = [];
  for (let k = 0; k < grid.columns; k++) {
    const contrast = contrastOnPath(grid, laser, path, k);
    if (contrast > 0) strengths.push(contrast);
  }
  strengths.sort((a, b) => a - b);
  return {
    colour,
    earned: path.earned,
    strength: strengths.length > 0 ? strengths[strengths.length >> 1] : 0,
    columnShare: grid.columns > 0 ? strengths.length / grid.columns : 0,
  };
}
