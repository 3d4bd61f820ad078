import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

import type { YuvPicture } from '../../../src/contract/picture.ts';
import { readSetup, type SweepSetup } from '../../../src/contract/setup.ts';
import { filmPictures } from '../filmPictures.ts';

export interface PictureSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** The built-in sample is 1280 pixels wide. */
const SAMPLE = resolve(import.meta.dirname, '../../../samples/shed-front-left');
const SAMPLE_WIDTH_PX = 1280;

export const SIZE_720P: PictureSize = { widthPx: 1280, heightPx: 720 };
export const SIZE_1080P: PictureSize = { widthPx: 1920, heightPx: 1080 };

export const nameOfSize = ({ widthPx, heightPx }: PictureSize): string => `${widthPx}×${heightPx}`;

/** The built-in sample in a size of one's own, and the setup that goes with it. */
export function benchFilm(size: PictureSize): {
  setup: SweepSetup;
  pictures: () => AsyncGenerator<YuvPicture>;
} {
  const setup = readSetup(JSON.parse(readFileSync(`${SAMPLE}.setup.json`, 'utf8')));
  if (!setup.ok) throw new Error('the sample has no setup');
  const scale = size.widthPx / SAMPLE_WIDTH_PX;
  const { edgePoint, ...sight } = setup.value.sight;
  const tapped = edgePoint && {
    ...edgePoint,
    ...{ xPx: scale * edgePoint.xPx, yPx: scale * edgePoint.yPx },
  };
  return {
    setup: { ...setup.value, sight: { ...sight, ...(tapped ? { edgePoint: tapped } : {}) } },
    pictures: () => filmPictures(`${SAMPLE}.mp4`, undefined, size),
  };
}
