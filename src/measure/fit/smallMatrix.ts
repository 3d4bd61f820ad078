/**
 * Dense linear algebra for a handful of unknowns: matrices are flat `Float64Array`s, row by row.
 * Nothing here allocates more than its result, and nothing swallows NaN: a factor that cannot be
 * made is `false`, never a quiet substitute.
 */

/**
 * Cholesky factor A = L·Lᵀ of a symmetric positive definite matrix, in place: the lower triangle
 * becomes L, the upper one is left as it was.
 *
 * @param a n×n, only the lower triangle is read.
 * @returns false when A is not positive definite to working precision (or holds NaN).
 */
export function choleskyInPlace(a: Float64Array, n: number): boolean {
  for (let j = 0; j < n; j++) {
    let pivot = a[j * n + j];
    for (let k = 0; k < j; k++) pivot -= a[j * n + k] * a[j * n + k];
    // Written so that NaN fails too.
    if (!(pivot > 0) || pivot === Infinity) return false;
    const root = Math.sqrt(pivot);
    a[j * n + j] = root;
    for (let i = j + 1; i < n; i++) {
      let sum = a[i * n + j];
      for (let k = 0; k < j; k++) sum -= a[i * n + k] * a[j * n + k];
      a[i * n + j] = sum / root;
    }
  }
  return true;
}

/** Solves L·x = b in place, L the lower triangle of an n×n array. */
function solveLowerInPlace(l: Float64Array, b: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    let sum = b[i];
    for (let k = 0; k < i; k++) sum -= l[i * n + k] * b[k];
    b[i] = sum / l[i * n + i];
  }
}

/** Solves Lᵀ·x = b in place, L the lower triangle of an n×n array. */
function solveLowerTransposedInPlace(l: Float64Array, b: Float64Array, n: number): void {
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i];
    for (let k = i + 1; k < n; k++) sum -= l[k * n + i] * b[k];
    b[i] = sum / l[i * n + i];
  }
}

/**
 * Solution of A·x = b and the inverse of A, for A symmetric positive definite.
 * A is scaled to unit diagonal first, so that unknowns in different units do no harm.
 *
 * @returns null when A is not positive definite to working precision.
 */
export function solveSymmetric(
  a: Float64Array,
  b: Float64Array,
  n: number,
): { solution: Float64Array; inverse: Float64Array; logDeterminant: number } | null {
  checkSquare(a, n);
  const scale = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const d = a[i * n + i];
    if (!(d > 0) || d === Infinity) return null;
    scale[i] = 1 / Math.sqrt(d);
  }
  const factor = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) factor[i * n + j] = a[i * n + j] * scale[i] * scale[j];
  }
  if (!choleskyInPlace(factor, n)) return null;
  let logDeterminant = 0;
  for (let i = 0; i < n; i++) {
    if (factor[i * n + i] < SINGULAR_PIVOT) return null;
    logDeterminant += 2 * (Math.log(factor[i * n + i]) - Math.log(scale[i]));
  }
  const solveScaled = (right: Float64Array): void => {
    for (let i = 0; i < n; i++) right[i] *= scale[i];
    solveLowerInPlace(factor, right, n);
    solveLowerTransposedInPlace(factor, right, n);
    for (let i = 0; i < n; i++) right[i] *= scale[i];
  };
  const solution = b.slice(0, n);
  solveScaled(solution);
  const inverse = new Float64Array(n * n);
  const column = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    column.fill(0);
    column[j] = 1;
    solveScaled(column);
    for (let i = 0; i < n; i++) inverse[i * n + j] = column[i];
  }
  makeSymmetric(inverse, n);
  return { solution, inverse, logDeterminant };
}

/**
 * Pivot of the unit-diagonal matrix (no unit) under which rounding is all that is left:
 * √ε leaves half of the digits.
 */
const SINGULAR_PIVOT = 1.5e-8;

/** Replaces A by (A + Aᵀ)/2. */
function makeSymmetric(a: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) {
      const mean = (a[i * n + j] + a[j * n + i]) / 2;
      a[i * n + j] = mean;
      a[j * n + i] = mean;
    }
  }
}

/** Misuse throws: a flat array that is not n×n is a slip of the programmer. */
function checkSquare(a: ArrayLike<number>, n: number): void {
  if (a.length !== n * n) throw new RangeError(`expected ${n}×${n} numbers, got ${a.length}`);
}
