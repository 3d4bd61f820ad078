import type { YuvPicture } from '../../contract/picture.ts';

/** The two kinds of line laser sold for levelling: near 520–532 nm and near 635–650 nm. */
export type LaserColour = 'green' | 'red';

/**
 * Unit direction in the plane of (U − 128, V − 128) in which light of that colour moves a pixel.
 *
 * Pure G and pure R of BT.601: (−0.331, −0.419) and (−0.169, 0.5), normalised. A real camera mixes
 * the channels a little; the direction found in pictures is within about 15° of these.
 */
export interface HueAxis {
  readonly alongU: number;
  readonly alongV: number;
  /**
   * The laser's own channel above luma, per step of hue. Pure G raises luma by 0.587 and hue by
   * 0.534, so G = Y + 0.413/0.534·hue; pure R raises luma by 0.299 and hue by 0.528.
   */
  readonly channelPerHue: number;
}

export const HUE_AXES: Readonly<Record<LaserColour, HueAxis>> = {
  green: { alongU: -0.6199, alongV: -0.7847, channelPerHue: 0.773 },
  red: { alongU: -0.3202, alongV: 0.9474, channelPerHue: 1.328 },
};

/**
 * Luma (full range) from which a pixel may be a saturated core, and from which it surely is.
 * White counts as laser only so far as there is laser colour above and below it.
 */
export const CORE_LUMA_FROM = 200;
export const CORE_LUMA_FULL = 240;

/** Scale and offset that bring a picture's 8-bit samples to full range (0–255, chroma ±128). */
export interface SampleRange {
  readonly lumaOffset: number;
  readonly lumaScale: number;
  readonly chromaScale: number;
}

/** BT.601 video range keeps luma in 16–235 (219 steps) and chroma in 16–240 (224 steps). */
export function sampleRangeOf(picture: YuvPicture): SampleRange {
  return picture.fullRange
    ? { lumaOffset: 0, lumaScale: 1, chromaScale: 1 }
    : { lumaOffset: 16, lumaScale: 255 / 219, chromaScale: 255 / 224 };
}
