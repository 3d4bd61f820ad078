import type { CameraPose } from '../../../src/measure/geometry/camera.ts';
import { focalFromFov } from '../../../src/measure/geometry/poseBelief.ts';
import { RAD_PER_DEG } from '../../../src/quantities/angle.ts';

/** A tablet's camera before a wheel, as the tests of the geometry place it. */
export const RADIUS_MM = 305;
export const FOV_DEG = 64;

export function poseOf(
  free: Omit<CameraPose, 'widthPx' | 'heightPx' | 'focalPx' | 'radial'>,
  radial = 0,
): CameraPose {
  return { widthPx: 1280, heightPx: 720, focalPx: focalFromFov(FOV_DEG, 1280), radial, ...free };
}

/** Point of the tread in the room, mm. */
export function onTread(bearingDeg: number): [number, number] {
  const bearing = bearingDeg * RAD_PER_DEG;
  return [RADIUS_MM * Math.cos(bearing), RADIUS_MM * Math.sin(bearing)];
}
