import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { measuredResponse } from '../../../src/balance/response.ts';
import type { LoadedSweep } from '../../../src/balance/responseFit.ts';
import { pooledResponse } from '../../../src/balance/responsePool.ts';
import { symmetricInverse } from '../../../src/balance/symmetricInverse.ts';
import {
  addVectors,
  multiplyAsComplex,
  scaleVector,
  vectorFromPolar,
  type PlaneCovariance,
  type PlaneVector,
} from '../../../src/quantities/vector.ts';
import { evenNumber, failureOf, seededNormal, valueOf } from './outcomeHelpers.ts';

const K = 0.0023;
const SIGMA = 0.05;
const C: PlaneCovariance = [
  [SIGMA ** 2, 0],
  [0, SIGMA ** 2],
];
const EXACT = { momentRelativeSd: 0, placeSdDeg: 0 };
const BARE = vectorFromPolar(6, 200);

function sweep(
  added: PlaneVector,
  k: PlaneVector,
  off: PlaneVector = { along0: 0, along90: 0 },
): LoadedSweep {
  const riseMm = addVectors(addVectors(BARE, scaleVector(multiplyAsComplex(k, added), -1)), off);
  return { rise: { riseMm, covarianceMm2: C }, addedGmm: added };
}
const real: PlaneVector = { along0: K, along90: 0 };
const LOADS = [0, 3700, 5550, 3000].map((amount, i) => vectorFromPolar(amount, 40 + 70 * i));

