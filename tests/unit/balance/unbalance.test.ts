import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { correctionAtLightSpot } from '../../../src/balance/correction.ts';
import { polarInterval95 } from '../../../src/balance/polarInterval.ts';
import { unbalanceFromRise } from '../../../src/balance/unbalance.ts';
import { shortWayDeg } from '../../../src/quantities/angle.ts';
import {
  vectorAmount,
  vectorFromPolar,
  type PlaneCovariance,
} from '../../../src/quantities/vector.ts';
import { evenNumber, failureOf, seededNormal, valueOf } from './outcomeHelpers.ts';

const C: PlaneCovariance = [
  [0.04, 0.01],
  [0.01, 0.02],
];
const anyAngle = evenNumber(0, 360);

describe('unbalanceFromRise', () => {
  it('points the heavy spot opposite the high spot', () => {
    const u = valueOf(
      unbalanceFromRise({
        rise: { riseMm: vectorFromPolar(8.7, 212), covarianceMm2: C },
        response: { mmPerGmm: 0.002, standardError: 0 },
        runOutSdMm: 0,
      }),
    );
    expect(u.amountGmm).toBeCloseTo(4350, 6);
    expect(u.heavySpotDeg).toBeCloseTo(32, 9);
    expect(u.lightSpotDeg).toBeCloseTo(212, 9);
    expect(u.covarianceGmm2[0][1]).toBeCloseTo(0.01 / 0.002 ** 2, 6);
  });

  it('adds the response’s error along U and the run-out’s in all directions', () => {
    const u = valueOf(
      unbalanceFromRise({
        rise: {
          riseMm: vectorFromPolar(8, 0),
          covarianceMm2: [
            [0, 0],
            [0, 0],
          ],
        },
        response: { mmPerGmm: 0.002, standardError: 0.0001 },
        runOutSdMm: 0.3,
      }),
    );
    expect(Math.sqrt(u.covarianceGmm2[0][0])).toBeCloseTo(Math.hypot(150, 200), 6);
    expect(Math.sqrt(u.covarianceGmm2[1][1])).toBeCloseTo(150, 6);
  });

  it('turns with the wheel', () => {
    fc.assert(
      fc.property(anyAngle, anyAngle, (atDeg, byDeg) => {
        const at = (angleDeg: number) =>
          valueOf(
            unbalanceFromRise({
              rise: { riseMm: vectorFromPolar(5, angleDeg), covarianceMm2: C },
              response: { mmPerGmm: 0.002, standardError: 1e-5 },
              runOutSdMm: 0.1,
            }),
          ).heavySpotDeg;
        expect(shortWayDeg(at(atDeg) + byDeg, at(atDeg + byDeg))).toBeCloseTo(0, 6);
      }),
    );
  });

  it('names what cannot be right', () => {
    const rise = { riseMm: vectorFromPolar(5, 10), covarianceMm2: C };
    const response = { mmPerGmm: 0.002, standardError: 0 };
    expect(
      failureOf(unbalanceFromRise({ rise, response: { ...response, mmPerGmm: 0 }, runOutSdMm: 0 }))
        .evidence['quantity'],
    ).toBe('mmPerGmm');
    expect(failureOf(unbalanceFromRise({ rise, response, runOutSdMm: -1 })).code).toBe(
      'input-out-of-range',
    );
    const wild: PlaneCovariance = [
      [Number.NaN, 0],
      [0, 1],
    ];
    expect(
      failureOf(
        unbalanceFromRise({ rise: { ...rise, covarianceMm2: wild }, response, runOutSdMm: 0 }),
      ).code,
    ).toBe('covariance-invalid');
    expect(
      failureOf(
        unbalanceFromRise({
          rise: { ...rise, riseMm: { along0: 1, along90: Infinity } },
          response,
          runOutSdMm: 0,
        }),
      ).evidence['quantity'],
    ).toBe('riseMm along 90°');
  });
});

