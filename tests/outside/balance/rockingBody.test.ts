import { describe, expect, it } from 'vitest';

import { ballBehaviour } from '../../../src/balance/ballBehaviour.ts';
import { pendulumDepthMm } from '../../../src/balance/ballSeat.ts';
import { modelResponse } from '../../../src/balance/response.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../../../src/quantities/units.ts';
import { valueOf } from './helpers.ts';

/**
 * A solid hemisphere is a wheel whose ball has its radius and whose centre of mass hangs 3R/8 below
 * the sphere's centre. The bore is taken as small as will do, so that the seat is the ball's top.
 */
const R_MM = 100;
const BORE_MM = 1e-3;
const H_MM = (3 * R_MM) / 8;
const hemisphere = {
  massKg: 2,
  boreDiameterMm: BORE_MM,
  centreDepthMm: H_MM + R_MM,
  edgeRadiusMm: R_MM,
  weightRadiusMm: R_MM,
  // About the centre of mass, across the axis: I = (83/320)·m·R².
  transverseGyrationMm: Math.sqrt(83 / 320) * R_MM,
  cameraRangeMm: 50,
};
const behaviour = valueOf(ballBehaviour(hemisphere, 2 * R_MM));

describe('rocking body (statics textbooks)', () => {
  it('rim-loaded hemisphere: m₂/m₁ = 0.09 leans by tan α = 0.24, 13°30′ (read)', () => {
    const massKg = 2;
    const unbalanceGmm = 0.09 * massKg * 1000 * R_MM;
    // The model's rise is r_e·tan θ in its linear range; r_e = 1 mm gives tan θ itself.
    const { mmPerGmm } = valueOf(modelResponse({ massKg, edgeRadiusMm: 1, pendulumDepthMm: H_MM }));
    const tan = mmPerGmm * unbalanceGmm;
    expect(tan).toBeCloseTo(0.24, 12);
    expect((Math.atan(tan) * 180) / Math.PI).toBeCloseTo(13.4957, 4);
  });

  it('hemisphere on an incline: sin ε = 3/16 leans 30°, limit sin ε = 3/8 = 22.024° (statement read)', () => {
    expect(behaviour.slopeAmplification).toBeCloseTo(8 / 3, 9);
    const lean = Math.asin(behaviour.slopeAmplification * (3 / 16));
    // The bore of a micrometre lifts the seat by 1e-9 mm.
    expect((lean * 180) / Math.PI).toBeCloseTo(30, 7);
    const limitDeg = ((behaviour.rollOffSlopeMrad ?? 0) / 1000) * (180 / Math.PI);
    expect(limitDeg).toBeCloseTo(22.024, 3);
  });

  it('period T = 2π·√(26R/(15g)): 0.83519 s at R 0.1 m, g 9.81 (recomputed)', () => {
    // The module uses standard gravity; the period goes with 1/√g.
    const at981 = behaviour.rockingPeriodS * Math.sqrt(STANDARD_GRAVITY_M_PER_S2 / 9.81);
    expect(at981).toBeCloseTo(0.83519, 5);
  });

  it('stable below the centre, neutral at it, unstable above', () => {
    const seat = { ballDiameterMm: 2 * R_MM, boreDiameterMm: BORE_MM };
    expect(valueOf(pendulumDepthMm(seat, R_MM + 1))).toBeGreaterThan(0);
    expect(valueOf(pendulumDepthMm(seat, R_MM))).toBeCloseTo(0, 6);
    expect(valueOf(pendulumDepthMm(seat, R_MM - 1))).toBeLessThan(0);
    const above = ballBehaviour({ ...hemisphere, centreDepthMm: R_MM - 1 }, 2 * R_MM);
    expect(above).toMatchObject({ ok: false, failure: { code: 'wheel-tips-over' } });
  });
});
