import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import { factorQr, solveLeastSquares } from './leastSquares.ts';
import { lossOf, lossWeight, type RobustLoss } from './robustLoss.ts';

/** A non-linear least-squares problem: its options, its cost, its slopes and its conclusion. */
export interface LevenbergMarquardtOptions {
  /** Default: squares, ρ(z) = z². */
  readonly loss?: RobustLoss;
  /** σ: expected standard deviation of one residual, in the residual's own unit. Default 1. */
  readonly residualSd?: number;
  /**
   * Scale of the covariance: 'estimated' from the residuals themselves (default), or 'given':
   * `residualSd` is taken at its word.
   */
  readonly residualSdIs?: 'estimated' | 'given';
  /** Beliefs about single parameters, independent of each other. */
  readonly priors?: readonly ParameterPrior[];
  /** Typical size of each parameter, in its own unit, for the step of the differences. Default 1. */
  readonly parameterSizes?: ArrayLike<number>;
  readonly maxIterations?: number;
  /** A step below this share of every parameter's size ends the search. Default 1e-9. */
  readonly stepTolerance?: number;
}

export interface ParameterPrior {
  readonly index: number;
  readonly mean: number;
  readonly sd: number;
}

export interface LevenbergMarquardtFit {
  readonly parameters: Float64Array;
  /** n×n, row by row, in the parameters' units. */
  readonly covariance: Float64Array;
  /** √(Σ w r² / Σ w), residual's own unit; w = 1 for squares. Priors are left out. */
  readonly residualRms: number;
  /** Final weight of each residual, 0 to 1. */
  readonly weights: Float64Array;
  readonly iterations: number;
}

export type LevenbergMarquardtFailure =
  | 'start-not-finite'
  | 'too-few-residuals'
  | 'parameters-not-determined'
  | 'no-convergence';

/** ∛ε: the step that balances rounding against curvature for central differences. */
const DIFFERENCE_STEP = Math.cbrt(2 ** -52);

export interface Evaluation {
  /** Residuals in units of σ, then priors in units of their sd. */
  readonly rows: Float64Array;
  readonly cost: number;
}

/** R (n×n upper triangle, in the order of the parameters' own columns) and Qᵀ·(−r). */
export interface Linearised {
  readonly triangle: Float64Array;
  readonly right: Float64Array;
}

