import { describe, expect, it } from 'vitest';

import type { YuvPicture } from '../../../src/contract/picture.ts';
import { turnedPicture, type Showing } from '../../../workers/turnedPicture.ts';

/** 4×2 luma with a padded row, chroma interleaved as in NV12. */
const PICTURE: YuvPicture = {
  widthPx: 4,
  heightPx: 2,
  timeS: 1.5,
  y: Uint8Array.of(1, 2, 3, 4, 99, 5, 6, 7, 8, 99),
  yStride: 5,
  u: Uint8Array.of(10, 20, 11, 21),
  v: Uint8Array.of(20, 11, 21),
  chromaStride: 4,
  chromaStep: 2,
  chromaShift: 1,
  fullRange: false,
};

function rowsOf(picture: YuvPicture): number[][] {
  return Array.from({ length: picture.heightPx }, (_, row) =>
    Array.from(picture.y.subarray(row * picture.yStride, row * picture.yStride + picture.widthPx)),
  );
}

function turned(showing: Showing): YuvPicture {
  return turnedPicture(PICTURE, showing, new Uint8Array(0));
}

describe('turnedPicture', () => {
  it('turns clockwise, as a container asks for it', () => {
    expect(rowsOf(turned({ rotationDeg: 90, mirrored: false }))).toEqual([
      [5, 1],
      [6, 2],
      [7, 3],
      [8, 4],
    ]);
    expect(rowsOf(turned({ rotationDeg: 180, mirrored: false }))).toEqual([
      [8, 7, 6, 5],
      [4, 3, 2, 1],
    ]);
    expect(rowsOf(turned({ rotationDeg: 270, mirrored: false }))).toEqual([
      [4, 8],
      [3, 7],
      [2, 6],
      [1, 5],
    ]);
  });

  it('mirrors left to right after turning', () => {
    expect(rowsOf(turned({ rotationDeg: 0, mirrored: true }))).toEqual([
      [4, 3, 2, 1],
      [8, 7, 6, 5],
    ]);
    expect(rowsOf(turned({ rotationDeg: 90, mirrored: true }))).toEqual([
      [1, 5],
      [2, 6],
      [3, 7],
      [4, 8],
    ]);
  });

  it('takes the colours apart and turns them along', () => {
    const half = turned({ rotationDeg: 180, mirrored: false });
    expect([half.chromaStep, half.chromaStride, Array.from(half.u), Array.from(half.v)]).toEqual([
      1,
      2,
      [11, 10],
      [21, 20],
    ]);
    const quarter = turned({ rotationDeg: 90, mirrored: false });
    expect([quarter.widthPx, quarter.heightPx, quarter.chromaStride]).toEqual([2, 4, 1]);
    expect([Array.from(quarter.u), Array.from(quarter.v)]).toEqual([
      [10, 11],
      [20, 21],
    ]);
  });

  it('keeps odd sizes whole', () => {
    const odd: YuvPicture = {
      ...PICTURE,
      widthPx: 3,
      heightPx: 1,
      y: Uint8Array.of(1, 2, 3),
      yStride: 3,
    };
    const quarter = turnedPicture(odd, { rotationDeg: 90, mirrored: false }, new Uint8Array(0));
    expect([rowsOf(quarter), Array.from(quarter.u)]).toEqual([
      [[1], [2], [3]],
      [10, 11],
    ]);
  });
});
