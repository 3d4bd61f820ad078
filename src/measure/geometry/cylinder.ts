import { DEG_PER_RAD, RAD_PER_DEG } from '../../quantities/angle.ts';
import { rayThroughPixel, type Camera } from './camera.ts';

/** A place on the nominal tread: the upright cylinder of the edge's radius round the wheel's axis. */
export interface CylinderPoint {
  /** Direction from the axis, degrees clockwise from the camera's own direction, in [−180, 180). */
  readonly bearingDeg: number;
  /** Height above the laser plane, mm. */
  readonly zMm: number;
}

/** Where the ray through a pixel first meets the cylinder; null where it passes by. */
export function cylinderPointAtPixel(
  camera: Camera,
  radiusMm: number,
  xPx: number,
  yPx: number,
): CylinderPoint | null {
  const [dx, dy, dz] = rayThroughPixel(camera, xPx, yPx);
  const ox = camera.pose.distanceMm;
  // |(ox + k·dx, k·dy)| = radius
  const a = dx * dx + dy * dy;
  const halfB = ox * dx;
  const c = ox * ox - radiusMm * radiusMm;
  const discriminant = halfB * halfB - a * c;
  if (discriminant < 0) return null;
  const k = (-halfB - Math.sqrt(discriminant)) / a;
  if (k <= 0) return null;
  return {
    bearingDeg: Math.atan2(k * dy, ox + k * dx) * DEG_PER_RAD,
    zMm: camera.pose.heightMm + k * dz,
  };
}

/**
 * Slope κ of the line of sight at a bearing: how much higher (mm) a point looks on the nominal
 * cylinder for each mm that it truly moved inward, away from the camera's side.
 *
 * κ = (camera height above the point) / (horizontal way along the radius that the ray makes).
 */
export function sightSlope(
  camera: Camera,
  radiusMm: number,
  bearingDeg: number,
  zMm: number,
): number {
  const b = bearingDeg * RAD_PER_DEG;
  const towardX = camera.pose.distanceMm - radiusMm * Math.cos(b);
  const towardY = -radiusMm * Math.sin(b);
  const radialMm = towardX * Math.cos(b) + towardY * Math.sin(b);
  return (camera.pose.heightMm - zMm) / radialMm;
}
