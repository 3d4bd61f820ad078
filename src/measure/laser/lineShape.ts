import type { YuvPicture } from '../../contract/picture.ts';
import { CORE_LUMA_FROM, CORE_LUMA_FULL } from './laserColour.ts';

/**
 * Rows looked at on each side of a line's seed, pixels: half of a saturated core of 36 px, its
 * flanks, and the ambient beyond.
 */
const REACH_PX = 34;
/**
 * The seed comes from cells of 2 px whose colour the codec smears by a pixel or two: a crest of
 * the line lies within this many pixels of it, one farther off is texture.
 */
const SEED_SLACK_PX = 4;
/** Rise above the lowest ambient at which another structure is taken to begin, part of the line's. */
const NEXT_STRUCTURE_RISE = 0.25;
/** Luma has settled to ambient when over this many pixels it drops by less than that part. */
const SETTLED_OVER_PX = 4;
const SETTLED_DROP = 0.05;

/**
 * Levels at which a flank is cut, as parts of the crest's rise. A clipped crest (saturated = 1) has
 * lost its upper part, so half of the true height lies higher; cutting there also keeps doubles
 * and haze beside the core out.
 */
const MIDDLE_LEVEL = { plain: 0.5, saturated: 0.75 } as const;
const LOWER_LEVEL = { plain: 0.25, saturated: 0.6 } as const;
const UPPER_LEVEL = { plain: 0.75, saturated: 0.9 } as const;

/** Figures of the luma profile across a line in one column; rows in pixels. */
export interface LineShape {
  /** Midpoint between the crossings of the middle level. */
  midPx: number;
  /** Half the distance of those crossings. */
  halfWidthPx: number;
  /**
   * Distance between the lower and upper crossing of a flank: mean of both flanks, the shorter one
   * for a clipped crest; NaN when a flank ends before its lower crossing.
   */
  flankPx: number;
  /** How far the crest is clipped, 0 (not) to 1 (surely). */
  saturated: number;
  /** Ambient luma above and below, in the picture's own steps. */
  ambientAbove: number;
  ambientBelow: number;
  /** Crest above the higher ambient, in the picture's own steps. */
  rise: number;
}

/** Where the colour says the line is in a column, pixels. */
export interface LineSeed {
  seedPx: number;
  /** Rows between which the colour contrast keeps a good part of its value at the seed. */
  colourTopPx: number;
  colourBottomPx: number;
}

/** Smoothed profile; one buffer for all columns, so shapes must be read before the next call. */
const profile = new Float32Array(2 * REACH_PX + 1);

/**
 * Measures the line whose crest lies near the seed in pixel column `x`; false when the profile
 * there has no crest that falls to the middle level on both sides.
 *
 * The profile is smoothed by (1 2 1)/4. Levels count from the higher of both ambients, so that a
 * line on a border between dark and bright is cut at one level on both flanks.
 */
export function measureLineShape(
  picture: YuvPicture,
  x: number,
  seed: LineSeed,
  shape: LineShape,
): boolean {
  const { seedPx } = seed;
  const seedRow = Math.floor(seedPx);
  const top = Math.max(1, seedRow - REACH_PX);
  const bottom = Math.min(picture.heightPx - 2, seedRow + REACH_PX);
  const count = bottom - top + 1;
  if (count < 5 || seedRow < top || seedRow > bottom) return false;
  smoothProfile(picture, x, top, count);
  const crest = crestNear(seedRow - top, count, picture.fullRange);
  if (crest < 0) return false;
  const above = ambientFrom(crest, -1, crest + top + 0.5 - seed.colourTopPx, count);
  const below = ambientFrom(crest, 1, seed.colourBottomPx - crest - top - 0.5, count);
  const ambient = above > below ? above : below;
  const rise = profile[crest] - ambient;
  if (rise <= 0) return false;
  const saturated = saturationOf(profile[crest], picture.fullRange);
  const middle = ambient + levelFor(MIDDLE_LEVEL, saturated) * rise;
  const upMiddle = crossing(crest, -1, count, middle);
  const downMiddle = crossing(crest, 1, count, middle);
  if (Number.isNaN(upMiddle) || Number.isNaN(downMiddle)) return false;
  const lower = ambient + levelFor(LOWER_LEVEL, saturated) * rise;
  const upper = ambient + levelFor(UPPER_LEVEL, saturated) * rise;
  const upFlank = crossing(crest, -1, count, upper) - crossing(crest, -1, count, lower);
  const downFlank = crossing(crest, 1, count, lower) - crossing(crest, 1, count, upper);
  shape.midPx = top + 0.5 + 0.5 * (upMiddle + downMiddle);
  shape.halfWidthPx = 0.5 * (downMiddle - upMiddle);
  // A double beside a clipped core draws one flank out; the other still tells the blur.
  const plainFlank = 0.5 * (upFlank + downFlank);
  shape.flankPx = plainFlank + saturated * (Math.min(upFlank, downFlank) - plainFlank);
  shape.saturated = saturated;
  shape.ambientAbove = above;
  shape.ambientBelow = below;
  shape.rise = rise;
  return true;
}

function levelFor(level: { plain: number; saturated: number }, saturated: number): number {
  return level.plain + saturated * (level.saturated - level.plain);
}

function saturationOf(luma: number, fullRange: boolean): number {
  const full = fullRange ? luma : ((luma - 16) * 255) / 219;
  const share = (full - CORE_LUMA_FROM) / (CORE_LUMA_FULL - CORE_LUMA_FROM);
  return share < 0 ? 0 : share > 1 ? 1 : share;
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

/**
 * The highest local crest within the seed's slack; −1 when luma only falls or rises there. On a
 * clipped crest every row is as good: its own wobble is noise.
 */
function crestNear(seed: number, count: number, fullRange: boolean): number {
  let crest = -1;
  const from = Math.max(1, seed - SEED_SLACK_PX);
  const to = Math.min(count - 2, seed + SEED_SLACK_PX);
  for (let i = from; i <= to; i++) {
    const here = profile[i];
    const falls = here >= profile[i - 1] && here >= profile[i + 1];
    if (!falls && saturationOf(here, fullRange) < 1) continue;
    if (crest < 0 || here > profile[crest]) crest = i;
  }
  return crest;
}

/**
 * Lowest luma beyond the coloured extent on one side, up to where luma settles, another structure
 * begins or the reach ends. Inside the extent nothing counts: speckle and doubles are no ambient;
 * far outside nothing counts either: a line on white tape stands on the tape.
 */
function ambientFrom(crest: number, step: 1 | -1, extentPx: number, count: number): number {
  const crestLuma = profile[crest];
  let i = crest + step * Math.max(1, Math.round(extentPx));
  if (i < 0) i = 0;
  else if (i >= count) i = count - 1;
  let lowest = profile[i];
  let mark = lowest;
  let sinceMark = 0;
  for (i += step; i >= 0 && i < count; i += step) {
    const value = profile[i];
    const depth = crestLuma - lowest;
    if (value < lowest) lowest = value;
    else if (value - lowest > NEXT_STRUCTURE_RISE * depth) break;
    sinceMark++;
    if (sinceMark === SETTLED_OVER_PX) {
      if (mark - lowest < SETTLED_DROP * depth) break;
      mark = lowest;
      sinceMark = 0;
    }
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
