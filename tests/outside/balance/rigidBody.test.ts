import {
  Body,
  Material,
  ContactMaterial,
  Plane,
  Sphere,
  Vec3,
  World,
  type Quaternion,
} from 'cannon-es';
import { describe, expect, it } from 'vitest';

import { ballBehaviour } from '../../../src/balance/ballBehaviour.ts';
import { plateSlopeFromLean } from '../../../src/balance/levelling.ts';
import { unbalanceFromRise } from '../../../src/balance/unbalance.ts';
import { modelResponse } from '../../../src/balance/response.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../../../src/quantities/units.ts';
import { valueOf } from './helpers.ts';

/**
 * Outside source: cannon-es, a general rigid-body engine that knows nothing of balancing. A wheel of
 * the shed stands on its ball: one body with the ball's sphere as its foot, its centre of mass h
 * below the sphere's centre (and U/M beside the axis), rolling without slip on a plane.
 */
const R_MM = 31.75;
const H_MM = 8;
const wheel = {
  massKg: 16.5,
  boreDiameterMm: 60.1,
  centreDepthMm: H_MM + Math.sqrt(R_MM ** 2 - 30.05 ** 2),
  edgeRadiusMm: 305,
  weightRadiusMm: 185,
  transverseGyrationMm: 170,
  cameraRangeMm: 60,
};
const behaviour = valueOf(ballBehaviour(wheel, 2 * R_MM));
const NONE = [
  [0, 0],
  [0, 0],
] as const;
const STEP_S = 1 / 2000;

/** The engine's world, metres: z is normal to a plate that slopes down toward +x by `slopeRad`. */
function standOnPlate(slopeRad: number, offsetMm: number, damping: number) {
  const g = STANDARD_GRAVITY_M_PER_S2;
  // Tilting gravity instead of the plate is the same stand seen along the plate.
  const world = new World({
    gravity: new Vec3(g * Math.sin(slopeRad), 0, -g * Math.cos(slopeRad)),
  });
  const steel = new Material('steel');
  const contact = new ContactMaterial(steel, steel, { friction: 10, restitution: 0 });
  contact.contactEquationStiffness = 1e9;
  contact.contactEquationRelaxation = 4;
  contact.frictionEquationStiffness = 1e9;
  contact.frictionEquationRelaxation = 4;
  world.addContactMaterial(contact);
  const plate = new Body({ mass: 0, material: steel });
  plate.addShape(new Plane());
  world.addBody(plate);
  const body = new Body({ mass: wheel.massKg, material: steel });
  body.addShape(new Sphere(R_MM / 1000), new Vec3(-offsetMm / 1000, 0, H_MM / 1000));
  // About the centre of mass: transverse by the radius of gyration, spin 1.7 times that.
  const transverse = wheel.massKg * (wheel.transverseGyrationMm / 1000) ** 2;
  body.inertia.set(transverse, transverse, 1.7 * transverse);
  body.invInertia.set(1 / transverse, 1 / transverse, 1 / (1.7 * transverse));
  body.updateInertiaWorld(true);
  body.linearDamping = 0;
  body.angularDamping = damping;
  body.position.set(offsetMm / 1000, 0, (R_MM - H_MM) / 1000);
  world.addBody(body);
  return { world, body };
}

/** Lean of the wheel's axis toward +x, radians. */
function leanOf(quaternion: Quaternion): number {
  const axis = quaternion.vmult(new Vec3(0, 0, 1));
  return Math.atan2(axis.x, axis.z);
}

function settle(slopeRad: number, offsetMm: number): number {
  const { world, body } = standOnPlate(slopeRad, offsetMm, 0.9);
  for (let i = 0; i < 40 / STEP_S; i += 1) world.step(STEP_S);
  return leanOf(body.quaternion);
}

const withinOnePercent = (found: number, wanted: number) =>
  Math.abs(found - wanted) <= Math.max(0.01 * Math.abs(wanted), (0.05 * Math.PI) / 180);

