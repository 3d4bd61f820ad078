import { multiplyAsComplex, type PlaneCovariance, type PlaneVector } from '../quantities/vector.ts';

/** Small algebra of 2×2 covariances; all inputs are taken to be checked. */

export const NO_COVARIANCE: PlaneCovariance = [
  [0, 0],
  [0, 0],
];

export function addCovariances(a: PlaneCovariance, b: PlaneCovariance): PlaneCovariance {
  const c01 = a[0][1] + b[0][1];
  return [
    [a[0][0] + b[0][0], c01],
    [c01, a[1][1] + b[1][1]],
  ];
}

export function scaleCovariance(c: PlaneCovariance, factor: number): PlaneCovariance {
  return [
    [c[0][0] * factor, c[0][1] * factor],
    [c[0][1] * factor, c[1][1] * factor],
  ];
}

/** The same variance in every direction. */
export function evenCovariance(variance: number): PlaneCovariance {
  return [
    [variance, 0],
    [0, variance],
  ];
}

/** v vᵀ·factor: an error that lies wholly along v. */
export function outerCovariance(v: PlaneVector, factor: number): PlaneCovariance {
  const c01 = v.along0 * v.along90 * factor;
  return [
    [v.along0 * v.along0 * factor, c01],
    [c01, v.along90 * v.along90 * factor],
  ];
}

/** Covariance of z·x for a fixed complex factor z: J C Jᵀ with J the matrix of multiplying by z. */
export function covarianceTimesComplex(c: PlaneCovariance, z: PlaneVector): PlaneCovariance {
  const { along0: p, along90: q } = z;
  const [[a, b], [, d]] = c;
  const c01 = p * q * (a - d) + (p * p - q * q) * b;
  return [
    [p * p * a - 2 * p * q * b + q * q * d, c01],
    [c01, q * q * a + 2 * p * q * b + p * p * d],
  ];
}

/** Variance of the component along `direction` (any length but zero): nᵀ C n with n its unit vector. */
export function varianceAlong(c: PlaneCovariance, direction: PlaneVector): number {
  const length = Math.hypot(direction.along0, direction.along90);
  const n0 = direction.along0 / length;
  const n90 = direction.along90 / length;
  return Math.max(0, n0 * n0 * c[0][0] + 2 * n0 * n90 * c[0][1] + n90 * n90 * c[1][1]);
}

/** The vector turned by 90° in the sense of growing angle: the direction across. */
export function across(v: PlaneVector): PlaneVector {
  return multiplyAsComplex(v, { along0: 0, along90: 1 });
}
