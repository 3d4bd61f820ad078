import { describe, expect, it } from 'vitest';

import {
  covarianceTimesComplex,
  differsFromZero,
  REGION_95,
  REGION_999,
  squaredDistance,
  vectorConfidence,
} from '../../src/measure/fit/confidence.ts';
import { multiplyAsComplex, type PlaneCovariance } from '../../src/quantities/vector.ts';

const ROUND: PlaneCovariance = [
  [0.04, 0],
  [0, 0.04],
];

describe('regions', () => {
  it('have the tabulated quantiles of chi-square with two freedoms', () => {
    // Any table: 5.991 at 95 %, 13.816 at 99.9 %.
    expect(REGION_95).toBeCloseTo(5.991, 3);
    expect(REGION_999).toBeCloseTo(13.816, 3);
  });

  it('measure distance along the covariance, not along the axes', () => {
    const slanted: PlaneCovariance = [
      [1, 0.9],
      [0.9, 1],
    ];
    // Along (1, 1) the variance is 1.9, along (1, −1) it is 0.1.
    expect(squaredDistance({ along0: 1, along90: 1 }, slanted)).toBeCloseTo(2 / 1.9, 12);
    expect(squaredDistance({ along0: 1, along90: -1 }, slanted)).toBeCloseTo(2 / 0.1, 12);
    expect(differsFromZero({ along0: 1, along90: -1 }, slanted)).toBe(true);
    expect(differsFromZero({ along0: 1, along90: 1 }, slanted)).toBe(false);
    expect(differsFromZero({ along0: 0.8, along90: -0.8 }, slanted, REGION_999)).toBe(false);
  });

  it('refuse a covariance that is none', () => {
    expect(() =>
      squaredDistance({ along0: 1, along90: 0 }, [
        [1, 2],
        [2, 1],
      ]),
    ).toThrow(RangeError);
    expect(() =>
      squaredDistance({ along0: 1, along90: 0 }, [
        [NaN, 0],
        [0, 1],
      ]),
    ).toThrow(RangeError);
  });
});

describe('vectorConfidence', () => {
  it('gives ± 1.96 along and its angle across', () => {
    const c = vectorConfidence({ along0: 0, along90: 10 }, ROUND);
    expect(c.amount[0]).toBeCloseTo(10 - 0.392, 3);
    expect(c.amount[1]).toBeCloseTo(10 + 0.392, 3);
    expect(c.angleDeg?.[0]).toBeCloseTo(90 - 2.2449, 3);
    expect(c.angleDeg?.[1]).toBeCloseTo(90 + 2.2449, 3);
  });

  it('runs clockwise across the valve', () => {
    const c = vectorConfidence({ along0: 10, along90: 0 }, ROUND);
    expect(c.angleDeg?.[0]).toBeCloseTo(357.755, 2);
    expect(c.angleDeg?.[1]).toBeCloseTo(2.245, 2);
  });

  it('knows no angle where zero is credible', () => {
    const c = vectorConfidence({ along0: 0.3, along90: 0.1 }, ROUND);
    expect(c.angleDeg).toBeNull();
    expect(c.amount[0]).toBe(0);
    expect(c.amount[1]).toBeCloseTo(Math.hypot(0.3, 0.1) + 0.2 * Math.sqrt(REGION_95), 4);
  });

  it('turns with its vector', () => {
    const k = { along0: Math.cos(1.1), along90: Math.sin(1.1) };
    const covariance: PlaneCovariance = [
      [0.09, 0.02],
      [0.02, 0.04],
    ];
    const v = { along0: 5, along90: -3 };
    const before = vectorConfidence(v, covariance);
    const after = vectorConfidence(multiplyAsComplex(v, k), covarianceTimesComplex(covariance, k));
    expect(after.amount[0]).toBeCloseTo(before.amount[0], 10);
    const turned = ((before.angleDeg?.[0] ?? NaN) + (1.1 * 180) / Math.PI) % 360;
    expect(after.angleDeg?.[0]).toBeCloseTo(turned, 8);
  });
});
