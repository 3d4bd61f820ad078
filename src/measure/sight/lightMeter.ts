import type { YuvPicture } from '../../contract/picture.ts';

/** How bright the pictures are, from a sparse grid of pixels. */
export interface LightMeter {
  darkPictures: number;
  brightPictures: number;
  pictures: number;
}

/** One pixel in so many, both ways. */
const GRID_PX = 16;
/** A picture whose brighter parts stay below this luma shows no tread. */
const DARK_LUMA = 34;
/** A picture with more than this share at full white hides line and tread. */
const BRIGHT_LUMA = 250;
const BRIGHT_SHARE = 0.4;

export function createLightMeter(): LightMeter {
  return { darkPictures: 0, brightPictures: 0, pictures: 0 };
}

export function meterLight(meter: LightMeter, picture: YuvPicture): void {
  let white = 0;
  let aboveDark = 0;
  let n = 0;
  for (let y = GRID_PX >> 1; y < picture.heightPx; y += GRID_PX) {
    for (let x = GRID_PX >> 1; x < picture.widthPx; x += GRID_PX) {
      const luma = picture.y[y * picture.yStride + x];
      if (luma > BRIGHT_LUMA) white++;
      if (luma > DARK_LUMA) aboveDark++;
      n++;
    }
  }
  meter.pictures++;
  // The laser's own line is bright in a dark picture: one pixel in fifty does not make light.
  if (aboveDark < 0.02 * n) meter.darkPictures++;
  if (white > BRIGHT_SHARE * n) meter.brightPictures++;
}

export function lightTrouble(meter: LightMeter): 'too-dark' | 'too-bright' | null {
  if (meter.darkPictures * 2 > meter.pictures) return 'too-dark';
  if (meter.brightPictures * 2 > meter.pictures) return 'too-bright';
  return null;
}
