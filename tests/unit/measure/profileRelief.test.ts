import { describe, expect, it } from 'vitest';

import { BAND_ROWS } from '../../../src/measure/band/treadBand.ts';
import { profileRelief } from '../../../src/measure/edge/profileRelief.ts';
import { profileShift } from '../../../src/measure/edge/profileShift.ts';

/** Two grooves with soft rims, luma by row, moved up by so many rows, beside a skirt of light that stands still. */
function litRibs(upRows: number, skirtLuma: number): Float32Array {
  const soft = (at: number): number => 1 / (1 + Math.exp(-at / 1.2));
  return Float32Array.from({ length: BAND_ROWS }, (_, row) => {
    const r = row + upRows;
    const groove = soft(r - 80) - soft(r - 98) + soft(r - 140) - soft(r - 158);
    return 95 - 30 * groove + skirtLuma * Math.exp(-(((row - 100) / 15) ** 2));
  });
}

function foundUpRows(template: Float32Array, profile: Float32Array): number {
  const search = { centreRows: 0, reachRows: 5 };
  const window = { first: 20, last: 180 };
  return profileShift(template, 0, profile, 0, BAND_ROWS, window, search)?.upRows ?? NaN;
}

const relief = (profile: Float32Array) => profileRelief(profile, new Float32Array(BAND_ROWS));

describe('profileRelief', () => {
  it('lets ribs be followed past light that stands still, which holds whole profiles back', () => {
    for (const up of [-2.4, -1, 0.7, 2]) {
      const [template, profile] = [litRibs(0, 60), litRibs(up, 60)];
      expect(Math.abs(foundUpRows(relief(template), relief(profile)) - up)).toBeLessThan(0.1);
      // Held back by a quarter and more.
      expect(foundUpRows(template, profile) / up).toBeLessThan(0.75);
    }
  });

  it('is blind to light that changes evenly along the rows, and keeps blocks apart', () => {
    const blocks = new Float32Array(2 * BAND_ROWS).map((_, i) =>
      i < BAND_ROWS ? 20 + 0.5 * i : 200 - (i - BAND_ROWS),
    );
    const out = profileRelief(blocks, new Float32Array(2 * BAND_ROWS));
    const known = [...out].filter((v) => !Number.isNaN(v));
    expect(known).toHaveLength(2 * (BAND_ROWS - 4));
    expect(Math.max(...known.map(Math.abs))).toBeLessThan(1e-4);
    for (const i of [0, 1, BAND_ROWS - 2, BAND_ROWS, BAND_ROWS + 1]) expect(out[i]).toBeNaN();
  });

  it('knows no row beside one that is not known', () => {
    const profile = litRibs(0, 0);
    profile[90] = NaN;
    const unknown = [...relief(profile).keys()].filter(
      (r) => r >= 2 && r < BAND_ROWS - 2 && Number.isNaN(relief(profile)[r]),
    );
    expect(unknown).toEqual([88, 90, 92]);
  });
});
