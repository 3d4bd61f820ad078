/** A value and its ± cut to the digits that the ± allows. */
export interface RoundedFigure {
  readonly value: number;
  readonly plusMinus: number;
  /** Decimals with which both are written. */
  readonly decimals: number;
}

/**
 * How much of the ± may be cut away by rounding it, as a share of its last digit. With a quarter,
 * a ± written with one digit is never more than a fifth smaller than the real one (1.25 → 1).
 */
const CUT_OF_LAST_DIGIT = 0.25;

/** Guards against 0.30000000000000004 being rounded up to 0.4; relative, far below any ± shown. */
const FLOATING_POINT_SLACK = 1e-9;

/**
 * Writes the ± with one digit and the value down to the same place, never finer than
 * `finestDecimals` and never coarser than whole units.
 *
 * 28.13 ± 0.94 → 28 ± 1; 28.13 ± 0.46 → 28.1 ± 0.5.
 */
export function roundToPlusMinus(
  value: number,
  plusMinus: number,
  finestDecimals: number,
): RoundedFigure {
  if (!Number.isFinite(plusMinus) || plusMinus <= 0) {
    return { value: roundTo(value, finestDecimals), plusMinus: 0, decimals: finestDecimals };
  }
  const rounded = oneDigit(plusMinus);
  const decimals = clamp(
    -Math.floor(Math.log10(rounded) + FLOATING_POINT_SLACK),
    0,
    finestDecimals,
  );
  const smallestShown = 10 ** -decimals;
  return {
    value: roundTo(value, decimals),
    plusMinus: Math.max(roundTo(rounded, decimals), smallestShown),
    decimals,
  };
}

function oneDigit(plusMinus: number): number {
  const step = 10 ** Math.floor(Math.log10(plusMinus));
  return Math.ceil(plusMinus / step - CUT_OF_LAST_DIGIT - FLOATING_POINT_SLACK) * step;
}

export function roundTo(value: number, decimals: number): number {
  const factor = 10 ** decimals;
  const rounded = Math.round(value * factor) / factor;
  return rounded === 0 ? 0 : rounded;
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}
