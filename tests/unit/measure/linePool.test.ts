import { describe, expect, it } from 'vitest';

import { normalFrom, seededRandom } from '../../../samples/drawnWheel/seededRandom.ts';
import {
  createLinePool,
  pooledLine,
  regionOfPool,
  type LinePool,
} from '../../../src/measure/sight/linePool.ts';

/** A pool whose pictures show the line at `rowAt` in every bin, with 0.2 px of noise. */
function poolOf(pictures: number, rowAt: (picture: number, bin: number) => number): LinePool {
  const normal = normalFrom(seededRandom(3));
  const pool = createLinePool(1280, 720);
  for (let p = 0; p < pictures; p++) {
    pool.rowsPx.push(Float32Array.from({ length: 160 }, (_, b) => rowAt(p, b) + 0.2 * normal()));
  }
  return pool;
}

describe('pooledLine', () => {
  it('keeps the face where a groove shows the line higher for most of the time', () => {
    // On the face (row 300) in four pictures of ten, each bin at its own time.
    const pool = poolOf(60, (p, b) => ((p * 7 + b) % 10 < 4 ? 300 : 293));
    const { points } = pooledLine(pool);
    expect(points.yPx.length).toBe(160);
    for (const y of Array.from(points.yPx)) expect(Math.abs(y - 300)).toBeLessThan(0.5);
  });

  it('is not drawn down by a few stray rows', () => {
    const pool = poolOf(60, (p) => (p % 15 === 0 ? 340 : 300));
    for (const y of Array.from(pooledLine(pool).points.yPx))
      expect(Math.abs(y - 300)).toBeLessThan(0.5);
  });

  it('leaves out columns that hardly ever showed the line', () => {
    const pool = poolOf(60, (p, b) => (b < 40 && p > 2 ? NaN : 300));
    expect(pooledLine(pool).points.yPx.length).toBe(120);
  });
});

describe('regionOfPool', () => {
  it('holds the whole curve, and room for the line to fall into a groove', () => {
    const bow = (bin: number) => 300 - 120 * ((bin - 80) / 80) ** 2;
    const region = regionOfPool(poolOf(20, (_, bin) => bow(bin)))!;
    expect(region.x0).toBe(0);
    expect(region.x1).toBe(1280);
    // A groove 11 mm deep moves the line by 20 to 35 px in a picture of this height.
    expect(region.y0).toBeLessThan(180 - 35);
    expect(region.y1).toBeGreaterThan(300 + 35);
    expect(region.y1 - region.y0).toBeLessThan(0.45 * 720);
  });

  it('ends with the picture', () => {
    const region = regionOfPool(poolOf(20, () => 700))!;
    expect(region.y1).toBe(720);
  });

  it('is the whole picture while no line was seen', () => {
    expect(regionOfPool(poolOf(20, () => NaN))).toBeUndefined();
  });
});
