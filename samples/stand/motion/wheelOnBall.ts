import type { Vec3 } from '../../drawnWheel/drawnCamera.ts';
import type { StandScene } from '../scene/standScene.ts';
import { stripMomentGmm } from '../scene/weightStrip.ts';
import { GRAVITY_MM_S2, type RollingBody } from './rollingBody.ts';

/** What the motion needs beside the body: rocking rate and inertia about the contact. */
export interface WheelOnBall {
  readonly body: RollingBody;
  /** ω₀ = √(g h / (k² + (R − h)²)), rad/s. */
  readonly rockingRadPerS: number;
  /** I about the rolling contact, M·(k² + (R − h)²), kg·mm². */
  readonly contactKgMm2: number;
  /** M·g·h: torque per radian of lean that brings the wheel back, kg·mm²/s². */
  readonly restoring: number;
}

export function wheelOnBall(scene: StandScene): WheelOnBall {
  const { wheel, stand } = scene;
  const ballRadiusMm = stand.ballDiameterMm / 2;
  const { massKg, centreMm } = massCentre(scene);
  const h = -centreMm[2];
  const gyration2 = wheel.transverseGyrationMm ** 2;
  const about = gyration2 + (ballRadiusMm - h) ** 2;
  const down = azimuthDirection(stand.downhillAzimuthDeg);
  const slope = stand.slopeMrad / 1000;
  return {
    body: {
      massKg,
      ballRadiusMm,
      centreMm,
      acrossKgMm2: massKg * gyration2,
      spinKgMm2: massKg * gyration2 * wheel.spinOverTransverseInertia,
      plateNormal: [down[0] * Math.sin(slope), down[1] * Math.sin(slope), Math.cos(slope)],
    },
    rockingRadPerS: Math.sqrt((GRAVITY_MM_S2 * h) / about),
    contactKgMm2: massKg * about,
    restoring: massKg * GRAVITY_MM_S2 * h,
  };
}

/**
 * Mass and centre of mass with the weights stuck on, from the ball's centre in the wheel frame. A
 * weight sits in the plane of the centre of mass, so it changes the mass and not the depth h.
 */
function massCentre(scene: StandScene): { massKg: number; centreMm: Vec3 } {
  const { wheel, stand } = scene;
  let massKg = wheel.massKg;
  // Moments in kg·mm: the unbalance is one of a vanishing mass far out, as is usual.
  const heavy = azimuthDirection(wheel.unbalance.heavySpotDeg);
  let x = (wheel.unbalance.amountGmm / 1000) * heavy[0];
  let y = (wheel.unbalance.amountGmm / 1000) * heavy[1];
  for (const weight of wheel.weights) {
    const at = azimuthDirection(weight.angleDeg);
    const moment = stripMomentGmm(weight) / 1000;
    massKg += weight.massG / 1000;
    x += moment * at[0];
    y += moment * at[1];
  }
  return { massKg, centreMm: [x / massKg, y / massKg, -stand.pendulumDepthMm] };
}

/** Unbalance of wheel and weights together: components along wheel angles 0 and 90, g·mm. */
export function wholeUnbalanceGmm(scene: StandScene): { along0: number; along90: number } {
  const { unbalance, weights } = scene.wheel;
  const heavyRad = (unbalance.heavySpotDeg * Math.PI) / 180;
  let along0 = unbalance.amountGmm * Math.cos(heavyRad);
  let along90 = unbalance.amountGmm * Math.sin(heavyRad);
  for (const weight of weights) {
    const angleRad = (weight.angleDeg * Math.PI) / 180;
    along0 += stripMomentGmm(weight) * Math.cos(angleRad);
    along90 += stripMomentGmm(weight) * Math.sin(angleRad);
  }
  return { along0, along90 };
}

/** Unit vector of an azimuth, clockwise seen from above, in the right-handed room frame. */
export function azimuthDirection(azimuthDeg: number): Vec3 {
  const a = (azimuthDeg * Math.PI) / 180;
  return [Math.cos(a), -Math.sin(a), 0];
}
