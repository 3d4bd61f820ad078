import { expect, it } from 'vitest';

import { normalFrom, seededRandom } from '../../../samples/drawnWheel/seededRandom.ts';
import { BAND_ROWS, zOfRowMm } from '../../../src/measure/band/treadBand.ts';
import { leanBasis } from '../../../src/measure/edge/leanFit.ts';
import { outlineSides } from '../../../src/measure/sweep/outlineSides.ts';
import type { SweepRecording } from '../../../src/measure/sweep/sweepRecording.ts';

const BLOCKS = 7;
const UPRIGHT = { liftMm: 0, toward: 0, across: 0 };

/** A turn of a wheel; luma of the rows by height and turn, with noise of half a step. */
function turnOf(lumaAt: (zMm: number, turnDeg: number) => number): SweepRecording {
  const normal = normalFrom(seededRandom(2));
  const turnDeg = Array.from({ length: 240 }, (_, i) => 1.6 * i);
  const frames = turnDeg.map((turn, turnIndex) => ({
    turnIndex,
    lean: { lean: UPRIGHT },
    profiles: Float32Array.from({ length: BLOCKS * BAND_ROWS }, (_, at) => {
      const zMm = zOfRowMm(at % BAND_ROWS);
      return lumaAt(zMm, turn + 5 * Math.floor(at / BAND_ROWS)) + 0.5 * normal();
    }),
  }));
  const azimuths = Float64Array.from({ length: BLOCKS }, (_, b) => 5 * (b - 3));
  const basis = leanBasis(azimuths, new Float64Array(BLOCKS).fill(190));
  const tilt = { blocks: BLOCKS, basis };
  const edge = { heightMm: 2, lean: UPRIGHT };
  // What the sides are told by, and nothing else of a recording.
  return { frames, tilt, edge, turn: { turnDeg } } as unknown as SweepRecording;
}

const slots = (turnDeg: number) => 6 * Math.sin(turnDeg * 1.3);

it('tells a tyre before the floor from what stands, and from what turns, on both sides', () => {
  const tyre = outlineSides(turnOf((z, t) => (z > 2 ? 50 + slots(t) : 110)));
  expect(tyre.above).toBeGreaterThan(3 * tyre.below);
  const bench = outlineSides(turnOf((z) => (z > 2 ? 50 : 110)));
  expect(bench.above).toBeLessThan(3 * bench.below);
  const groove = outlineSides(turnOf((z, t) => (z > 2 ? 50 : 25) + slots(t)));
  expect(groove.above).toBeLessThan(3 * groove.below);
});
