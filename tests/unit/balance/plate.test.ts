import { describe, expect, it } from 'vitest';
import {
  deadBandFromFriction,
  deadBandFromRepeats,
  deadBandFromWeights,
} from '../../../src/balance/deadBand.ts';
import { contactModulusMpa, hertzContact, loadAtPressureN } from '../../../src/balance/hertz.ts';
import { checkPlate } from '../../../src/balance/plateCheck.ts';
import { PLATE_MATERIALS, type PlateMaterial } from '../../../src/balance/plateMaterials.ts';
import { failureOf, seededNormal, valueOf } from './outcomeHelpers.ts';

describe('plate', () => {
  it('names what cannot be right', () => {
    const steel = PLATE_MATERIALS['hard-steel'];
    const odd: PlateMaterial = { ...steel, poissonRatio: 0.7 };
    const base = { forceN: 1, sphereRadiusMm: 1, sphere: steel, flat: steel };
    expect(failureOf(hertzContact({ ...base, forceN: 0 })).code).toBe('input-out-of-range');
    expect(failureOf(hertzContact({ ...base, flat: odd })).code).toBe('input-out-of-range');
    const load = { pressureMpa: 1, sphereRadiusMm: 1, sphere: steel, flat: steel };
    expect(failureOf(loadAtPressureN({ ...load, pressureMpa: Number.NaN })).code).toBe(
      'input-out-of-range',
    );
    expect(failureOf(loadAtPressureN({ ...load, flat: odd })).code).toBe('input-out-of-range');
    const plate = { massKg: 18, ballDiameterMm: 60, plate: steel as PlateMaterial };
    expect(failureOf(checkPlate({ ...plate, massKg: 0 })).code).toBe('input-out-of-range');
    expect(failureOf(checkPlate({ ...plate, plate: odd })).code).toBe('input-out-of-range');
    expect(failureOf(checkPlate({ ...plate, plate: { ...steel, strengthMpa: 1e9 } })).code).toBe(
      'input-out-of-range',
    );
  });

  it('takes two rigid bodies as very stiff, not as endless', () => {
    const rigid = { elasticModulusMpa: Infinity, poissonRatio: 0.3 };
    expect(Number.isFinite(valueOf(contactModulusMpa(rigid, rigid)))).toBe(true);
  });

  it('fears for glass and stone, and bears a plate that has no rim tension', () => {
    const on = (plate: PlateMaterial, massKg = 18) =>
      valueOf(checkPlate({ massKg, ballDiameterMm: 63.5, plate })).finding;
    expect(on(PLATE_MATERIALS.glass)).toBe('may-crack');
    expect(on(PLATE_MATERIALS.granite)).toBe('may-crack');
    expect(on({ ...PLATE_MATERIALS.glass, poissonRatio: 0.5 })).toBe('sound');
  });
});

describe('dead band', () => {
  const u = (along0: number, variance: number) => ({
    unbalanceGmm: { along0, along90: 0 },
    covarianceGmm2: [
      [variance, 0],
      [0, variance],
    ] as const,
  });

  it('from repeats: what the stated errors leave of the difference', () => {
    const band = valueOf(deadBandFromRepeats(u(0, 100), u(50, 100), 100));
    expect(band.deadBandGmm).toBeCloseTo(Math.sqrt(2500 - 400), 9);
    expect(band.deadBandG).toBeCloseTo(band.deadBandGmm / 100, 12);
    expect(valueOf(deadBandFromRepeats(u(0, 1e4), u(50, 1e4), 100)).deadBandGmm).toBe(0);
  });

  it('from repeats is right on average for rests spread over a disc', () => {
    const normal = seededNormal(11);
    const spot = () => {
      // Even over a disc of radius 100: direction from two normals, radius from their χ².
      const [a, b] = [normal(), normal()];
      const length = Math.hypot(a, b);
      const radius = 100 * Math.sqrt(1 - Math.exp((-length * length) / 2));
      return { along0: (radius * a) / length, along90: (radius * b) / length };
    };
    const zero = [
      [0, 0],
      [0, 0],
    ] as const;
    let squared = 0;
    const runs = 4000;
    for (let i = 0; i < runs; i += 1) {
      const pair = [spot(), spot()].map((unbalanceGmm) => ({ unbalanceGmm, covarianceGmm2: zero }));
      squared += valueOf(deadBandFromRepeats(pair[0]!, pair[1]!, 1)).deadBandGmm ** 2 / runs;
    }
    expect(Math.abs(Math.sqrt(squared) / 100 - 1)).toBeLessThan(0.03);
  });

  it('from weights: between the last that did not move it and the first that did', () => {
    const input = { largestStillG: 1, smallestMovedG: 2, weightRadiusMm: 200 };
    expect(valueOf(deadBandFromWeights(input))).toEqual({
      deadBandGmm: 300,
      deadBandG: 1.5,
      halfWidthG: 0.5,
    });
    expect(failureOf(deadBandFromWeights({ ...input, smallestMovedG: 0.5 })).code).toBe(
      'amounts-contradict',
    );
  });

  it('names what cannot be right', () => {
    expect(
      failureOf(deadBandFromWeights({ largestStillG: -1, smallestMovedG: 1, weightRadiusMm: 1 }))
        .code,
    ).toBe('input-out-of-range');
    expect(failureOf(deadBandFromRepeats(u(0, 1), u(0, 1), 0)).code).toBe('input-out-of-range');
    expect(
      failureOf(
        deadBandFromFriction({ massKg: 1, ballDiameterMm: 1, rollingShare: 2, weightRadiusMm: 1 }),
      ).code,
    ).toBe('input-out-of-range');
  });
});
