import { describe, expect, it } from 'vitest';

import { deadBandFromFriction } from '../../../src/balance/deadBand.ts';
import { contactModulusMpa, hertzContact, loadAtPressureN } from '../../../src/balance/hertz.ts';
import { checkPlate } from '../../../src/balance/plateCheck.ts';
import { PLATE_MATERIALS } from '../../../src/balance/plateMaterials.ts';
import { valueOf } from './helpers.ts';

const RIGID = { elasticModulusMpa: Infinity, poissonRatio: 0.3 };
const STEEL = { elasticModulusMpa: 200000, poissonRatio: 0.3 };

describe('Hertz contact, sphere on flat', () => {
  it('problem read: R 8 mm, E 1000 MPa, ν 0.3 on a rigid flat, 60π N: a 1.010 mm (1.0096 recomputed)', () => {
    const contact = valueOf(
      hertzContact({
        forceN: 60 * Math.PI,
        sphereRadiusMm: 8,
        sphere: { elasticModulusMpa: 1000, poissonRatio: 0.3 },
        flat: RIGID,
      }),
    );
    expect(contact.contactRadiusMm).toBeCloseTo(1.0096, 3);
  });

  it('recomputed: 50 mm steel ball at 500 N on steel', () => {
    const contact = valueOf(
      hertzContact({ forceN: 500, sphereRadiusMm: 25, sphere: STEEL, flat: STEEL }),
    );
    expect(contact.contactRadiusMm).toBeCloseTo(0.4402, 4);
    expect(contact.peakPressureMpa).toBeCloseTo(1231.9, 1);
    expect(contact.approachMm * 1000).toBeCloseTo(7.75, 2);
  });

  it('agrees with Roark’s form σ = 0.918·(F/(K_D²·C_E²))^⅓', () => {
    // Sphere on flat: K_D is the sphere's diameter, C_E = 1/E*. 0.918 carries three digits.
    const modulus = valueOf(contactModulusMpa(STEEL, STEEL));
    const roark = 0.918 * Math.cbrt(500 / ((50 / modulus) * (50 / modulus)));
    const { peakPressureMpa } = valueOf(
      hertzContact({ forceN: 500, sphereRadiusMm: 25, sphere: STEEL, flat: STEEL }),
    );
    expect(Math.abs(roark / peakPressureMpa - 1)).toBeLessThan(1e-3);
  });

  // Strengths as in handbooks (6061-T6 and A36 read, bearing steel from memory); first yield at
  // p₀ = 1.60·σ_y from Johnson, Contact Mechanics (from memory).
  it.each([
    ['hard-steel', 674, 20900, 'sound'],
    ['mild-steel', 667, 42, 'dents'],
    ['hard-aluminium', 429, 213, 'marginal'],
  ] as const)('20 kg on an 80 mm ball: %s', (name, pressureMpa, yieldLoadN, finding) => {
    const check = valueOf(
      checkPlate({ massKg: 20, ballDiameterMm: 80, plate: PLATE_MATERIALS[name] }),
    );
    expect(Math.abs(check.contact.peakPressureMpa - pressureMpa)).toBeLessThan(0.6);
    expect(Math.abs(check.limitLoadN / yieldLoadN - 1)).toBeLessThan(0.01);
    expect(check.finding).toBe(finding);
  });

  it('common practice: a soft aluminium plate dents where a hard steel one does not', () => {
    const on = (name: keyof typeof PLATE_MATERIALS) =>
      valueOf(checkPlate({ massKg: 18, ballDiameterMm: 63.5, plate: PLATE_MATERIALS[name] }))
        .finding;
    expect(on('soft-aluminium')).toBe('dents');
    expect(on('hard-steel')).toBe('sound');
  });

  it('ISO 76: a ball of bearing steel under any wheel stays far under 4200 MPa', () => {
    const steel = PLATE_MATERIALS['hard-steel'];
    const load = valueOf(
      loadAtPressureN({ pressureMpa: 4200, sphereRadiusMm: 30, sphere: steel, flat: steel }),
    );
    expect(load).toBeGreaterThan(100 * 80 * 9.81 * 0.2);
    const contact = valueOf(
      hertzContact({ forceN: load, sphereRadiusMm: 30, sphere: steel, flat: steel }),
    );
    expect(contact.peakPressureMpa).toBeCloseTo(4200, 6);
  });
});

describe('dead band from rolling friction', () => {
  it('18 kg on a 60 mm ball, 1e-5 to 1e-4 of the load (precision-engineering journals, read): 5 to 54 g·mm', () => {
    const band = (rollingShare: number) =>
      valueOf(
        deadBandFromFriction({ massKg: 18, ballDiameterMm: 60, rollingShare, weightRadiusMm: 185 }),
      ).deadBandGmm;
    expect(band(1e-5)).toBeCloseTo(5.4, 9);
    expect(band(1e-4)).toBeCloseTo(54, 9);
    // Handbook rolling arm of 0.1 mm for rough steel: 1800 g·mm.
    expect(band(0.1 / 30)).toBeCloseTo(1800, 9);
  });
});
