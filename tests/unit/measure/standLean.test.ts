import { describe, expect, it } from 'vitest';

import type { SolvedSweep } from '../../../src/measure/sweep/solvedSweep.ts';
import { checkStand } from '../../../src/measure/sweep/standLean.ts';

const RADIUS_MM = 305;

/** A sweep whose stand leans by so much, told to so many mrad. */
function leaning(standMrad: number, sdMrad: number): SolvedSweep {
  const mmPerMrad = RADIUS_MM / 1000;
  const variance = (sdMrad * mmPerMrad) ** 2;
  return {
    fit: {
      standMm: { along0: standMrad * mmPerMrad, along90: 0 },
      standCovarianceMm2: [
        [variance, 0],
        [0, variance],
      ],
    },
    lineInset: { insetMm: 0, insetSdMm: 0 },
    view: {
      setup: { wheel: { edgeRadiusMm: RADIUS_MM } },
      sight: { poseFit: { covariance: new Float64Array(49) } },
      basis: { gainMm: [305, 305, 305], cos: [0.9, 1, 0.9], sin: [-0.4, 0, 0.4] },
      sightSlopes: Float64Array.of(0.7, 0.65, 0.7),
    },
  } as unknown as SolvedSweep;
}

describe('checkStand', () => {
  it('refuses a stand that leans too far, or an edge that was mistaken', () => {
    expect(checkStand(leaning(60, 8))).not.toBeNull();
    expect(checkStand(leaning(45, 8))).toBeNull();
  });

  // Fails: of nine blocks seen from aside the lean comes out as 81 ± 35 mrad, of a stand that leans by 2.
  it('lets pass a lean that is hardly told from none', () => {
    expect(checkStand(leaning(81, 35))).toBeNull();
    expect(checkStand(leaning(120, 35))).not.toBeNull();
  });
});