describe('polarInterval95', () => {
  it('is a point without errors and knows no direction of nothing', () => {
    const none: PlaneCovariance = [
      [0, 0],
      [0, 0],
    ];
    const exact = polarInterval95({ along0: 0, along90: 5 }, none);
    expect(exact.amount).toEqual([5, 5]);
    expect(exact.angleDeg?.[0]).toBeCloseTo(90, 9);
    expect(polarInterval95({ along0: 0, along90: 0 }, none).angleDeg).toBeNull();
  });

  it('is asin(1.96 σ/|v|) either way for an even error', () => {
    const { angleDeg, amount } = polarInterval95(vectorFromPolar(10, 10), [
      [1, 0],
      [0, 1],
    ]);
    const half = (Math.asin(0.1959964) * 180) / Math.PI;
    expect(angleDeg?.[0]).toBeCloseTo(360 + 10 - half, 6);
    expect(angleDeg?.[1]).toBeCloseTo(10 + half, 6);
    expect(amount[0]).toBeCloseTo(10 - 1.959964, 6);
  });

  it('knows no direction inside the error, and lets the amount be nothing', () => {
    const { angleDeg, amount } = polarInterval95({ along0: 1, along90: 0 }, [
      [1, 0],
      [0, 1],
    ]);
    expect(angleDeg).toBeNull();
    expect(amount[0]).toBe(0);
    expect(
      polarInterval95({ along0: 0, along90: 0 }, [
        [1, 0],
        [0, 1],
      ]).amount[1],
    ).toBeCloseTo(1.96, 3);
  });

  it('bears a flat ellipse', () => {
    const { angleDeg } = polarInterval95({ along0: 10, along90: 0 }, [
      [0, 0],
      [0, 1],
    ]);
    expect(shortWayDeg(angleDeg?.[0] ?? 0, angleDeg?.[1] ?? 0)).toBeCloseTo(22.17, 1);
    const flat = polarInterval95({ along0: 10, along90: 10 }, [
      [1, 1],
      [1, 1],
    ]);
    expect(shortWayDeg(flat.angleDeg?.[0] ?? 90, flat.angleDeg?.[1] ?? 0)).toBeCloseTo(0, 2);
  });

  it.each([
    ['large', 8, 0.95],
    ['middling', 3.5, 0.95],
  ])('holds the truth 95 times in 100 for a %s vector', (_, amount, share) => {
    const normal = seededNormal(20210301);
    const truth = vectorFromPolar(amount, 75);
    // L = [[1, 0], [0.6, 0.8]]: C = [[1, 0.6], [0.6, 1]].
    const covariance: PlaneCovariance = [
      [1, 0.6],
      [0.6, 1],
    ];
    const runs = 4000;
    let amounts = 0;
    let angles = 0;
    for (let i = 0; i < runs; i += 1) {
      const n0 = normal();
      const n1 = normal();
      const seen = { along0: truth.along0 + n0, along90: truth.along90 + 0.6 * n0 + 0.8 * n1 };
      const ci = polarInterval95(seen, covariance);
      if (ci.amount[0] <= amount && amount <= ci.amount[1]) amounts += 1;
      if (!ci.angleDeg) angles += 1;
      else {
        const [from, to] = ci.angleDeg;
        if (shortWayDeg(from, 75) >= 0 && shortWayDeg(75, to) >= 0) angles += 1;
      }
    }
    // Sampling error of the share is 0.35 %; three of them, and one more for the amount's bend.
    expect(Math.abs(angles / runs - share)).toBeLessThan(0.011);
    expect(Math.abs(amounts / runs - share)).toBeLessThan(0.015);
  });

  it('still holds nothing 95 times in 100', () => {
    const normal = seededNormal(7);
    let held = 0;
    for (let i = 0; i < 4000; i += 1) {
      const ci = polarInterval95({ along0: normal(), along90: normal() }, [
        [1, 0],
        [0, 1],
      ]);
      if (ci.amount[0] === 0) held += 1;
    }
    expect(Math.abs(held / 4000 - 0.95)).toBeLessThan(0.011);
  });
});

describe('correctionAtLightSpot', () => {
  const stock = { weightStepG: 5, weightRadiusMm: 185 };

  it('sticks whole steps on the light spot and says what is left', () => {
    const c = valueOf(correctionAtLightSpot(vectorFromPolar(3700 + 370, 32), stock));
    expect(c.weights).toHaveLength(1);
    expect(c.weights[0]).toMatchObject({ massG: 20, radiusMm: 185 });
    expect(c.weights[0]?.angleDeg).toBeCloseTo(212, 9);
    expect(c.residualAmountGmm).toBeCloseTo(370, 6);
  });

  it('asks for nothing where half a step or less is missing', () => {
    const c = valueOf(correctionAtLightSpot(vectorFromPolar(2.5 * 185, 90), stock));
    expect(c.weights).toEqual([]);
    expect(c.residualAmountGmm).toBeCloseTo(462.5, 9);
  });

  it('never leaves more than half a step, and leaves what it promised', () => {
    fc.assert(
      fc.property(evenNumber(0, 2e4), anyAngle, (amount, angleDeg) => {
        const c = valueOf(correctionAtLightSpot(vectorFromPolar(amount, angleDeg), stock));
        expect(c.residualAmountGmm).toBeLessThanOrEqual(2.5 * 185 + 1e-6);
        expect(vectorAmount(c.residualGmm)).toBe(c.residualAmountGmm);
      }),
    );
  });

  it('names what cannot be right', () => {
    const u = vectorFromPolar(100, 0);
    expect(failureOf(correctionAtLightSpot(u, { ...stock, weightStepG: 0 })).code).toBe(
      'input-out-of-range',
    );
    expect(failureOf(correctionAtLightSpot({ along0: Number.NaN, along90: 0 }, stock)).code).toBe(
      'input-out-of-range',
    );
  });
});
