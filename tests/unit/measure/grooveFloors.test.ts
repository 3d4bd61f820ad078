import { describe, expect, it } from 'vitest';

import { BAND_ROWS, rowOfZ, zOfRowMm } from '../../../src/measure/band/treadBand.ts';
import { grooveFloors } from '../../../src/measure/sweep/grooveFloors.ts';

/** Ribs of luma 70; from z = 0 down a lip, 4 mm of dark floor at 40, and 4 mm of wall up to the next rib. */
function treadLuma(zMm: number): number {
  if (zMm >= 0 || zMm <= -8) return 70;
  if (zMm >= -1) return 70 + 30 * zMm;
  if (zMm >= -4) return 40;
  return 40 + (30 * (-zMm - 4)) / 4;
}

const template = Float32Array.from({ length: BAND_ROWS }, (_, r) => treadLuma(zOfRowMm(r)));
const row = (zMm: number): number => Math.round(rowOfZ(zMm));

describe('grooveFloors', () => {
  const inMm = grooveFloors(template);

  it('takes dark rows for the floor, ribs for the face, and the wall for what is between', () => {
    expect(inMm[row(-3.5)]).toBeCloseTo(6, 5);
    expect(inMm[row(-6)]).toBeCloseTo(3, 5);
    for (const z of [20, 5, -9, -30]) expect(inMm[row(z)]).toBe(0);
  });

  it('leaves the upper lip on the face: it hides what is behind it', () => {
    for (const z of [0, -0.5, -1, -1.5]) expect(inMm[row(z)]).toBe(0);
  });

  it('changes no more than the luma does: noise in a flat floor is no lip', () => {
    const noisy = template.map((luma, r) => luma + (r % 2 === 0 ? 0.02 : -0.02));
    const most = grooveFloors(noisy).map((mm, i) => Math.abs(mm - inMm[i]));
    // Of 6 mm a share of 0.04 in 30 between rib and floor, at most three times.
    expect(Math.max(...most)).toBeLessThan(0.024);
  });

  it('takes a slow fall of light over the tread for no groove', () => {
    const lit = Float32Array.from({ length: BAND_ROWS }, (_, r) => 70 + 0.3 * zOfRowMm(r));
    expect(Math.max(...grooveFloors(lit))).toBe(0);
    const litFromBelow = Float32Array.from({ length: BAND_ROWS }, (_, r) => 70 - 0.3 * zOfRowMm(r));
    expect(Math.max(...grooveFloors(litFromBelow))).toBe(0);
  });

  it('says nothing of rows that were never seen', () => {
    const partly = template.map((luma, r) => (r > row(-2) ? NaN : luma));
    expect(grooveFloors(partly).every((mm) => mm === 0)).toBe(true);
  });
});
