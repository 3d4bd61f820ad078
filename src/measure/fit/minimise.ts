/**
 * Minimum of a smooth function of a few variables: BFGS with one-sided differences and
 * backtracking. Source: Nocedal & Wright, Numerical Optimization, ch. 6 (from memory).
 */
export interface Minimum {
  readonly point: Float64Array;
  readonly value: number;
  readonly iterations: number;
  readonly converged: boolean;
}

/** Step of the differences, as a share of each variable's own size. */
const DIFFERENCE_SHARE = 1e-3;
/** Armijo's constant: share of the promised fall that a step must bring. */
const SUFFICIENT_FALL = 1e-4;
const MAX_HALVINGS = 12;

/**
 * @param sizes typical change of each variable; the search starts as if these were the minimum's
 *   half widths. The function may return Infinity outside its domain.
 * @param fallTolerance a step that gains less than this ends the search, in the function's unit.
 */
export function minimise(
  evaluate: (point: Float64Array) => number,
  start: Float64Array,
  sizes: Float64Array,
  fallTolerance: number,
  maxIterations: number,
): Minimum {
  const n = start.length;
  // Work in units of `sizes`.
  const point = new Float64Array(n);
  const toOuter = (u: Float64Array): Float64Array => u.map((x, j) => start[j] + x * sizes[j]);
  const at = (u: Float64Array): number => {
    const value = evaluate(toOuter(u));
    return Number.isFinite(value) ? value : Infinity;
  };
  const gradientAt = (u: Float64Array, value: number): Float64Array => {
    const g = new Float64Array(n);
    const moved = Float64Array.from(u);
    for (let j = 0; j < n; j++) {
      moved[j] = u[j] + DIFFERENCE_SHARE;
      g[j] = (at(moved) - value) / DIFFERENCE_SHARE;
      moved[j] = u[j];
    }
    return g;
  };
  let value = at(point);
  let gradient = gradientAt(point, value);
  const inverse = identity(n);
  for (let iteration = 1; iteration <= maxIterations; iteration++) {
    let direction = multiply(inverse, gradient, n).map((x) => -x);
    let slope = dot(direction, gradient);
    if (!(slope < 0)) {
      inverse.set(identity(n));
      direction = gradient.map((x) => -x);
      slope = dot(direction, gradient);
    }
    const longest = Math.max(...direction.map(Math.abs));
    let length = Math.min(1, MAX_STEP / (longest || 1));
    let next = point;
    let nextValue = Infinity;
    for (let k = 0; k < MAX_HALVINGS; k++) {
      next = point.map((x, j) => x + length * direction[j]);
      nextValue = at(next);
      if (nextValue <= value + SUFFICIENT_FALL * length * slope) break;
      length /= k < 3 ? 2 : 4;
    }
    const fall = value - nextValue;
    if (!(fall >= 0))
      return { point: toOuter(point), value, iterations: iteration, converged: true };
    const moved = next.map((x, j) => x - point[j]);
    point.set(next);
    value = nextValue;
    if (fall < fallTolerance) {
      return { point: toOuter(point), value, iterations: iteration, converged: true };
    }
    const nextGradient = gradientAt(point, value);
    const bend = nextGradient.map((x, j) => x - gradient[j]);
    updateInverse(inverse, moved, bend, n, iteration === 1);
    gradient = nextGradient;
  }
  return { point: toOuter(point), value, iterations: maxIterations, converged: false };
}

/** Longest step in units of the variables' sizes: keeps the first ones from running off. */
const MAX_STEP = 3;

function updateInverse(
  inverse: Float64Array,
  s: Float64Array,
  y: Float64Array,
  n: number,
  first: boolean,
): void {
  const sy = dot(s, y);
  if (!(sy > 1e-12)) return;
  if (first) {
    // Scale the starting guess to the curvature just seen.
    const factor = sy / dot(y, y);
    inverse.set(identity(n).map((x) => x * factor));
  }
  const hy = multiply(inverse, y, n);
  const yhy = dot(y, hy);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      inverse[i * n + j] += ((1 + yhy / sy) * s[i] * s[j] - hy[i] * s[j] - s[i] * hy[j]) / sy;
    }
  }
}

function identity(n: number): Float64Array {
  const a = new Float64Array(n * n);
  for (let i = 0; i < n; i++) a[i * n + i] = 1;
  return a;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

function multiply(a: Float64Array, x: Float64Array, n: number): Float64Array {
  const out = new Float64Array(n);
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) out[i] += a[i * n + j] * x[j];
  return out;
}
