import { cameraFromPose, type Camera, type CameraPose } from './camera.ts';

export interface LinePoints {
  /** Picture columns (x) and rows (y) of the line, pixels, same length; unordered. */
  readonly xPx: ArrayLike<number>;
  readonly yPx: ArrayLike<number>;
}

export interface CircleOffsets {
  /** Signed distance of each point from the circle's image along the picture's rows, px, positive down. */
  readonly rowsPx: Float64Array;
  /** Rows down for a millimetre outward from the axis, px/mm. */
  readonly rowsPerMm: Float64Array;
}

/** At the circle's flanks the sight line grazes the tread, and columns say nothing about rows. */
const MAX_ROW_PER_MM = 8;
/** A point this far off says no more than that it is off, px. */
const FARTHEST_PX = 200;

/**
 * How far the line's points lie from the image of a circle in the laser plane: the ray through a
 * point meets the plane at some distance from the axis, and one row more or less moves that place
 * by a known way.
 */
export function circleOffsets(
  points: LinePoints,
  pose: CameraPose,
  radiusMm: number,
): CircleOffsets {
  const camera = cameraFromPose(pose);
  const n = points.xPx.length;
  const rowsPx = new Float64Array(n);
  const rowsPerMm = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const here = radiusInLaserPlane(camera, points.xPx[i], points.yPx[i]);
    const below = radiusInLaserPlane(camera, points.xPx[i], points.yPx[i] + 0.5);
    const mmPerRow = (below - here) / 0.5;
    // Steep enough everywhere that matters; the floor keeps grazing flanks from dominating.
    const slope = Math.sign(mmPerRow || 1) * Math.max(Math.abs(mmPerRow), 1 / MAX_ROW_PER_MM);
    const row = (here - radiusMm) / slope;
    rowsPx[i] = Number.isFinite(row)
      ? Math.max(-FARTHEST_PX, Math.min(FARTHEST_PX, row))
      : FARTHEST_PX;
    rowsPerMm[i] = Number.isFinite(slope) ? 1 / slope : MAX_ROW_PER_MM;
  }
  return { rowsPx, rowsPerMm };
}

/**
 * Distance from the axis at which the ray through a pixel meets the laser plane, mm. The ray is
 * {@link rayThroughPixel}'s, written out: this is the innermost loop of finding the camera.
 */
function radiusInLaserPlane(camera: Camera, xPx: number, yPx: number): number {
  const { pose, right, down, forward } = camera;
  const shownA = (xPx - pose.widthPx / 2) / pose.focalPx;
  const shownB = (yPx - pose.heightPx / 2) / pose.focalPx;
  const straight = 1 / (1 + pose.radial * (shownA * shownA + shownB * shownB));
  const a = shownA * straight;
  const b = shownB * straight;
  const dz = forward[2] + a * right[2] + b * down[2];
  if (dz >= -1e-6) return 1e6; // looks at or above the horizon: never meets the plane in front
  const k = -pose.heightMm / dz;
  const alongX = pose.distanceMm + k * (forward[0] + a * right[0] + b * down[0]);
  const alongY = k * (forward[1] + a * right[1] + b * down[1]);
  return Math.sqrt(alongX * alongX + alongY * alongY);
}
