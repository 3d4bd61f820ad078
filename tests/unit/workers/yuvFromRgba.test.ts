import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { yuvFromRgba } from '../../../workers/yuvFromRgba.ts';

function yuvOf(r: number, g: number, b: number): readonly [number, number, number] {
  const yuv = new Uint8Array(3);
  yuvFromRgba(Uint8Array.of(r, g, b, 255), 1, yuv);
  return [yuv[0]!, yuv[1]!, yuv[2]!];
}

const byte = fc.integer({ min: 0, max: 255 });

describe('yuvFromRgba', () => {
  it('gives grey no colour and its own luma', () => {
    for (const grey of [0, 1, 127, 128, 254, 255])
      expect(yuvOf(grey, grey, grey)).toEqual([grey, 128, 128]);
  });

  it('knows the primaries of BT.601 in full range', () => {
    // Y = 0.299, 0.587, 0.114 of 255; U of blue and V of red at their upper end.
    expect(yuvOf(255, 0, 0)).toEqual([76, 85, 255]);
    expect(yuvOf(0, 255, 0)).toEqual([150, 44, 21]);
    expect(yuvOf(0, 0, 255)).toEqual([29, 255, 107]);
  });

  it('is undone by the inverse of JFIF 1.02 within rounding', () => {
    fc.assert(
      fc.property(byte, byte, byte, (r, g, b) => {
        const [y, u, v] = yuvOf(r, g, b);
        // Each of y, u, v is off by half a step at most; the inverse stretches u by 1.772, v by 1.402.
        expect(Math.abs(y + 1.402 * (v - 128) - r)).toBeLessThan(1.25);
        expect(Math.abs(y + 1.772 * (u - 128) - b)).toBeLessThan(1.45);
        expect(Math.abs(y - 0.344136 * (u - 128) - 0.714136 * (v - 128) - g)).toBeLessThan(1.1);
      }),
    );
  });
});
