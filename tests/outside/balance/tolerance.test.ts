import { describe, expect, it } from 'vitest';

import {
  CAR_WHEEL_GRADE_MM_PER_S,
  gradeOfUnbalanceMmPerS,
  permissibleByPlane,
  permissibleUnbalanceGmm,
  unbalanceForceN,
  wheelSpeedPerMin,
} from '../../../src/balance/tolerance.ts';
import { GMM_PER_OUNCE_INCH, GRAMS_PER_OUNCE } from '../../../src/quantities/units.ts';
import { valueOf } from './helpers.ts';

describe('ISO 21940-11', () => {
  it('50 kg, 1500 /min, G 6.3: 2005.35 g·mm (recomputed)', () => {
    expect(
      valueOf(permissibleUnbalanceGmm({ gradeMmPerS: 6.3, massKg: 50, speedPerMin: 1500 })),
    ).toBeCloseTo(2005.35, 2);
  });

  it('the standard’s own example (inputs from memory): 3600 kg, 3000 /min, G 2.5, two planes', () => {
    const permissibleGmm = valueOf(
      permissibleUnbalanceGmm({ gradeMmPerS: 2.5, massKg: 3600, speedPerMin: 3000 }),
    );
    expect(Math.round(permissibleGmm)).toBe(28648);
    const planes = valueOf(
      permissibleByPlane({ permissibleGmm, centreToPlaneAMm: 1500, centreToPlaneBMm: 900 }),
    );
    expect(Math.round(planes.planeAGmm)).toBe(10743);
    expect(Math.round(planes.planeBGmm)).toBe(17905);
  });

  it('car wheel, G 40 (from memory): 18 kg, 205/55R16 of 631.9 mm, 130 km/h', () => {
    const speedPerMin = valueOf(wheelSpeedPerMin(130, 631.9));
    expect(speedPerMin).toBeCloseTo(1091.4, 1);
    const permissible = valueOf(
      permissibleUnbalanceGmm({ gradeMmPerS: CAR_WHEEL_GRADE_MM_PER_S, massKg: 18, speedPerMin }),
    );
    expect(Math.abs(permissible - 6300)).toBeLessThan(1);
    const grade = valueOf(gradeOfUnbalanceMmPerS({ amountGmm: 10 * 200, massKg: 18, speedPerMin }));
    expect(grade).toBeCloseTo(12.7, 1);
  });

  it('F = m·r·ω²: 10 g at 200 mm at 1000 /min, plain recomputation', () => {
    expect(valueOf(unbalanceForceN(2000, 1000))).toBeCloseTo(
      0.01 * 0.2 * ((1000 * 2 * Math.PI) / 60) ** 2,
      12,
    );
  });
});

describe('units (exact by definition)', () => {
  it('quarter ounce and ounce-inch', () => {
    expect(GRAMS_PER_OUNCE / 4).toBeCloseTo(7.0874, 4);
    expect(GMM_PER_OUNCE_INCH).toBeCloseTo(720.078, 3);
  });
});
