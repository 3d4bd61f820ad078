import { describe, expect, it } from 'vitest';

import { BAND_ROWS, rowOfZ, Z_STEP_MM } from '../../../src/measure/band/treadBand.ts';
import { carriedBack, carriedTo, type RowMotion } from '../../../src/measure/sweep/rowMotion.ts';

/** One block whose rows rise 5 % less 25 mm below the edge (z = 0) and are seen more steeply there. */
const MOTION: RowMotion = {
  risePerEdge: Float32Array.from({ length: BAND_ROWS }, (_, r) => 1 + (0.05 * zOf(r)) / 25),
  slope: Float32Array.from({ length: BAND_ROWS }, (_, r) => 0.7 * (1 - zOf(r) / 300)),
  edgeSlope: Float32Array.of(0.7),
};

function zOf(row: number): number {
  return -(row - rowOfZ(0)) * Z_STEP_MM;
}

/** Luma of the tread by height: smooth, so that two interpolations cost little. */
const tread = (zMm: number): number => 90 + 30 * Math.sin(zMm / 4);

const moved = (upMm: number, outwardMm: number) => ({
  upMm: Float64Array.of(upMm),
  outwardMm: Float64Array.of(outwardMm),
});

/** What a camera sees of {@link tread} when the edge has risen by so much and come out by so much. */
function seen(upMm: number, outwardMm: number): Float32Array {
  const leanMm = upMm + 0.7 * outwardMm;
  return Float32Array.from({ length: BAND_ROWS }, (_, r) => {
    // The place before of what is now at this row: a few steps settle it.
    let from = zOf(r);
    for (let k = 0; k < 20; k++) {
      const rise = 1 + (0.05 * from) / 25;
      from = zOf(r) - (leanMm * rise - 0.7 * (1 - from / 300) * outwardMm);
    }
    return tread(from);
  });
}

describe('rowMotion', () => {
  const middle = (z: number) => Math.round(rowOfZ(z));

  it('carries each row back by its own way', () => {
    for (const [up, out] of [
      [8, 0],
      [-6, 2],
      [0, -3],
    ] as const) {
      const back = carriedBack(MOTION, moved(up, out), seen(up, out), new Float32Array(BAND_ROWS));
      for (const z of [10, 0, -15, -30]) {
        // Half a step of linear interpolation in a wave of 25 mm: under a tenth of a luma step.
        expect(Math.abs(back[middle(z)]! - tread(zOf(middle(z))))).toBeLessThan(0.15);
      }
    }
  });

  it('leaves rows apart by millimetres when they are carried as one', () => {
    const rigid: RowMotion = { ...MOTION, risePerEdge: new Float32Array(BAND_ROWS).fill(1) };
    const back = carriedBack(rigid, moved(8, 0), seen(8, 0), new Float32Array(BAND_ROWS));
    expect(Math.abs(back[middle(-30)]! - tread(zOf(middle(-30))))).toBeGreaterThan(0.5);
  });

  it('goes there as it comes back', () => {
    const still = seen(0, 0);
    const there = carriedTo(MOTION, moved(7, 1.5), still, new Float32Array(BAND_ROWS));
    const wanted = seen(7, 1.5);
    for (const z of [12, 3, -10, -25]) {
      expect(Math.abs(there[middle(z)]! - wanted[middle(z)]!)).toBeLessThan(0.3);
    }
  });
});
