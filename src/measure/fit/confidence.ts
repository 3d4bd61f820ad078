import { DEG_PER_RAD, wrapTurnDeg } from '../../quantities/angle.ts';
import {
  vectorAmount,
  vectorAngleDeg,
  type PlaneCovariance,
  type PlaneVector,
} from '../../quantities/vector.ts';

/**
 * From a vector and its covariance to intervals a person can read.
 *
 * Region: (x − v)ᵀ·C⁻¹·(x − v) ≤ q, q the quantile of χ² with two freedoms, −2·ln(1 − p): exact.
 */
export const REGION_95 = -2 * Math.log(0.05);
export const REGION_999 = -2 * Math.log(0.001);

export interface VectorConfidence {
  /**
   * 95 % interval of the amount, from the standard error along the vector (±1.960 of it), not
   * below 0; where the region holds the origin it starts at 0.
   */
  readonly amount: readonly [number, number];
  /**
   * 95 % interval of the angle, degrees in [0, 360), clockwise from the first to the second; null
   * where the 95 % region holds the origin: then every direction is possible.
   */
  readonly angleDeg: readonly [number, number] | null;
}

/** Two-sided 95 % point of the Gaussian. */
const GAUSSIAN_95 = 1.959964;

/** @throws RangeError when the covariance is not positive definite. */
export function vectorConfidence(
  vector: PlaneVector,
  covariance: PlaneCovariance,
): VectorConfidence {
  const amount = vectorAmount(vector);
  const holdsOrigin = squaredDistance(vector, covariance) <= REGION_95;
  if (holdsOrigin) return { amount: [0, farthestAmount(vector, covariance)], angleDeg: null };
  const along = { along0: vector.along0 / amount, along90: vector.along90 / amount };
  const across = { along0: -along.along90, along90: along.along0 };
  const half = GAUSSIAN_95 * Math.sqrt(varianceAlong(covariance, along));
  // The angle's error is that across the vector, seen from the origin.
  const turn = Math.atan2(GAUSSIAN_95 * Math.sqrt(varianceAlong(covariance, across)), amount);
  const middleDeg = vectorAngleDeg(vector);
  return {
    amount: [Math.max(0, amount - half), amount + half],
    angleDeg: [
      wrapTurnDeg(middleDeg - turn * DEG_PER_RAD),
      wrapTurnDeg(middleDeg + turn * DEG_PER_RAD),
    ],
  };
}

/** vᵀ·C⁻¹·v: squared distance of the vector from zero in standard deviations. */
export function squaredDistance(vector: PlaneVector, covariance: PlaneCovariance): number {
  const [[a, b], [, d]] = covariance;
  const determinant = a * d - b * b;
  if (!(a > 0 && d > 0 && determinant > 0)) {
    throw new RangeError(`covariance ${a}, ${b}, ${d} is not positive definite`);
  }
  const { along0: x, along90: y } = vector;
  return (d * x * x - 2 * b * x * y + a * y * y) / determinant;
}

/** True when zero is not credible: the vector is outside the region about zero. */
export function differsFromZero(
  vector: PlaneVector,
  covariance: PlaneCovariance,
  region: number = REGION_95,
): boolean {
  return squaredDistance(vector, covariance) > region;
}

/** uᵀ·C·u for a unit vector u. */
function varianceAlong(covariance: PlaneCovariance, unit: PlaneVector): number {
  const [[a, b], [, d]] = covariance;
  return a * unit.along0 * unit.along0 + 2 * b * unit.along0 * unit.along90 + d * unit.along90 ** 2;
}

/** Covariance of k·v as complex numbers, k = along0 + i·along90 free of error. */
export function covarianceTimesComplex(
  covariance: PlaneCovariance,
  k: PlaneVector,
): PlaneCovariance {
  const [[a, b], [, d]] = covariance;
  const { along0: c, along90: s } = k;
  // Rows of the matrix of k: (c, −s), (s, c).
  const cross = c * s * a + (c * c - s * s) * b - c * s * d;
  return [
    [c * c * a - 2 * c * s * b + s * s * d, cross],
    [cross, s * s * a + 2 * c * s * b + c * c * d],
  ];
}

/** Largest distance from the origin on the 95 % region's rim. */
function farthestAmount(vector: PlaneVector, covariance: PlaneCovariance): number {
  const [[a, b], [, d]] = covariance;
  const l00 = Math.sqrt(a);
  const l10 = b / l00;
  const l11 = Math.sqrt(d - l10 * l10);
  const radius = Math.sqrt(REGION_95);
  let farthest = 0;
  for (let k = 0; k < RIM_POINTS; k++) {
    const t = (2 * Math.PI * k) / RIM_POINTS;
    const x = vector.along0 + radius * l00 * Math.cos(t);
    const y = vector.along90 + radius * (l10 * Math.cos(t) + l11 * Math.sin(t));
    farthest = Math.max(farthest, Math.hypot(x, y));
  }
  return farthest;
}

/** Points on the rim; the farthest is missed by at most 1 − cos(π/360) = 4·10⁻⁵ of the radius. */
const RIM_POINTS = 360;
