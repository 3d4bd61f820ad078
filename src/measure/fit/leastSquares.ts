/**
 * Linear least squares by Householder QR with column scaling and column pivoting.
 *
 * min ‖X·p − y‖₂ over p. Columns are scaled to unit length first (units do no harm), then the
 * longest remaining column is taken at each step, so that the rank shows on the diagonal of R.
 * Source: Golub & Van Loan, Matrix Computations, 5.2 and 5.5 (from memory).
 */
export interface LeastSquaresSolution {
  /** p, length n. Zero for columns that add nothing (rank < n). */
  readonly coefficients: Float64Array;
  /** (XᵀX)⁻¹, n×n; rows and columns of left-out columns are NaN when rank < n. */
  readonly unscaledCovariance: Float64Array;
  /** ‖X·p − y‖². */
  readonly residualSumOfSquares: number;
  readonly rank: number;
}

/**
 * @param x m×n, row by row; not changed.
 * @param y length m; not changed.
 * @throws RangeError when lengths do not agree or a value is not finite.
 */
export function solveLeastSquares(
  x: Float64Array,
  y: Float64Array,
  m: number,
  n: number,
): LeastSquaresSolution {
  checkLengths(x, y, m, n);
  const qr = factorQr(x, y, m, n);
  const coefficients = coefficientsOf(qr, n);
  let residualSumOfSquares = 0;
  for (let i = 0; i < m; i++) {
    let r = y[i];
    for (let j = 0; j < n; j++) r -= x[i * n + j] * coefficients[j];
    residualSumOfSquares += r * r;
  }
  const unscaledCovariance = unscaledCovarianceOf(qr, n);
  return { coefficients, unscaledCovariance, residualSumOfSquares, rank: qr.rank };
}

/** The coefficients alone: a step on the way to a minimum asks for nothing more. */
export function leastSquaresCoefficients(
  x: Float64Array,
  y: Float64Array,
  m: number,
  n: number,
): Float64Array {
  checkLengths(x, y, m, n);
  return coefficientsOf(factorQr(x, y, m, n), n);
}

function checkLengths(x: Float64Array, y: Float64Array, m: number, n: number): void {
  if (x.length === m * n && y.length === m) return;
  throw new RangeError(`expected ${m}×${n} and ${m} numbers, got ${x.length} and ${y.length}`);
}

/** Scaled, pivoted QR: X·S·Π = Q·R; columns are stored one after another. */
export interface ScaledQr {
  /** Column-major m×n: R in the upper triangle. */
  readonly columns: Float64Array;
  /** Qᵀ·y, length m. */
  readonly rotated: Float64Array;
  /** Length by which column j of X was divided. */
  readonly columnLength: Float64Array;
  /** order[k] = column of X that stands at place k. */
  readonly order: Int32Array;
  readonly rank: number;
  readonly rowCount: number;
}

export function factorQr(x: Float64Array, y: Float64Array, m: number, n: number): ScaledQr {
  const columns = new Float64Array(m * n);
  const columnLength = new Float64Array(n);
  const order = new Int32Array(n);
  for (let j = 0; j < n; j++) {
    order[j] = j;
    let largest = 0;
    for (let i = 0; i < m; i++) {
      const size = Math.abs(x[i * n + j]);
      if (!(size < Infinity)) throw new RangeError(`value ${i}, ${j} is not finite`);
      if (size > largest) largest = size;
    }
    let sum = 0;
    for (let i = 0; i < m; i++) sum += (x[i * n + j] / (largest || 1)) ** 2;
    columnLength[j] = largest === 0 ? 1 : largest * Math.sqrt(sum);
    for (let i = 0; i < m; i++) columns[j * m + i] = x[i * n + j] / columnLength[j];
  }
  const rotated = Float64Array.from(y);
  const rank = triangularise(columns, rotated, order, m, n);
  return { columns, rotated, columnLength, order, rank, rowCount: m };
}

/** Diagonal of R relative to its first, below which a column is a sum of those before it. */
const RANK_TOLERANCE_PER_ROW = 2 ** -52;

