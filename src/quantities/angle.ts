/**
 * Angles. Degrees at every interface, radians only inside a function.
 *
 * Wheel angle β, turn φ and azimuth α are all clockwise seen from above; a wheel point β at turn φ
 * stands at azimuth α = β + φ.
 */

export const RAD_PER_DEG = Math.PI / 180;
export const DEG_PER_RAD = 180 / Math.PI;

/** The same direction in [0, 360) degrees. */
export function wrapTurnDeg(angleDeg: number): number {
  const wrapped = angleDeg % 360;
  const positive = wrapped < 0 ? wrapped + 360 : wrapped;
  // A tiny negative input rounds up to exactly 360, and −0 is not a wheel angle either.
  return positive >= 360 || positive === 0 ? 0 : positive;
}

/** The same direction in [−180, 180) degrees: the short way round from 0. */
export function wrapHalfTurnDeg(angleDeg: number): number {
  return wrapTurnDeg(angleDeg + 180) - 180;
}

/** The short way from one direction to another, degrees in [−180, 180), positive clockwise. */
export function shortWayDeg(fromDeg: number, toDeg: number): number {
  return wrapHalfTurnDeg(toDeg - fromDeg);
}
