import type { YuvPicture } from '../../contract/picture.ts';

/**
 * Rows looked at on each side of a line's seed, pixels: half of a saturated core of 36 px, its
 * flanks, and the ambient beyond.
 */
export const REACH_PX = 34;
/** The seed comes from cells of 2 px; the line's crest lies within this many pixels of it. */
const SEED_SLACK_PX = 4;
/** Rise above the lowest ambient at which another structure is taken to begin, part of the line's. */
const NEXT_STRUCTURE_RISE = 0.25;

/** Half-height figures of the luma profile across a line in one column; rows in pixels. */
export interface LineShape {
  /** Midpoint between the two half-height crossings. */
  midPx: number;
  /** Half the distance of the half-height crossings. */
  halfWidthPx: number;
  /** Distance between the quarter and three-quarter crossings of one flank, mean of both flanks. */
  flankPx: number;
  /** Ambient luma above and below, full-range steps of the picture's own scale. */
  ambientAbove: number;
  ambientBelow: number;
  /** Crest above the higher ambient, same unit. */
  rise: number;
}

/** Smoothed profile; one buffer for all columns, so shapes must be read before the next call. */
const profile = new Float32Array(2 * REACH_PX + 1);

/**
 * Measures the line whose crest lies near `seedPx` in pixel column `x`; false when the profile
 * there has no crest that falls to half height on both sides.
 *
 * The profile is smoothed by (1 2 1)/4. Half height is taken from the higher of both ambients, so
 * that a line on a border between dark and bright is cut at one level on both flanks.
 */
export function measureLineShape(
  picture: YuvPicture,
  x: number,
  seedPx: number,
  shape: LineShape,
): boolean {
  const seedRow = Math.floor(seedPx);
  const top = Math.max(1, seedRow - REACH_PX);
  const bottom = Math.min(picture.heightPx - 2, seedRow + REACH_PX);
  const count = bottom - top + 1;
  if (count < 5 || seedRow < top || seedRow > bottom) return false;
  smoothProfile(picture, x, top, count);
  const crest = crestNear(seedRow - top, count);
  const crestLuma = profile[crest];
  const above = ambientFrom(crest, -1, count);
  const below = ambientFrom(crest, 1, count);
  const ambient = above > below ? above : below;
  const rise = crestLuma - ambient;
  if (rise <= 0) return false;
  const upHalf = crossing(crest, -1, count, ambient + 0.5 * rise);
  const downHalf = crossing(crest, 1, count, ambient + 0.5 * rise);
  if (Number.isNaN(upHalf) || Number.isNaN(downHalf)) return false;
  const flanks =
    crossing(crest, -1, count, ambient + 0.75 * rise) -
    crossing(crest, -1, count, ambient + 0.25 * rise) +
    crossing(crest, 1, count, ambient + 0.25 * rise) -
    crossing(crest, 1, count, ambient + 0.75 * rise);
  shape.midPx = top + 0.5 + 0.5 * (upHalf + downHalf);
  shape.halfWidthPx = 0.5 * (downHalf - upHalf);
  shape.flankPx = 0.5 * flanks;
  shape.ambientAbove = above;
  shape.ambientBelow = below;
  shape.rise = rise;
  return true;
}

function smoothProfile(picture: YuvPicture, x: number, top: number, count: number): void {
  const { y, yStride } = picture;
  let p = (top - 1) * yStride + x;
  let before = y[p];
  let here = y[p + yStride];
  p += 2 * yStride;
  for (let i = 0; i < count; i++) {
    const after = y[p];
    profile[i] = 0.25 * (before + after) + 0.5 * here;
    before = here;
    here = after;
    p += yStride;
  }
}

/** Row of the highest luma within the seed's slack, then uphill to the local crest. */
function crestNear(seed: number, count: number): number {
  let crest = seed;
  const from = Math.max(0, seed - SEED_SLACK_PX);
  const to = Math.min(count - 1, seed + SEED_SLACK_PX);
  for (let i = from; i <= to; i++) if (profile[i] > profile[crest]) crest = i;
  while (crest > 0 && profile[crest - 1] > profile[crest]) crest--;
  while (crest < count - 1 && profile[crest + 1] > profile[crest]) crest++;
  return crest;
}

/** Lowest luma on one side before another structure begins or the reach ends. */
function ambientFrom(crest: number, step: 1 | -1, count: number): number {
  const crestLuma = profile[crest];
  let lowest = crestLuma;
  for (let i = crest + step; i >= 0 && i < count; i += step) {
    const value = profile[i];
    if (value < lowest) lowest = value;
    else if (value - lowest > NEXT_STRUCTURE_RISE * (crestLuma - lowest) && lowest < 0.9 * crestLuma)
      break;
  }
  return lowest;
}

/** Where the profile first falls below a level on the way out, profile index; NaN when never. */
function crossing(crest: number, step: 1 | -1, count: number, level: number): number {
  for (let i = crest + step; i >= 0 && i < count; i += step) {
    if (profile[i] <= level) {
      const inner = profile[i - step];
      const drop = inner - profile[i];
      return drop > 0 ? i - (step * (level - profile[i])) / drop : i;
    }
  }
  return Number.NaN;
}
