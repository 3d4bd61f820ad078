import { expect, it } from 'vitest';

import { normalFrom, seededRandom } from '../../../samples/drawnWheel/seededRandom.ts';
import { BAND_ROWS, zOfRowMm } from '../../../src/measure/band/treadBand.ts';
import { leanBasis, riseAt, type Lean } from '../../../src/measure/edge/leanFit.ts';
import { outlineStep } from '../../../src/measure/edge/outlineProposal.ts';
import { finished } from '../../../src/measure/pace/slicedWork.ts';

const RADIUS_MM = 297;
const AZIMUTHS = Float64Array.from({ length: 19 }, (_, b) => 5 * (b - 9));
const BASIS = leanBasis(AZIMUTHS, new Float64Array(19).fill(190));
const LEAN: Lean = { liftMm: 0, toward: 0.02, across: -0.01 };
const AT_MM = 3;

/** Tread above the outline, uneven as slots make it, and something even behind it. */
function profilesBefore(behind: number, slots = 3): Float32Array {
  const normal = normalFrom(seededRandom(6));
  const out = new Float32Array(AZIMUTHS.length * BAND_ROWS);
  for (let b = 0; b < AZIMUTHS.length; b++) {
    for (let r = 0; r < BAND_ROWS; r++) {
      const isTyre = zOfRowMm(r) - riseAt(BASIS, LEAN, b) > AT_MM;
      out[b * BAND_ROWS + r] = isTyre ? 50 + slots * normal() : behind;
    }
  }
  return out;
}

const stepOf = (profiles: Float32Array) => finished(outlineStep(profiles, BASIS, RADIUS_MM));

it('finds the outline before a light and before a dark background, and the lean in it', () => {
  for (const behind of [110, 15]) {
    const step = stepOf(profilesBefore(behind))!;
    expect(step.isLighterBehind).toBe(behind > 50);
    // Leans are tried a millimetre apart both ways, steps are told to a row of half a millimetre.
    expect(Math.abs(step.heightMm - AT_MM)).toBeLessThan(1.5);
    expect(Math.abs(step.lean.toward - LEAN.toward) * RADIUS_MM).toBeLessThan(2);
    expect(Math.abs(step.lean.across - LEAN.across) * RADIUS_MM).toBeLessThan(2);
  }
});

it('finds none where the background is as dark as the tyre', () => {
  expect(stepOf(profilesBefore(50))).toBeNull();
  expect(stepOf(profilesBefore(54, 8))).toBeNull();
});
