import {
  Body,
  ContactMaterial,
  Material,
  Plane,
  Sphere,
  Vec3,
  World,
  type Quaternion,
} from 'cannon-es';
import { describe, expect, it } from 'vitest';

import { HAND_OFF, standMotion } from '../../samples/stand/motion/standMotion.ts';
import { standScene } from '../../samples/stand/scene/readScene.ts';
import type { StandScene } from '../../samples/stand/scene/standScene.ts';

/**
 * Outside source: cannon-es, a general rigid-body engine with contacts and friction, against the
 * practice stand's own integration of the rolling constraint. Same masses, same ball, same plate.
 */
const STEP_S = 1 / 2000;
const MM = 1e-3;

/** The wheel as the scene describes it, worked out here: a body wrongly made would agree with itself. */
function bodyOf({ wheel, stand }: StandScene) {
  const radians = (deg: number) => (deg * Math.PI) / 180;
  // Clockwise seen from above in a right-handed frame.
  const toward = (deg: number) => [Math.cos(radians(deg)), -Math.sin(radians(deg))] as const;
  const [heavyX, heavyY] = toward(wheel.unbalance.heavySpotDeg);
  const [downX, downY] = toward(stand.downhillAzimuthDeg);
  const slope = stand.slopeMrad / 1000;
  const offMm = wheel.unbalance.amountGmm / (1000 * wheel.massKg);
  const acrossKgMm2 = wheel.massKg * wheel.transverseGyrationMm ** 2;
  return {
    massKg: wheel.massKg,
    ballRadiusMm: stand.ballDiameterMm / 2,
    centreMm: [offMm * heavyX, offMm * heavyY, -stand.pendulumDepthMm],
    acrossKgMm2,
    spinKgMm2: wheel.spinOverTransverseInertia * acrossKgMm2,
    plateNormal: [downX * Math.sin(slope), downY * Math.sin(slope), Math.cos(slope)] as const,
  };
}

function engineOf(scene: StandScene, damping: number) {
  const body = bodyOf(scene);
  const world = new World({ gravity: new Vec3(0, 0, -9.80665) });
  const steel = new Material('steel');
  const contact = new ContactMaterial(steel, steel, { friction: 10, restitution: 0 });
  contact.contactEquationStiffness = 1e9;
  contact.contactEquationRelaxation = 4;
  contact.frictionEquationStiffness = 1e9;
  contact.frictionEquationRelaxation = 4;
  world.addContactMaterial(contact);
  const plate = new Body({ mass: 0, material: steel });
  plate.addShape(new Plane());
  const normal = new Vec3(...body.plateNormal);
  plate.quaternion.setFromVectors(new Vec3(0, 0, 1), normal);
  world.addBody(plate);
  const wheel = new Body({ mass: body.massKg, material: steel });
  const [cx, cy, cz] = body.centreMm.map((v) => v * MM) as [number, number, number];
  wheel.addShape(new Sphere(body.ballRadiusMm * MM), new Vec3(-cx, -cy, -cz));
  const [across, spin] = [body.acrossKgMm2 * MM * MM, body.spinKgMm2 * MM * MM];
  wheel.inertia.set(across, across, spin);
  wheel.invInertia.set(1 / across, 1 / across, 1 / spin);
  wheel.updateInertiaWorld(true);
  wheel.linearDamping = 0;
  wheel.angularDamping = damping;
  const above = normal.scale(body.ballRadiusMm * MM);
  wheel.position.set(above.x + cx, above.y + cy, above.z + cz);
  world.addBody(wheel);
  return { world, wheel, radiusM: body.ballRadiusMm * MM };
}

/** Lean of an engine's body, mrad along azimuth 0 and 90, pointing at the high side. */
function leanOf(turn: Quaternion): readonly [number, number] {
  const axis = turn.vmult(new Vec3(0, 0, 1));
  const flat = Math.hypot(axis.x, axis.y);
  const perUnit = flat > 0 ? (1000 * Math.atan2(flat, axis.z)) / flat : 1000;
  return [-axis.x * perUnit, axis.y * perUnit];
}

const still = { dampingRatio: 0.001, startSwingMm: 0, handSwingMm: 0 };

describe('the practice stand against an independent rigid-body engine', () => {
  it.each([
    ['unbalance of 20 g', { amountGmm: 3700, heavySpotDeg: 70 }, 0],
    ['unbalance of 60 g', { amountGmm: 11100, heavySpotDeg: 200 }, 0],
    ['a sloping plate', { amountGmm: 0, heavySpotDeg: 0 }, 8],
    ['both', { amountGmm: 5000, heavySpotDeg: 310 }, 5],
  ])(
    'leans as it does within 1 %%: %s',
    (_what, unbalance, slopeMrad) => {
      const scene = standScene({
        wheel: { unbalance },
        stand: { ...still, slopeMrad, downhillAzimuthDeg: 130 },
      });
      const { world, wheel } = engineOf(scene, 0.9);
      for (let i = 0; i < 40 / STEP_S; i++) world.step(STEP_S);
      const [wanted0, wanted90] = leanOf(wheel.quaternion);
      const [lean0, lean90] = standMotion(scene, 0).pose().leanMrad;
      const whole = Math.hypot(wanted0, wanted90);
      expect(whole).toBeGreaterThan(10);
      expect(Math.hypot(lean0 - wanted0, lean90 - wanted90)).toBeLessThan(0.01 * whole);
    },
    120_000,
  );

  it.each([5, 8.2, 15])(
    'rocks with the same period within 2 %%, h %d mm',
    (pendulumDepthMm) => {
      const scene = standScene({
        wheel: { unbalance: { amountGmm: 0 } },
        stand: { ...still, pendulumDepthMm, slopeMrad: 0, startSwingMm: 3 },
      });
      const { world, wheel, radiusM } = engineOf(scene, 0);
      const kick = 0.01;
      wheel.angularVelocity.set(0, kick, 0);
      wheel.velocity.set(kick * (radiusM - pendulumDepthMm * MM), 0, 0);
      const engine = periodOf(STEP_S, () => {
        world.step(STEP_S);
        return leanOf(wheel.quaternion)[0];
      });
      const motion = standMotion(scene, 0);
      const own = periodOf(0.004, () => motion.advance(0.004, HAND_OFF).leanMrad[0]);
      expect(engine).toBeGreaterThan(2);
      expect(Math.abs(own / engine - 1)).toBeLessThan(0.02);
    },
    120_000,
  );
});

/** Time between rising zero crossings, mean of three. */
function periodOf(stepS: number, next: () => number): number {
  const crossings: number[] = [];
  let before = next();
  for (let i = 1; i < 40 / stepS && crossings.length < 4; i++) {
    const now = next();
    if (before < 0 && now >= 0) crossings.push((i - now / (now - before)) * stepS);
    before = now;
  }
  return (crossings[crossings.length - 1] - crossings[0]) / (crossings.length - 1);
}
