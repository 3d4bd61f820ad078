import { RAD_PER_DEG } from '../../quantities/angle.ts';

/**
 * A camera that looks at the wheel from outside and above: a pinhole with a lens that bends
 * radially.
 *
 * Room frame, millimetres: origin on the wheel's axis in the laser plane; X points from the axis to
 * the camera, horizontally; Y points to the azimuth 90° clockwise (seen from above) from X, which
 * is to the LEFT in the picture; Z up. The camera stands at (distanceMm, 0, heightMm).
 *
 * Picture frame: x right, y down, pixels, the centre of the top-left pixel at (0.5, 0.5); the
 * principal point and the lens's own centre are the picture's centre.
 */
export interface CameraPose {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly focalPx: number;
  /**
   * Bend of the lens, λ in straight = shown/(1 + λ·shown²), both in focal lengths from the picture's
   * centre; negative is a barrel. One parameter covers what phones and tablets have, and is solved in
   * closed form both ways. Source: the division model, Fitzgibbon 2001 (from memory); to first order
   * λ is the k₁ of the polynomial model.
   */
  readonly radial: number;
  /** Angle of the optical axis below the horizontal, degrees. */
  readonly downTiltDeg: number;
  /** Turn of the camera about the vertical, away from the axis of the wheel; positive looks to the right. */
  readonly yawDeg: number;
  /** Turn of the camera about its optical axis; positive turns the scene clockwise in the picture. */
  readonly rollDeg: number;
  /** Horizontal distance of the camera from the wheel's axis, mm. */
  readonly distanceMm: number;
  /** Height of the camera above the laser plane, mm. */
  readonly heightMm: number;
}

/** A pose with its rotation worked out once: what the inner loops use. */
export interface Camera {
  readonly pose: CameraPose;
  /** Unit vectors of the picture's right, its down and the optical axis, in the room frame. */
  readonly right: readonly [number, number, number];
  readonly down: readonly [number, number, number];
  readonly forward: readonly [number, number, number];
}

export function cameraFromPose(pose: CameraPose): Camera {
  const tilt = pose.downTiltDeg * RAD_PER_DEG;
  const yaw = pose.yawDeg * RAD_PER_DEG;
  const roll = pose.rollDeg * RAD_PER_DEG;
  const [ct, st] = [Math.cos(tilt), Math.sin(tilt)];
  const [cy, sy] = [Math.cos(yaw), Math.sin(yaw)];
  const [cr, sr] = [Math.cos(roll), Math.sin(roll)];
  // Before roll: looking along −X turned by yaw; right is −Y turned by the same yaw.
  const forward: [number, number, number] = [-ct * cy, -ct * sy, -st];
  const level: [number, number, number] = [sy, -cy, 0];
  const steep: [number, number, number] = [st * cy, st * sy, -ct];
  const mix = (a: number, b: number): [number, number, number] => [
    a * level[0] + b * steep[0],
    a * level[1] + b * steep[1],
    a * level[2] + b * steep[2],
  ];
  return { pose, right: mix(cr, -sr), down: mix(sr, cr), forward };
}

/**
 * Where a room point appears. Writes x, y in pixels to `out` and returns true, or returns false for
 * a point behind the camera.
 */
export function projectPoint(
  camera: Camera,
  xMm: number,
  yMm: number,
  zMm: number,
  out: Float64Array,
): boolean {
  const { pose, right, down, forward } = camera;
  const dx = xMm - pose.distanceMm;
  const dz = zMm - pose.heightMm;
  const depth = dx * forward[0] + yMm * forward[1] + dz * forward[2];
  if (depth <= 1) return false;
  const a = (dx * right[0] + yMm * right[1] + dz * right[2]) / depth;
  const b = (dx * down[0] + yMm * down[1] + dz * down[2]) / depth;
  const bent = pose.focalPx * shownPerStraight(pose.radial, a * a + b * b);
  out[0] = pose.widthPx / 2 + bent * a;
  out[1] = pose.heightPx / 2 + bent * b;
  return true;
}

/**
 * How much farther from the centre the lens shows a point whose straight distance squared is
 * `straight2`: the smaller root of λ·straight·shown² − shown + straight = 0. Beyond the last radius
 * that a strong pincushion shows at all it stays at that radius.
 */
function shownPerStraight(radial: number, straight2: number): number {
  if (radial === 0) return 1;
  return 2 / (1 + Math.sqrt(Math.max(0, 1 - 4 * radial * straight2)));
}

/** Direction of the ray through a pixel, room frame, not normalised (unit along the optical axis). */
export function rayThroughPixel(
  camera: Camera,
  xPx: number,
  yPx: number,
): [number, number, number] {
  const { pose, right, down, forward } = camera;
  const shownA = (xPx - pose.widthPx / 2) / pose.focalPx;
  const shownB = (yPx - pose.heightPx / 2) / pose.focalPx;
  const straight = 1 / (1 + pose.radial * (shownA * shownA + shownB * shownB));
  const [a, b] = [shownA * straight, shownB * straight];
  return [
    forward[0] + a * right[0] + b * down[0],
    forward[1] + a * right[1] + b * down[1],
    forward[2] + a * right[2] + b * down[2],
  ];
}
