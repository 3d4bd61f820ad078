import { cameraFromPose, rayThroughPixel, type CameraPose } from './camera.ts';

export interface LinePoints {
  /** Picture columns (x) and rows (y) of the line, pixels, same length; unordered. */
  readonly xPx: ArrayLike<number>;
  readonly yPx: ArrayLike<number>;
}

/** At the circle's flanks the sight line grazes the tread, and columns say nothing about rows. */
const MAX_ROW_PER_MM = 8;

/**
 * Signed distance of each line point from the circle's image, along the picture's rows, px: the
 * ray through the point meets the laser plane at some distance from the axis, and one row more or
 * less moves that place by a known way.
 */
export function circleResiduals(
  points: LinePoints,
  pose: CameraPose,
  radiusMm: number,
): Float64Array {
  const camera = cameraFromPose(pose);
  const n = points.xPx.length;
  const out = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const here = radiusInLaserPlane(camera, points.xPx[i], points.yPx[i]);
    const below = radiusInLaserPlane(camera, points.xPx[i], points.yPx[i] + 0.5);
    const mmPerRow = (below - here) / 0.5;
    // Steep enough everywhere that matters; the floor keeps grazing flanks from dominating.
    const slope = Math.sign(mmPerRow || 1) * Math.max(Math.abs(mmPerRow), 1 / MAX_ROW_PER_MM);
    const residual = (here - radiusMm) / slope;
    out[i] = Number.isFinite(residual) ? Math.max(-200, Math.min(200, residual)) : 200;
  }
  return out;
}

function radiusInLaserPlane(
  camera: ReturnType<typeof cameraFromPose>,
  xPx: number,
  yPx: number,
): number {
  const [dx, dy, dz] = rayThroughPixel(camera, xPx, yPx);
  if (dz >= -1e-6) return 1e6; // looks at or above the horizon: never meets the plane in front
  const k = -camera.pose.heightMm / dz;
  return Math.hypot(camera.pose.distanceMm + k * dx, k * dy);
}
