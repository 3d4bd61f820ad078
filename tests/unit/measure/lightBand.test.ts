import { describe, expect, it } from 'vitest';

import { BAND_ROWS, zOfRowMm } from '../../../src/measure/band/treadBand.ts';
import { leanBasis, riseAt, type Lean } from '../../../src/measure/edge/leanFit.ts';
import { lightBand } from '../../../src/measure/edge/lightBand.ts';

const AZIMUTHS = Float64Array.from({ length: 19 }, (_, b) => 5 * (b - 9));
const BASIS = leanBasis(AZIMUTHS, new Float64Array(19).fill(320));
const LEAN: Lean = { liftMm: 0, toward: 0.02, across: -0.015 };
const WINDOW = { first: 0, last: BAND_ROWS - 1 };

/** Luma by height above the laser plane at lean zero; brighter to one side, as under a lamp. */
function profilesOf(lumaAt: (zMm: number) => number): Float32Array {
  const out = new Float32Array(AZIMUTHS.length * BAND_ROWS);
  for (let b = 0; b < AZIMUTHS.length; b++) {
    for (let r = 0; r < BAND_ROWS; r++) {
      const lamp = 1 + 0.01 * b;
      out[b * BAND_ROWS + r] = lamp * lumaAt(zOfRowMm(r) - riseAt(BASIS, LEAN, b));
    }
  }
  return out;
}

const inside = (z: number, from: number, to: number) => z > from && z < to;
const plain = (z: number) => 60 + 0.2 * z + 0.004 * z * z;
const grooved = (z: number) => (inside(z, -22, -14) || inside(z, -48, -40) ? 25 : plain(z));

describe('lightBand', () => {
  it('finds a band at any lean, and whether the tread beside it tells one', () => {
    const beside = lightBand(
      profilesOf((z) => (inside(z, 1, 13) ? 160 : grooved(z))),
      BASIS,
      LEAN,
      WINDOW,
    );
    expect(beside!.bottomMm).toBeCloseTo(1, 0);
    expect(beside!.topMm).toBeCloseTo(13, 0);
    expect(beside!.treadTells).toBe(true);
    const alone = lightBand(
      profilesOf((z) => (inside(z, 1, 13) ? 160 : plain(z))),
      BASIS,
      LEAN,
      WINDOW,
    );
    expect(alone!.treadTells).toBe(false);
  });

  it('finds one whose middle the laser hides', () => {
    const profiles = profilesOf((z) => (inside(z, -6, 8) ? 160 : grooved(z)));
    for (let b = 0; b < AZIMUTHS.length; b++) {
      for (let r = 0; r < BAND_ROWS; r++) {
        if (Math.abs(zOfRowMm(r)) < 3) profiles[b * BAND_ROWS + r] = NaN;
      }
    }
    const band = lightBand(profiles, BASIS, LEAN, WINDOW);
    expect(band!.bottomMm).toBeLessThan(-4);
    expect(band!.topMm).toBeGreaterThan(6);
  });

  it('takes neither ribs, nor a light sidewall, nor a tape over one part of the tread for one', () => {
    expect(lightBand(profilesOf(grooved), BASIS, LEAN, WINDOW)).toBeNull();
    const sidewall = profilesOf((z) => (z > 20 ? 160 : grooved(z)));
    expect(lightBand(sidewall, BASIS, LEAN, WINDOW)).toBeNull();
    const tape = profilesOf(grooved);
    for (let r = 0; r < BAND_ROWS; r++) {
      for (let b = 8; b < 11; b++) if (inside(zOfRowMm(r), 2, 14)) tape[b * BAND_ROWS + r] = 200;
    }
    expect(lightBand(tape, BASIS, LEAN, WINDOW)).toBeNull();
  });
});