function triangularise(
  columns: Float64Array,
  rotated: Float64Array,
  order: Int32Array,
  m: number,
  n: number,
): number {
  const steps = Math.min(m, n);
  let first = 0;
  for (let k = 0; k < steps; k++) {
    bringLongestForward(columns, order, k, m, n);
    const length = tailLength(columns, k, k, m);
    if (k === 0) first = length;
    if (!(length > first * RANK_TOLERANCE_PER_ROW * Math.max(m, n)) || length === 0) return k;
    reflect(columns, rotated, k, length, m, n);
  }
  return steps;
}

function tailLength(columns: Float64Array, j: number, from: number, m: number): number {
  let sum = 0;
  for (let i = from; i < m; i++) sum += columns[j * m + i] ** 2;
  return Math.sqrt(sum);
}

function bringLongestForward(
  columns: Float64Array,
  order: Int32Array,
  k: number,
  m: number,
  n: number,
): void {
  // Lengths are computed afresh at each step: with few columns it is cheap and cannot drift.
  let best = k;
  let bestLength = -1;
  for (let j = k; j < n; j++) {
    const length = tailLength(columns, j, k, m);
    if (length > bestLength) {
      bestLength = length;
      best = j;
    }
  }
  if (best === k) return;
  for (let i = 0; i < m; i++) {
    const keep = columns[k * m + i];
    columns[k * m + i] = columns[best * m + i];
    columns[best * m + i] = keep;
  }
  const keep = order[k];
  order[k] = order[best];
  order[best] = keep;
}

/** Householder reflection that clears column k below the diagonal, applied to all that follow. */
function reflect(
  columns: Float64Array,
  rotated: Float64Array,
  k: number,
  length: number,
  m: number,
  n: number,
): void {
  const at = k * m;
  const head = columns[at + k];
  const diagonal = head > 0 ? -length : length;
  const v0 = head - diagonal;
  const half = -diagonal * v0;
  columns[at + k] = v0;
  for (let j = k + 1; j < n; j++) mirror(columns, at, half, columns, j * m, k, m);
  mirror(columns, at, half, rotated, 0, k, m);
  columns[at + k] = diagonal;
  for (let i = k + 1; i < m; i++) columns[at + i] = 0;
}

/** Takes from rows k to m of a column what the reflection vector at `at` takes from it. */
function mirror(
  columns: Float64Array,
  at: number,
  half: number,
  target: Float64Array,
  offset: number,
  k: number,
  m: number,
): void {
  let dot = 0;
  for (let i = k; i < m; i++) dot += columns[at + i] * target[offset + i];
  const factor = dot / half;
  for (let i = k; i < m; i++) target[offset + i] -= factor * columns[at + i];
}

/** R·x = right in place, for the leading `rank` rows. */
function solveUpper({ columns, rank, rowCount: m }: ScaledQr, right: Float64Array): void {
  for (let i = rank - 1; i >= 0; i--) {
    let sum = right[i];
    for (let j = i + 1; j < rank; j++) sum -= columns[j * m + i] * right[j];
    right[i] = sum / columns[i * m + i];
  }
}

function coefficientsOf(qr: ScaledQr, n: number): Float64Array {
  const { rotated, columnLength, order, rank } = qr;
  const coefficients = new Float64Array(n);
  const head = rotated.slice(0, rank);
  solveUpper(qr, head);
  for (let k = 0; k < rank; k++) coefficients[order[k]] = head[k] / columnLength[order[k]];
  return coefficients;
}

function unscaledCovarianceOf(qr: ScaledQr, n: number): Float64Array {
  const { columnLength, order, rank } = qr;
  const covariance = new Float64Array(n * n).fill(rank < n ? NaN : 0);
  const inverse = new Float64Array(rank * rank);
  for (let k = 0; k < rank; k++) {
    const unit = new Float64Array(rank);
    unit[k] = 1;
    solveUpper(qr, unit);
    for (let i = 0; i < rank; i++) inverse[i * rank + k] = unit[i];
  }
  for (let i = 0; i < rank; i++) {
    for (let j = 0; j < rank; j++) {
      let sum = 0;
      for (let k = Math.max(i, j); k < rank; k++)
        sum += inverse[i * rank + k] * inverse[j * rank + k];
      const [row, column] = [order[i], order[j]];
      covariance[row * n + column] = sum / columnLength[row] / columnLength[column];
    }
  }
  return covariance;
}
