import { drawnCamera, dot, type DrawnCamera, type Vec3 } from '../../drawnWheel/drawnCamera.ts';
import type { StandScene } from '../scene/standScene.ts';

/**
 * A pinhole with mild distortion: a pictured point at share d of the half width from the middle
 * belongs to the line of sight of a pinhole at d·(1 − k·d²).
 */
export interface StandCamera {
  readonly pinhole: DrawnCamera;
  readonly distortion: number;
}

export function standCamera(scene: StandScene): StandCamera {
  return { pinhole: drawnCamera(scene.camera), distortion: scene.camera.distortion };
}

/** Where a point of the room is pictured, px. */
export function picturedAt(camera: StandCamera, point: Vec3): { xPx: number; yPx: number } {
  const { place, focalPx, eye, right, down, ahead } = camera.pinhole;
  const from: Vec3 = [point[0] - eye[0], point[1] - eye[1], point[2] - eye[2]];
  const depth = dot(from, ahead);
  const half = place.widthPx / 2;
  const ideal = [dot(from, right), dot(from, down)].map((v) => (v * focalPx) / depth / half);
  let scale = 1;
  // The fixed point converges by a factor of about 2·k a round.
  for (let round = 0; round < 8; round++) {
    const d2 = (ideal[0] ** 2 + ideal[1] ** 2) * scale * scale;
    scale = 1 / (1 - camera.distortion * d2);
  }
  return {
    xPx: half + half * ideal[0] * scale,
    yPx: place.heightPx / 2 + half * ideal[1] * scale,
  };
}

/** Pinhole slopes (right, down) of the line of sight through a pictured point. */
export function sightSlopes(camera: StandCamera, xPx: number, yPx: number): [number, number] {
  const { place, focalPx } = camera.pinhole;
  const half = place.widthPx / 2;
  const a = (xPx - half) / half;
  const b = (yPx - place.heightPx / 2) / half;
  const perUnit = ((1 - camera.distortion * (a * a + b * b)) * half) / focalPx;
  return [a * perUnit, b * perUnit];
}