export function poseProblem(
  residuals: (parameters: Float64Array) => ArrayLike<number>,
  start: ArrayLike<number>,
  options: LevenbergMarquardtOptions,
) {
  const n = start.length;
  const sd = options.residualSd ?? 1;
  if (!(sd > 0)) throw new RangeError(`residualSd must be positive, got ${sd}`);
  const priors = options.priors ?? [];
  for (const { index, sd: priorSd } of priors) {
    if (!(index >= 0 && index < n) || !(priorSd > 0)) {
      throw new RangeError(`prior on parameter ${index} with sd ${priorSd} does not fit`);
    }
  }
  if (options.parameterSizes !== undefined && options.parameterSizes.length !== n) {
    throw new RangeError(`expected ${n} parameter sizes, got ${options.parameterSizes.length}`);
  }
  const loss: RobustLoss = options.loss ?? { kind: 'squares' };
  const dataCount = residuals(Float64Array.from(start)).length;
  const rowCount = dataCount + priors.length;

  const sizeOf = (p: Float64Array, j: number): number =>
    Math.max(Math.abs(p[j]), options.parameterSizes?.[j] ?? 1);

  const evaluate = (p: Float64Array): Evaluation => {
    const raw = residuals(p);
    if (raw.length !== dataCount) {
      throw new RangeError(`residuals changed their number from ${dataCount} to ${raw.length}`);
    }
    const rows = new Float64Array(rowCount);
    let cost = 0;
    for (let i = 0; i < dataCount; i++) {
      rows[i] = raw[i] / sd;
      cost += lossOf(loss, rows[i]);
    }
    priors.forEach((prior, k) => {
      const z = (p[prior.index] - prior.mean) / prior.sd;
      rows[dataCount + k] = z;
      cost += z * z;
    });
    return { rows, cost: Number.isFinite(cost) ? cost : Infinity };
  };

  const rootWeights = (rows: Float64Array): Float64Array =>
    rows.map((z, i) => (i < dataCount ? Math.sqrt(lossWeight(loss, z)) : 1));

  const jacobian = (p: Float64Array): Float64Array | null => {
    const out = new Float64Array(rowCount * n);
    for (let j = 0; j < n; j++) {
      const h = DIFFERENCE_STEP * sizeOf(p, j);
      const moved = Float64Array.from(p);
      moved[j] = p[j] + h;
      const above = evaluate(moved);
      const up = moved[j];
      moved[j] = p[j] - h;
      const below = evaluate(moved);
      const span = up - moved[j];
      if (above.cost === Infinity || below.cost === Infinity) return null;
      for (let i = 0; i < rowCount; i++) out[i * n + j] = (above.rows[i] - below.rows[i]) / span;
    }
    return out;
  };

  const linearise = (p: Float64Array, at: Evaluation): Linearised | null => {
    const matrix = jacobian(p);
    if (matrix === null) return null;
    const root = rootWeights(at.rows);
    const right = at.rows.map((r, i) => -r * root[i]);
    for (let i = 0; i < rowCount; i++) {
      for (let j = 0; j < n; j++) matrix[i * n + j] *= root[i];
    }
    return triangleInParameterOrder(matrix, right, rowCount, n);
  };

  const conclude = (
    p: Float64Array,
    at: Evaluation,
    iterations: number,
  ): Outcome<LevenbergMarquardtFit, LevenbergMarquardtFailure> => {
    const matrix = jacobian(p);
    if (matrix === null) return failed('parameters-not-determined', { iterations });
    const root = rootWeights(at.rows);
    let weightSum = 0;
    let squares = 0;
    for (let i = 0; i < dataCount; i++) {
      weightSum += root[i] ** 2;
      squares += (root[i] * at.rows[i]) ** 2;
    }
    const freedom = Math.max(weightSum + priors.length - n, 1);
    const estimated = (options.residualSdIs ?? 'estimated') === 'estimated';
    const scale = estimated && squares > 0 ? Math.sqrt(squares / freedom) : 1;
    for (let i = 0; i < rowCount; i++) {
      // Priors keep their own sd: only the pictures' residuals are rescaled.
      const factor = i < dataCount ? root[i] / scale : 1;
      for (let j = 0; j < n; j++) matrix[i * n + j] *= factor;
    }
    const inverse = solveLeastSquares(matrix, new Float64Array(rowCount), rowCount, n);
    if (inverse.rank < n) {
      return failed('parameters-not-determined', { rank: inverse.rank, parameters: n });
    }
    return succeeded({
      parameters: p,
      covariance: inverse.unscaledCovariance,
      residualRms: weightSum > 0 ? sd * Math.sqrt(squares / weightSum) : 0,
      weights: root.slice(0, dataCount).map((w) => w * w),
      iterations,
    });
  };

  return { n, rowCount, evaluate, linearise, conclude, sizeOf };
}

/** The small problem that has the same steps as the tall one: ‖R·s − Qᵀ(−r)‖. */
function triangleInParameterOrder(
  matrix: Float64Array,
  right: Float64Array,
  m: number,
  n: number,
): Linearised {
  const qr = factorQr(matrix, right, m, n);
  const triangle = new Float64Array(n * n);
  for (let k = 0; k < n; k++) {
    const column = qr.order[k];
    for (let i = 0; i <= Math.min(k, m - 1); i++) {
      triangle[i * n + column] = qr.columns[k * m + i] * qr.columnLength[column];
    }
  }
  return { triangle, right: qr.rotated.slice(0, n) };
}