describe('pooledResponse', () => {
  it('is the single trial’s answer for two sweeps, and tells no drift from them', () => {
    const two = LOADS.slice(0, 2).map((w) => sweep(w, vectorFromPolar(K, 5)));
    const pooled = valueOf(pooledResponse(two, EXACT));
    const single = valueOf(
      measuredResponse({
        before: two[0]!.rise,
        after: two[1]!.rise,
        added: [{ massG: 20, radiusMm: 185, angleDeg: 110 }],
        uncertainty: EXACT,
      }),
    );
    expect(pooled.response.mmPerGmm).toBeCloseTo(single.response.mmPerGmm, 12);
    // The floor of 1e-8 mm² is all that differs.
    expect(pooled.response.standardError / single.response.standardError).toBeCloseTo(1, 4);
    expect(pooled.angle.angleDeg).toBeCloseTo(single.angle.angleDeg, 6);
    expect(pooled.drift.finding).toBe('not-told');
    expect(pooled.bareRiseMm.along0).toBeCloseTo(BARE.along0, 6);
  });

  it('finds the bare rise also where the first sweep had weights on', () => {
    const sweeps = LOADS.slice(1).map((w) => sweep(w, real));
    const pooled = valueOf(pooledResponse(sweeps, EXACT));
    expect(pooled.bareRiseMm.along0).toBeCloseTo(BARE.along0, 6);
    expect(pooled.bareRiseMm.along90).toBeCloseTo(BARE.along90, 6);
    expect(pooled.response.mmPerGmm).toBeCloseTo(K, 9);
    expect(pooled.angle.finding).toBe('sound');
  });

  it('states an error that the scatter of simulated sweeps bears out', () => {
    const normal = seededNormal(5);
    const runs = 600;
    let squared = 0;
    let stated = 0;
    let drifts = 0;
    for (let i = 0; i < runs; i += 1) {
      const sweeps = LOADS.map((w) =>
        sweep(w, real, { along0: SIGMA * normal(), along90: SIGMA * normal() }),
      );
      const pooled = valueOf(pooledResponse(sweeps, EXACT));
      squared += ((pooled.coefficientMmPerGmm.along0 - K) / runs ** 0.5) ** 2;
      stated = Math.sqrt(pooled.covariance[0][0]);
      if (pooled.drift.finding === 'seen') drifts += 1;
    }
    // Sampling error of a standard deviation from 600 runs: 3 %.
    expect(Math.abs(Math.sqrt(squared) / stated - 1)).toBeLessThan(0.1);
    // One in a hundred by the test's own level; 600 runs scatter by 0.4 %.
    expect(drifts / runs).toBeLessThan(0.025);
  });

  it('flags drift, names the sweep and widens the error', () => {
    const sweeps = LOADS.map((w, i) =>
      sweep(w, real, i === 2 ? { along0: 0.8, along90: 0 } : { along0: 0, along90: 0 }),
    );
    const quiet = valueOf(
      pooledResponse(
        LOADS.map((w) => sweep(w, real)),
        EXACT,
      ),
    );
    const drifting = valueOf(pooledResponse(sweeps, EXACT));
    expect(quiet.drift.finding).toBe('none');
    expect(drifting.drift.finding).toBe('seen');
    expect(drifting.drift.worstSweep).toBe(2);
    expect(drifting.response.standardError).toBeGreaterThan(2 * quiet.response.standardError);
  });

  it('knows a mirrored wheel by trials at different places', () => {
    const mirror = (v: PlaneVector) => ({ along0: v.along0, along90: -v.along90 });
    const sweeps = LOADS.map((w) => {
      const s = sweep(w, real);
      return { ...s, rise: { ...s.rise, riseMm: mirror(s.rise.riseMm) } };
    });
    const pooled = valueOf(pooledResponse(sweeps, EXACT));
    expect(pooled.angle).toMatchObject({ finding: 'turn-sense-wrong', alsoPossible: [] });
    expect(pooled.response.mmPerGmm).toBeCloseTo(K, 9);
    // The bare rise stays in the frame of the sweeps as they came.
    expect(pooled.bareRiseMm.along90).toBeCloseTo(-BARE.along90, 6);
  });

  it('weighs a poor sweep less', () => {
    const poor = sweep(LOADS[3]!, real, { along0: 2, along90: 0 });
    const wide: PlaneCovariance = [
      [4, 0],
      [0, 4],
    ];
    const sweeps = [
      ...LOADS.slice(0, 3).map((w) => sweep(w, real)),
      { ...poor, rise: { ...poor.rise, covarianceMm2: wide } },
    ];
    const pooled = valueOf(pooledResponse(sweeps, EXACT));
    expect(Math.abs(pooled.response.mmPerGmm / K - 1)).toBeLessThan(0.01);
    expect(pooled.drift.finding).toBe('none');
  });

  it('turns with the wheel', () => {
    fc.assert(
      fc.property(evenNumber(0, 360), (byDeg) => {
        const turn = (v: PlaneVector) => multiplyAsComplex(v, vectorFromPolar(1, byDeg));
        const sweeps = LOADS.map((w) => sweep(w, vectorFromPolar(K, 7))).map((s) => ({
          rise: { ...s.rise, riseMm: turn(s.rise.riseMm) },
          addedGmm: turn(s.addedGmm),
        }));
        const pooled = valueOf(pooledResponse(sweeps));
        expect(pooled.response.mmPerGmm).toBeCloseTo(K, 10);
        expect(pooled.angle.angleDeg).toBeCloseTo(7, 6);
      }),
    );
  });

  it('names what it lacks', () => {
    const sweeps = LOADS.map((w) => sweep(w, real));
    expect(failureOf(pooledResponse(sweeps.slice(0, 1))).code).toBe('sweeps-too-few');
    expect(failureOf(pooledResponse([sweeps[0]!, sweeps[0]!])).code).toBe('trial-too-small');
    const broken = { ...sweeps[1]!, addedGmm: { along0: Number.NaN, along90: 0 } };
    expect(failureOf(pooledResponse([sweeps[0]!, broken])).code).toBe('input-out-of-range');
    expect(
      failureOf(pooledResponse(sweeps, { momentRelativeSd: Number.NaN, placeSdDeg: 0 })).code,
    ).toBe('input-out-of-range');
    // A first sweep so vague that the change since then cannot be told at all.
    const vague = {
      ...sweeps[0]!,
      rise: {
        ...sweeps[0]!.rise,
        covarianceMm2: [
          [1e18, 0],
          [0, 1e18],
        ] as PlaneCovariance,
      },
    };
    const sure = {
      ...sweeps[1]!,
      rise: {
        ...sweeps[1]!.rise,
        covarianceMm2: [
          [0, 0],
          [0, 0],
        ] as PlaneCovariance,
      },
    };
    expect(failureOf(pooledResponse([vague, sure])).code).toBe('trial-too-small');
  });
});

describe('symmetricInverse', () => {
  it('inverts, and refuses what is singular', () => {
    const inverse = symmetricInverse([
      [4, 2],
      [2, 3],
    ])!;
    expect(inverse[0]![0]).toBeCloseTo(3 / 8, 12);
    expect(inverse[0]![1]).toBeCloseTo(-2 / 8, 12);
    expect(
      symmetricInverse([
        [1, 1],
        [1, 1],
      ]),
    ).toBeNull();
  });
});
