/**
 * Eigenvalues and vectors of a small symmetric matrix by Jacobi's rotations: slow for large
 * matrices, exact to the last digits for small ones. Source: Golub & Van Loan, 8.5 (from memory).
 */
export interface SymmetricEigen {
  readonly values: Float64Array;
  /** n×n, row by row; column j belongs to value j. */
  readonly vectors: Float64Array;
}

const MAX_SWEEPS = 30;

export function eigenOfSymmetric(matrix: Float64Array, n: number): SymmetricEigen {
  const a = Float64Array.from(matrix);
  const vectors = new Float64Array(n * n);
  for (let i = 0; i < n; i++) vectors[i * n + i] = 1;
  for (let sweep = 0; sweep < MAX_SWEEPS; sweep++) {
    let off = 0;
    let all = 0;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        all += a[i * n + j] ** 2;
        if (i !== j) off += a[i * n + j] ** 2;
      }
    }
    if (!(off > 1e-28 * all)) break;
    for (let p = 0; p < n - 1; p++) {
      for (let q = p + 1; q < n; q++) rotate(a, vectors, p, q, n);
    }
  }
  return { values: Float64Array.from({ length: n }, (_, i) => a[i * n + i]), vectors };
}

function rotate(a: Float64Array, vectors: Float64Array, p: number, q: number, n: number): void {
  const apq = a[p * n + q];
  if (apq === 0) return;
  const theta = (a[q * n + q] - a[p * n + p]) / (2 * apq);
  const t = Math.sign(theta || 1) / (Math.abs(theta) + Math.hypot(theta, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  for (let k = 0; k < n; k++) {
    const kp = a[k * n + p];
    const kq = a[k * n + q];
    a[k * n + p] = c * kp - s * kq;
    a[k * n + q] = s * kp + c * kq;
  }
  for (let k = 0; k < n; k++) {
    const pk = a[p * n + k];
    const qk = a[q * n + k];
    a[p * n + k] = c * pk - s * qk;
    a[q * n + k] = s * pk + c * qk;
    const vp = vectors[k * n + p];
    const vq = vectors[k * n + q];
    vectors[k * n + p] = c * vp - s * vq;
    vectors[k * n + q] = s * vp + c * vq;
  }
}
