import { describe, expect, it } from 'vitest';
import { poolRepeats } from '../../../src/balance/repeats.ts';
import {
  subtractVectors,
  vectorAmount,
  type PlaneCovariance,
} from '../../../src/quantities/vector.ts';
import { failureOf, seededNormal, valueOf } from './outcomeHelpers.ts';

describe('repeats', () => {
  const none: PlaneCovariance = [
    [0, 0],
    [0, 0],
  ];
  const at = (along0: number, along90: number, c: PlaneCovariance = none) => ({
    unbalanceGmm: { along0, along90 },
    covarianceGmm2: c,
  });

  it('takes the mean and says what the seat adds', () => {
    const c: PlaneCovariance = [
      [400, 0],
      [0, 400],
    ];
    const pooled = valueOf(poolRepeats([at(1000, 0, c), at(1100, 0, c), at(1050, 80, c)]));
    expect(pooled.mean.unbalanceGmm.along0).toBeCloseTo(1050, 9);
    expect(pooled.outliers).toEqual([]);
    expect(pooled.seatErrorGmm ** 2 + 400).toBeCloseTo(pooled.scatterGmm ** 2, 6);
  });

  it('keeps to the stated errors where the repeats agree better', () => {
    const c: PlaneCovariance = [
      [400, 10],
      [10, 900],
    ];
    const pooled = valueOf(poolRepeats([at(1000, 0, c), at(1000, 0, c)]));
    expect(pooled.seatErrorGmm).toBe(0);
    expect(pooled.mean.covarianceGmm2).toEqual([
      [200, 5],
      [5, 450],
    ]);
  });

  it.each([2, 4, 8])('holds the truth 95 times in 100 with %i sweeps', (n) => {
    const normal = seededNormal(41 + n);
    const runs = 3000;
    let held = 0;
    for (let i = 0; i < runs; i += 1) {
      const sweeps = Array.from({ length: n }, () => at(1000 + 60 * normal(), 60 * normal()));
      const { mean } = valueOf(poolRepeats(sweeps));
      const off = subtractVectors(mean.unbalanceGmm, { along0: 1000, along90: 0 });
      const variance = mean.covarianceGmm2[0][0];
      if (vectorAmount(off) ** 2 / variance <= 5.991465) held += 1;
    }
    // Sampling error 0.4 %; throwing out a sweep wrongly now and then costs less than 1 %.
    expect(Math.abs(held / runs - 0.95)).toBeLessThan(0.02);
  });

  it('finds one sweep that stands out, seldom one in sound series', () => {
    const normal = seededNormal(53);
    const series = (n: number) =>
      Array.from({ length: n }, () => at(1000 + 30 * normal(), 30 * normal()));
    let wrong = 0;
    for (let i = 0; i < 1000; i += 1) {
      if (valueOf(poolRepeats(series(6))).outliers.length > 0) wrong += 1;
    }
    // 1 % by design; 1000 series scatter by 0.3 %.
    expect(wrong / 1000).toBeLessThan(0.025);
    const sweeps = series(6);
    sweeps[3] = at(2500, 900);
    const pooled = valueOf(poolRepeats(sweeps));
    expect(pooled.outliers).toEqual([3]);
    expect(Math.abs(pooled.mean.amountGmm - 1000)).toBeLessThan(60);
    const two = [...series(8), at(2500, 900), at(-4000, 900)];
    expect([...valueOf(poolRepeats(two)).outliers].sort()).toEqual([8, 9]);
    // Equal sweeps to the last digit have no scatter to measure by, and none stands out.
    expect(valueOf(poolRepeats([at(1, 1), at(1, 1), at(1, 1), at(1, 1)])).outliers).toEqual([]);
  });

  it('names what it lacks', () => {
    expect(failureOf(poolRepeats([at(1, 1)])).code).toBe('sweeps-too-few');
    expect(failureOf(poolRepeats([at(1, 1), at(Number.NaN, 1)])).code).toBe('input-out-of-range');
  });
});
