/** Smallest pivot taken as non-zero, relative to its diagonal: 16 digits less the squares lost. */
const PIVOT_MIN = 1e-11;

/**
 * Inverse of a small symmetric positive definite matrix by Cholesky factors, or null when it is
 * singular to working precision: what was asked for cannot be told from the data.
 *
 * @param matrix N × N, rows; N ≥ 1
 */
export function symmetricInverse(matrix: readonly (readonly number[])[]): number[][] | null {
  const n = matrix.length;
  const factor = matrix.map(() => new Array<number>(n).fill(0));
  for (let j = 0; j < n; j += 1) {
    for (let i = j; i < n; i += 1) {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k += 1) sum -= factor[i]![k]! * factor[j]![k]!;
      if (i > j) factor[i]![j] = sum / factor[j]![j]!;
      else if (sum > PIVOT_MIN * matrix[j]![j]!) factor[j]![j] = Math.sqrt(sum);
      else return null;
    }
  }
  const columns = matrix.map((_, column) => solveFactored(factor, column));
  return matrix.map((_, i) => columns.map((column) => column[i]!));
}

/** Solves L Lᵀ x = e_column. */
function solveFactored(factor: readonly (readonly number[])[], column: number): number[] {
  const n = factor.length;
  const x = new Array<number>(n).fill(0);
  for (let i = 0; i < n; i += 1) {
    let sum = i === column ? 1 : 0;
    for (let k = 0; k < i; k += 1) sum -= factor[i]![k]! * x[k]!;
    x[i] = sum / factor[i]![i]!;
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = x[i]!;
    for (let k = i + 1; k < n; k += 1) sum -= factor[k]![i]! * x[k]!;
    x[i] = sum / factor[i]![i]!;
  }
  return x;
}
