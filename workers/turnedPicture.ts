import type { YuvPicture } from '../src/contract/picture.ts';

/** How a container asks for its pictures to be shown: turned clockwise, then mirrored left to right. */
export interface Showing {
  readonly rotationDeg: 0 | 90 | 180 | 270;
  readonly mirrored: boolean;
}

export const AS_STORED: Showing = { rotationDeg: 0, mirrored: false };

/** The picture as it is to be shown, its planes packed into `memory` (grown when too small). */
export function turnedPicture(
  picture: YuvPicture,
  showing: Showing,
  memory: Uint8Array,
): YuvPicture {
  const onItsSide = showing.rotationDeg % 180 !== 0;
  const widthPx = onItsSide ? picture.heightPx : picture.widthPx;
  const heightPx = onItsSide ? picture.widthPx : picture.heightPx;
  const chromaWidth = shifted(picture.widthPx, picture.chromaShift);
  const chromaHeight = shifted(picture.heightPx, picture.chromaShift);
  const yBytes = widthPx * heightPx;
  const chromaBytes = chromaWidth * chromaHeight;
  const bytes = yBytes + 2 * chromaBytes;
  const target = memory.length >= bytes ? memory : new Uint8Array(bytes);
  const y = target.subarray(0, yBytes);
  const u = target.subarray(yBytes, yBytes + chromaBytes);
  const v = target.subarray(yBytes + chromaBytes, bytes);
  const { yStride, chromaStride, chromaStep } = picture;
  turnPlane(picture.y, yStride, 1, picture.widthPx, picture.heightPx, showing, y);
  turnPlane(picture.u, chromaStride, chromaStep, chromaWidth, chromaHeight, showing, u);
  turnPlane(picture.v, chromaStride, chromaStep, chromaWidth, chromaHeight, showing, v);
  return {
    ...picture,
    widthPx,
    heightPx,
    y,
    yStride: widthPx,
    u,
    v,
    chromaStride: onItsSide ? chromaHeight : chromaWidth,
    chromaStep: 1,
  };
}

function shifted(lengthPx: number, shift: 0 | 1): number {
  return shift === 0 ? lengthPx : (lengthPx + 1) >> 1;
}

/** Copies one plane of `width`×`height` samples, turned; the result has no padding. */
function turnPlane(
  from: Uint8Array,
  stride: number,
  step: number,
  width: number,
  height: number,
  { rotationDeg, mirrored }: Showing,
  to: Uint8Array,
): void {
  const toWidth = rotationDeg % 180 === 0 ? width : height;
  const toHeight = rotationDeg % 180 === 0 ? height : width;
  // Where the sample shown at column 0, row 0 comes from, and the steps to its neighbours.
  const right = step;
  const down = stride;
  const lastColumn = (width - 1) * right;
  const lastRow = (height - 1) * down;
  const [origin, perColumn, perRow] = {
    0: [0, right, down] as const,
    90: [lastRow, -down, right] as const,
    180: [lastRow + lastColumn, -right, -down] as const,
    270: [lastColumn, down, -right] as const,
  }[rotationDeg];
  const start = mirrored ? origin + (toWidth - 1) * perColumn : origin;
  const along = mirrored ? -perColumn : perColumn;
  for (let row = 0, out = 0; row < toHeight; row++) {
    let at = start + row * perRow;
    for (let column = 0; column < toWidth; column++, at += along) to[out++] = from[at]!;
  }
}
