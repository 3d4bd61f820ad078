import type { YuvPicture } from '../../src/contract/picture.ts';
import { yuvFromRgba } from '../../workers/yuvFromRgba.ts';

/** A drawn picture (three bytes a pixel, even size) as a camera hands it on: I420, full range. */
export function yuvFromRgb(
  rgb: Uint8Array,
  { widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number },
  timeS: number,
): YuvPicture {
  const pixels = widthPx * heightPx;
  const rgba = new Uint8Array(4 * pixels).fill(255);
  for (let i = 0; i < pixels; i++) rgba.set(rgb.subarray(3 * i, 3 * i + 3), 4 * i);
  const planes = new Uint8Array(3 * pixels);
  yuvFromRgba(rgba, pixels, planes);
  return {
    ...{ widthPx, heightPx, timeS },
    y: planes.subarray(0, pixels),
    yStride: widthPx,
    u: halved(planes.subarray(pixels, 2 * pixels), widthPx),
    v: halved(planes.subarray(2 * pixels), widthPx),
    chromaStride: widthPx >> 1,
    chromaStep: 1,
    chromaShift: 1,
    fullRange: true,
  };
}

/** The mean of each two by two. */
function halved(plane: Uint8Array, widthPx: number): Uint8Array {
  const half = widthPx >> 1;
  return Uint8Array.from({ length: plane.length >> 2 }, (_, i) => {
    const at = 2 * widthPx * Math.floor(i / half) + 2 * (i % half);
    const sum = plane[at]! + plane[at + 1]! + plane[at + widthPx]! + plane[at + widthPx + 1]!;
    return Math.round(sum / 4);
  });
}