describe('an independent rigid-body engine', () => {
  it.each([20 * 185, 100 * 185])(
    'leans to the response that %i g·mm is said to make',
    (unbalanceGmm) => {
      const lean = settle(0, unbalanceGmm / (wheel.massKg * 1000));
      const { mmPerGmm } = valueOf(
        modelResponse({ massKg: wheel.massKg, edgeRadiusMm: 305, pendulumDepthMm: H_MM }),
      );
      // Heavy toward +x: the axis leans to +x by tan θ = U/(M h); the rise is r_e·tan θ.
      const predicted = Math.atan((mmPerGmm * unbalanceGmm) / 305);
      expect(withinOnePercent(lean, predicted)).toBe(true);
      expect(predicted).toBeGreaterThan((1 * Math.PI) / 180);
    },
    60000,
  );

  it('leans downhill by the amplified slope', () => {
    const slopeRad = 0.012;
    const lean = settle(slopeRad, 0);
    const predicted = Math.asin(behaviour.slopeAmplification * Math.sin(slopeRad));
    // The engine's lean is against the plate's normal, which itself leans downhill by the slope.
    expect(withinOnePercent(lean + slopeRad, predicted)).toBe(true);
  }, 60000);

  it('common practice: turning the wheel on a sloping plate does not turn the slope’s part', () => {
    const slopeRad = 0.006;
    const unbalanceGmm = 40 * 185;
    const offsetMm = unbalanceGmm / (wheel.massKg * 1000);
    const [asIs, halfTurned] = [settle(slopeRad, offsetMm), settle(slopeRad, -offsetMm)];
    const stand = (asIs + halfTurned) / 2 + slopeRad;
    const ofWheel = (asIs - halfTurned) / 2;
    const { slopeMrad } = valueOf(
      plateSlopeFromLean({
        leanMrad: { along0: stand * 1000, along90: 0 },
        slopeAmplification: behaviour.slopeAmplification,
      }),
    );
    expect(withinOnePercent(slopeMrad.along0 / 1000, slopeRad)).toBe(true);
    // The slope is found to 1 %, not only to the 0.05° that would let a third of it pass.
    expect(Math.abs(slopeMrad.along0 / 1000 / slopeRad - 1)).toBeLessThan(0.01);
    const found = valueOf(
      unbalanceFromRise({
        // Heavy toward +x: the edge stands high on the other side.
        rise: { riseMm: { along0: -305 * Math.tan(ofWheel), along90: 0 }, covarianceMm2: NONE },
        response: valueOf(
          modelResponse({ massKg: wheel.massKg, edgeRadiusMm: 305, pendulumDepthMm: H_MM }),
        ),
        runOutSdMm: 0,
      }),
    );
    expect(found.heavySpotDeg).toBeCloseTo(0, 6);
    expect(Math.abs(found.amountGmm / unbalanceGmm - 1)).toBeLessThan(0.01);
  }, 60000);

  it('rocks at the predicted period within 2 %', () => {
    const { world, body } = standOnPlate(0, 0, 0);
    body.angularVelocity.set(0, 0.01, 0);
    body.velocity.set((0.01 * (R_MM - H_MM)) / 1000, 0, 0);
    const crossings: number[] = [];
    let before = leanOf(body.quaternion);
    for (let i = 1; i < 25 / STEP_S && crossings.length < 5; i += 1) {
      world.step(STEP_S);
      const now = leanOf(body.quaternion);
      if (i > 10 && before < 0 && now >= 0) crossings.push((i - now / (now - before)) * STEP_S);
      before = now;
    }
    expect(crossings.length).toBeGreaterThanOrEqual(3);
    const period = (crossings.at(-1)! - crossings[0]!) / (crossings.length - 1);
    expect(Math.abs(period / behaviour.rockingPeriodS - 1)).toBeLessThan(0.02);
  }, 60000);
});
