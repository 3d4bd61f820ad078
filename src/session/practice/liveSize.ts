import type { SightCount } from '../../../samples/stand/cpu/renderPicture.ts';

/** Size of a live picture, and the lines of sight that make one of its pixels. */
export interface LiveSize {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly sights: SightCount;
}

/** Thirty pictures a second, with a part of the time left for the measuring core. */
export const LIVE_MS = 33;
export const DRAW_MS = 24;

/** Best first. The truth of the scene is the same in all of them, and so is the time between two. */
export const LIVE_SIZES: readonly LiveSize[] = [
  { widthPx: 1280, heightPx: 720, sights: 4 },
  { widthPx: 1280, heightPx: 720, sights: 2 },
  { widthPx: 960, heightPx: 540, sights: 4 },
  { widthPx: 960, heightPx: 540, sights: 2 },
  { widthPx: 640, heightPx: 360, sights: 4 },
  { widthPx: 640, heightPx: 360, sights: 2 },
];

/** Time that a picture of this size takes where one line of sight takes `sightMs`. */
export function drawMs({ widthPx, heightPx, sights }: LiveSize, sightMs: number): number {
  return widthPx * heightPx * sights * sightMs;
}

/** The best size that is drawn in time; null where not even the least is. */
export function liveSize(sightMs: number): LiveSize | null {
  return LIVE_SIZES.find((size) => drawMs(size, sightMs) < DRAW_MS) ?? null;
}
