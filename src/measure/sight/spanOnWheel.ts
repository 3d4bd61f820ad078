import type { Camera } from '../geometry/camera.ts';
import type { LinePoints } from '../geometry/circleResiduals.ts';
import { cylinderPointAtPixel } from '../geometry/cylinder.ts';

/** Bearings over which the line's points on the face reach, degrees. */
export function spanOnWheelDeg(
  camera: Camera,
  radiusMm: number,
  points: LinePoints,
  inliers: Uint8Array,
): number {
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < inliers.length; i++) {
    if (!inliers[i]) continue;
    const point = cylinderPointAtPixel(camera, radiusMm, points.xPx[i], points.yPx[i]);
    if (!point) continue;
    low = Math.min(low, point.bearingDeg);
    high = Math.max(high, point.bearingDeg);
  }
  return high - low;
}
