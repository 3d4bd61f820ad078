import type { YuvPicture } from '../src/contract/picture.ts';

/** Tells a camera that sends one picture over and over from a wheel that stands still. */
export interface Stillness {
  /** True once the same picture, to the last bit, has come for too long. */
  isFrozen(picture: YuvPicture): boolean;
}

/** A sensor's noise never repeats; a decoder may hand out one picture twice, not for so long, s. */
const FROZEN_AFTER_S = 3;
/** One pixel in so many, both ways: some thousand of a 720p picture. */
const GRID_PX = 27;

export function createStillness(): Stillness {
  let lastSum = NaN;
  let sinceS = 0;
  return {
    isFrozen(picture) {
      const sum = sparseSum(picture);
      if (sum !== lastSum) {
        lastSum = sum;
        sinceS = picture.timeS;
      }
      return picture.timeS - sinceS > FROZEN_AFTER_S;
    },
  };
}

/** A sum in which every place has a weight of its own, so that changes do not cancel. */
function sparseSum({ y, yStride, widthPx, heightPx }: YuvPicture): number {
  let sum = 17;
  for (let row = GRID_PX >> 1; row < heightPx; row += GRID_PX) {
    for (let column = GRID_PX >> 1; column < widthPx; column += GRID_PX) {
      sum = (Math.imul(sum, 31) + y[row * yStride + column]!) | 0;
    }
  }
  return sum;
}
