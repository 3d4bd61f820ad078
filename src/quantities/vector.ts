import { DEG_PER_RAD, RAD_PER_DEG, wrapTurnDeg } from './angle.ts';

/**
 * A vector in the wheel's or the room's plane by its components along 0° and 90°
 * (clockwise seen from above). Its unit is that of the name it is bound to.
 */
export interface PlaneVector {
  readonly along0: number;
  readonly along90: number;
}

/** Symmetric 2×2 covariance of a {@link PlaneVector}, rows and columns along 0° and 90°. */
export type PlaneCovariance = readonly [readonly [number, number], readonly [number, number]];

export const ZERO_VECTOR: PlaneVector = { along0: 0, along90: 0 };

export function vectorFromPolar(amount: number, angleDeg: number): PlaneVector {
  const a = angleDeg * RAD_PER_DEG;
  return { along0: amount * Math.cos(a), along90: amount * Math.sin(a) };
}

export function vectorAmount(v: PlaneVector): number {
  return Math.hypot(v.along0, v.along90);
}

/** Direction in [0, 360) degrees; 0 for the zero vector. */
export function vectorAngleDeg(v: PlaneVector): number {
  return wrapTurnDeg(Math.atan2(v.along90, v.along0) * DEG_PER_RAD);
}

export function addVectors(a: PlaneVector, b: PlaneVector): PlaneVector {
  return { along0: a.along0 + b.along0, along90: a.along90 + b.along90 };
}

export function subtractVectors(a: PlaneVector, b: PlaneVector): PlaneVector {
  return { along0: a.along0 - b.along0, along90: a.along90 - b.along90 };
}

export function scaleVector(v: PlaneVector, factor: number): PlaneVector {
  return { along0: v.along0 * factor, along90: v.along90 * factor };
}

/** Product as complex numbers, (along0 + i·along90): amounts multiply, angles add. */
export function multiplyAsComplex(a: PlaneVector, b: PlaneVector): PlaneVector {
  return {
    along0: a.along0 * b.along0 - a.along90 * b.along90,
    along90: a.along0 * b.along90 + a.along90 * b.along0,
  };
}

/** Quotient as complex numbers; components are ±Infinity or NaN when `b` is zero: check first. */
export function divideAsComplex(a: PlaneVector, b: PlaneVector): PlaneVector {
  const d = b.along0 * b.along0 + b.along90 * b.along90;
  return {
    along0: (a.along0 * b.along0 + a.along90 * b.along90) / d,
    along90: (a.along90 * b.along0 - a.along0 * b.along90) / d,
  };
}
