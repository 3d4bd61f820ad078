import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import { leastSquaresCoefficients } from './leastSquares.ts';
import {
  poseProblem,
  type Evaluation,
  type LevenbergMarquardtFailure,
  type LevenbergMarquardtFit,
  type LevenbergMarquardtOptions,
  type Linearised,
} from './leastSquaresProblem.ts';

export type {
  LevenbergMarquardtFailure,
  LevenbergMarquardtFit,
  LevenbergMarquardtOptions,
  ParameterPrior,
} from './leastSquaresProblem.ts';

/** Ways from a start to its minimum are short in this program; more means it runs off. */
const MAX_ITERATIONS = 100;
/** A step whose parts are all below this share of the parameter's size changes nothing: the default. */
const STEP_TOLERANCE = 1e-9;
/** A fall in cost below this share of the cost is rounding. */
const COST_TOLERANCE = 1e-13;
/** First damping, as a share of the squared column length; small: starts are near the minimum. */
const FIRST_DAMPING = 1e-3;
/** Damping at which a step is so short that nothing more can be gained. */
const LAST_DAMPING = 1e12;
/**
 * Non-linear least squares: minimises Σ ρ(rᵢ(p)/σ) + Σ ((pⱼ − meanⱼ)/sdⱼ)² over the parameters p.
 *
 * Levenberg–Marquardt with Marquardt's scaling by column length, central differences, and
 * reweighting for a robust ρ. Source: Marquardt 1963; Moré 1978 for the never-shrinking column
 * scales (both from memory).
 *
 * @param residuals gives the residuals at p; it may hand back the same array each time. A residual
 *   that is not finite makes the step that led there be taken back.
 * @param start first guess, length n; not changed.
 * @throws RangeError when `residuals` changes its length or an option does not fit.
 */
export function levenbergMarquardt(
  residuals: (parameters: Float64Array) => ArrayLike<number>,
  start: ArrayLike<number>,
  options: LevenbergMarquardtOptions = {},
): Outcome<LevenbergMarquardtFit, LevenbergMarquardtFailure> {
  const problem = poseProblem(residuals, start, options);
  const found = minimumOf(problem, start, options);
  if (!found.ok) return found;
  const { parameters, at, iterations } = found.value;
  return problem.conclude(parameters, at, iterations);
}

/** The parameters alone, for a place on the way: no covariance, which costs as much as a step. */
export function leastSquaresMinimum(
  residuals: (parameters: Float64Array) => ArrayLike<number>,
  start: ArrayLike<number>,
  options: LevenbergMarquardtOptions = {},
): Outcome<Float64Array, LevenbergMarquardtFailure> {
  const found = minimumOf(poseProblem(residuals, start, options), start, options);
  return found.ok ? succeeded(found.value.parameters) : found;
}

interface Minimum {
  readonly parameters: Float64Array;
  readonly at: Evaluation;
  readonly iterations: number;
}

function minimumOf(
  problem: ReturnType<typeof poseProblem>,
  start: ArrayLike<number>,
  options: LevenbergMarquardtOptions,
): Outcome<Minimum, LevenbergMarquardtFailure> {
  const { n } = problem;
  const tolerance = options.stepTolerance ?? STEP_TOLERANCE;
  const parameters = Float64Array.from(start);
  let current = problem.evaluate(parameters);
  if (!Number.isFinite(current.cost)) return failed('start-not-finite');
  if (problem.rowCount < n) {
    return failed('too-few-residuals', { residuals: problem.rowCount, parameters: n });
  }
  const columnScale = new Float64Array(n);
  let damping = FIRST_DAMPING;
  const limit = options.maxIterations ?? MAX_ITERATIONS;
  for (let iteration = 1; iteration <= limit; iteration++) {
    const linear = problem.linearise(parameters, current);
    if (linear === null) return failed('parameters-not-determined', { iteration });
    growScales(columnScale, linear.triangle, n);
    let settled = false;
    for (;;) {
      const step = dampedStep(linear, columnScale, damping, n);
      const trial = parameters.map((p, j) => p + step[j]);
      const next = problem.evaluate(trial);
      const small = step.every((s, j) => Math.abs(s) <= tolerance * problem.sizeOf(trial, j));
      const gain = current.cost - next.cost;
      if (gain >= 0) {
        settled = small || gain <= COST_TOLERANCE * current.cost;
        parameters.set(trial);
        current = next;
        damping = Math.max(damping / 10, 1e-15);
        break;
      }
      if (small || damping > LAST_DAMPING) {
        settled = true;
        break;
      }
      damping *= damping < 1e-6 ? 100 : 5;
    }
    if (settled) return succeeded({ parameters, at: current, iterations: iteration });
  }
  return failed('no-convergence', { iterations: limit, cost: current.cost });
}

/** Moré's rule: a column's scale never shrinks, so that the damping keeps its meaning. */
function growScales(scale: Float64Array, triangle: Float64Array, n: number): void {
  for (let j = 0; j < n; j++) {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += triangle[i * n + j] ** 2;
    scale[j] = Math.max(scale[j], Math.sqrt(sum));
  }
}

function dampedStep(
  linear: Linearised,
  scale: Float64Array,
  damping: number,
  n: number,
): Float64Array {
  const rows = new Float64Array(2 * n * n);
  rows.set(linear.triangle);
  const right = new Float64Array(2 * n);
  right.set(linear.right);
  const root = Math.sqrt(damping);
  for (let j = 0; j < n; j++) rows[(n + j) * n + j] = root * (scale[j] || 1);
  return leastSquaresCoefficients(rows, right, 2 * n, n);
}
