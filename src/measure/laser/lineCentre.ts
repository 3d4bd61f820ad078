import type { YuvPicture } from '../../contract/picture.ts';

/**
 * The line's model across the rows: a box of half width a, blurred by a Gaussian of deviation s.
 * a = 0 is a Gaussian line; a ≫ s is a saturated core with blurred flanks.
 */
export interface LineTemplate {
  readonly boxHalfPx: number;
  readonly blurPx: number;
}

/** Ratio of half-height half width to RMS width of a Gaussian: √(2 ln 2). */
export const HALF_HEIGHT_PER_RMS = 1.17741;
/** Quarter-to-three-quarter flank of a Gaussian, per RMS width: √(2 ln 4) − √(2 ln 4/3). */
const FLANK_PER_RMS = 0.90655;
/**
 * Flank of a blurred step per deviation of the blur: between a quarter and three quarters
 * 2·0.67449, between 0.6 and 0.9 (a saturated crest's levels) 1.28155 − 0.25335.
 */
const FLANK_PER_BLUR = { plain: 1.34898, saturated: 1.0282 } as const;
/** Flank over half width of a Gaussian line; a flat-topped line has less. */
const GAUSSIAN_FLANK_RATIO = FLANK_PER_RMS / HALF_HEIGHT_PER_RMS;
/**
 * Below this share of the Gaussian's ratio a line is taken as flat-topped. A saturated Gaussian
 * that shows its upper half clipped has about 0.6; noise at SNR 10 moves the ratio by 0.15.
 */
const FLAT_TOP_BELOW = 0.75;
/** Variance that the (1 2 1)/4 smoothing of the profile adds to what was measured, px². */
const SMOOTHING_VARIANCE = 0.5;
/** Narrowest blur of any lens and mosaic, px: keeps the template wider than its sampling. */
const LEAST_BLUR_PX = 0.8;

/** The template of the widths measured on a smoothed profile (see LineShape). */
export function templateFor(halfWidthPx: number, flankPx: number, saturated: number): LineTemplate {
  const ratio = flankPx / halfWidthPx / GAUSSIAN_FLANK_RATIO;
  if (saturated < 0.5 && !(ratio < FLAT_TOP_BELOW)) {
    const rms = halfWidthPx / HALF_HEIGHT_PER_RMS;
    const blur = Math.sqrt(Math.max(rms * rms - SMOOTHING_VARIANCE, 0));
    return { boxHalfPx: 0, blurPx: Math.max(blur, LEAST_BLUR_PX) };
  }
  const { plain, saturated: full } = FLANK_PER_BLUR;
  const smoothed = flankPx / (plain + saturated * (full - plain));
  const blur = Math.sqrt(Math.max(smoothed * smoothed - SMOOTHING_VARIANCE, 0));
  return { boxHalfPx: halfWidthPx, blurPx: Math.max(blur, LEAST_BLUR_PX) };
}

/** exp(−u²/2) for u = 0 … 3.5 in steps of 1/512: the nearest entry is within 0.001. */
const BELL_STEPS = 512;
const BELL_END = 3.5;
const BELL = Float64Array.from({ length: BELL_STEPS * BELL_END + 2 }, (_, i) =>
  Math.exp(-((i / BELL_STEPS) ** 2) / 2),
);

/** Newton steps: the start lies within a fifth of the width, and each step squares the error. */
const NEWTON_STEPS = 3;

/**
 * Row of a line's centre: the zero of Σ s(y)·K(y − c), s the luma above a ramp between both
 * ambients, K the derivative of the template.
 *
 * For a Gaussian line in white noise this is the maximum-likelihood estimate, so its error is the
 * Cramér–Rao bound's as long as the width is right (and a width wrong by a fifth costs 3 %). For a
 * flat top K is a pair of opposed bells on the flanks, the clipped core between has no vote: the
 * smoothed half-height midpoint. Returns NaN when the steps leave the line.
 */
export function matchedCentrePx(
  picture: YuvPicture,
  x: number,
  startPx: number,
  template: LineTemplate,
  ambientAbove: number,
  ambientBelow: number,
): number {
  const { boxHalfPx, blurPx } = template;
  const reach = boxHalfPx + BELL_END * blurPx;
  const slope = (ambientBelow - ambientAbove) / (2 * (boxHalfPx + 2 * blurPx));
  const middle = 0.5 * (ambientAbove + ambientBelow);
  const low = Math.min(ambientAbove, ambientBelow);
  const high = Math.max(ambientAbove, ambientBelow);
  const { y, yStride, heightPx } = picture;
  const perBlur = 1 / blurPx;
  const step = BELL_STEPS * perBlur;
  let centre = startPx;
  for (let n = 0; n < NEWTON_STEPS; n++) {
    const from = Math.max(0, Math.ceil(centre - reach - 0.5));
    const to = Math.min(heightPx - 1, Math.floor(centre + reach - 0.5));
    let value = 0;
    let rate = 0;
    for (let row = from, p = from * yStride + x; row <= to; row++, p += yStride) {
      const z = row + 0.5 - centre;
      const ramp = middle + slope * z;
      const s = y[p] - (ramp < low ? low : ramp > high ? high : ramp);
      if (boxHalfPx === 0) {
        const u = z * perBlur;
        const g = s * BELL[((z < 0 ? -z : z) * step + 0.5) | 0];
        value += g * u;
        rate += g * (u * u - 1);
      } else {
        const zLow = z + boxHalfPx;
        const zHigh = z - boxHalfPx;
        const iLow = ((zLow < 0 ? -zLow : zLow) * step + 0.5) | 0;
        const iHigh = ((zHigh < 0 ? -zHigh : zHigh) * step + 0.5) | 0;
        const gLow = iLow < BELL.length ? s * BELL[iLow] : 0;
        const gHigh = iHigh < BELL.length ? s * BELL[iHigh] : 0;
        value += gHigh - gLow;
        rate += (gHigh * zHigh - gLow * zLow) * perBlur;
      }
    }
    // d/dc of value is rate/blur; at a line's centre it is negative.
    if (!(rate < 0)) return Number.NaN;
    centre -= (value / rate) * blurPx;
    if (!(Math.abs(centre - startPx) < boxHalfPx + blurPx)) return Number.NaN;
  }
  return centre;
}
