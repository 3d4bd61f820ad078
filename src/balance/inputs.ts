import { failed } from '../contract/outcome.ts';
import type { PlaneCovariance, PlaneVector } from '../quantities/vector.ts';
import type { BalanceFailed } from './failures.ts';

/**
 * The door of every function here: a number outside its range, NaN and ±Infinity among them,
 * becomes a named reason. The ranges are wide on purpose (a rotor of tonnes and a toy of grams
 * both pass): they only keep the arithmetic finite. What a person may enter is bounded more
 * tightly by the setup's schema.
 */
export interface NumberRange {
  readonly low: number;
  readonly high: number;
}

/** A quantity that must be there: squares and quotients of such stay far from under- and overflow. */
export const POSITIVE: NumberRange = { low: 1e-9, high: 1e9 };
/** A quantity that may be nothing. */
export const NOT_NEGATIVE: NumberRange = { low: 0, high: 1e9 };
/** A quantity of either sign. */
export const SIGNED: NumberRange = { low: -1e9, high: 1e9 };
/** Any direction, unwrapped: some thousand turns either way, still exact to 1e-9 degrees. */
export const DIRECTION_DEG: NumberRange = { low: -1e6, high: 1e6 };
/** A share of one: relative standard errors and the like. */
export const FRACTION: NumberRange = { low: 0, high: 1 };

export type NamedNumbers = Readonly<Record<string, readonly [number, NumberRange]>>;

/** The first value that lies outside its range as a failure, or null when all are sound. */
export function rejectNumbers(values: NamedNumbers): BalanceFailed | null {
  for (const [quantity, [value, range]] of Object.entries(values)) {
    if (!(value >= range.low && value <= range.high)) {
      return failed('input-out-of-range', {
        quantity,
        value: String(value),
        low: range.low,
        high: range.high,
      });
    }
  }
  return null;
}

/** As {@link rejectNumbers} for the components of vectors; `quantity` is the name given. */
export function rejectVectors(
  vectors: Readonly<Record<string, PlaneVector>>,
): BalanceFailed | null {
  for (const [quantity, v] of Object.entries(vectors)) {
    const bad = rejectNumbers({
      [`${quantity} along 0°`]: [v.along0, SIGNED],
      [`${quantity} along 90°`]: [v.along90, SIGNED],
    });
    if (bad) return bad;
  }
  return null;
}

/** Largest variance taken in: the square of the largest quantity. */
const VARIANCE_MAX = 1e18;
/** Rounding allowed when symmetry and definiteness are checked, relative to the larger variance. */
const COVARIANCE_ROUNDING = 1e-9;

/** A covariance must be finite, symmetric and positive semidefinite (zero is allowed). */
export function rejectCovariances(
  covariances: Readonly<Record<string, PlaneCovariance>>,
): BalanceFailed | null {
  for (const [quantity, [[c00, c01], [c10, c11]]] of Object.entries(covariances)) {
    const largest = Math.max(c00, c11);
    const slack = COVARIANCE_ROUNDING * largest;
    const sound =
      c00 >= 0 &&
      c11 >= 0 &&
      largest <= VARIANCE_MAX &&
      Math.abs(c01 - c10) <= slack &&
      Math.abs(c01) <= Math.sqrt(c00 * c11) + slack;
    if (!sound) return failed('covariance-invalid', { quantity });
  }
  return null;
}
