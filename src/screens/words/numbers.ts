import { wrapTurnDeg } from '../../quantities/angle.ts';
import { gramsToOunces } from '../../quantities/units.ts';
import { roundTo, roundToPlusMinus } from './roundToPlusMinus.ts';

/** The one place where a figure becomes something to read: rounding, unit, ±, sign, spaces. */

export type MassUnit = 'g' | 'oz';

/** Thin enough not to part figure and unit, and never broken over two lines. */
const NO_BREAK_SPACE = '\u00a0';
const MINUS = '\u2212';

/** A tenth of a gram, a hundredth of an ounce (0.3 g): below what any stand can tell. */
const FINEST_MASS_DECIMALS: Readonly<Record<MassUnit, number>> = { g: 1, oz: 2 };
const FINEST_MM_DECIMALS = 2;

/** A figure in its pieces, so that a screen can set the number large and the rest small. */
export interface FigureText {
  readonly figure: string;
  readonly unit: string;
  /** Written ±, without the sign; null when there is none. */
  readonly plusMinus: string | null;
  /** The whole on one line: "28 g ± 1". */
  readonly text: string;
}

/** Plain decimal digits with a real minus sign; `locale` is where a second language will plug in. */
export function formatNumber(value: number, decimals: number, locale = 'en'): string {
  const digits = new Intl.NumberFormat(locale, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
    useGrouping: false,
  }).format(roundTo(value, decimals));
  return digits.replace('-', MINUS);
}

/** A measured mass; `massG` and its 95 % half width `plusMinusG` in grams, shown in `unit`. */
export function formatMass(massG: number, unit: MassUnit, plusMinusG?: number): FigureText {
  const convert = unit === 'oz' ? gramsToOunces : (grams: number) => grams;
  return measured(
    convert(massG),
    plusMinusG === undefined ? null : convert(plusMinusG),
    unit,
    FINEST_MASS_DECIMALS[unit],
  );
}

/** A known mass, such as a weight's own: as many decimals as it has, at most the finest ones. */
export function formatKnownMass(massG: number, unit: MassUnit): string {
  const value = unit === 'oz' ? gramsToOunces(massG) : massG;
  return `${shortest(value, FINEST_MASS_DECIMALS[unit])}${NO_BREAK_SPACE}${unit}`;
}

/** A length in millimetres. */
export function formatMm(lengthMm: number, plusMinusMm?: number): FigureText {
  return measured(lengthMm, plusMinusMm ?? null, 'mm', FINEST_MM_DECIMALS);
}

/** A lean in milliradians, to a tenth: its own ± is seldom better. */
export function formatMrad(leanMrad: number): string {
  return `${formatNumber(leanMrad, 1)}${NO_BREAK_SPACE}mrad`;
}

/** Whole degrees with the sign directly behind, as a compass has them: "255°". */
export function formatDeg(angleDeg: number): string {
  return `${formatNumber(wholeTurnDeg(angleDeg), 0)}°`;
}

/** "± 2°": half the width of an angle's 95 % range, never written as 0. */
export function formatPlusMinusDeg(halfWidthDeg: number): string {
  const rounded = roundToPlusMinus(0, halfWidthDeg, 0);
  return `±${NO_BREAK_SPACE}${formatNumber(Math.max(rounded.plusMinus, 1), 0)}°`;
}

const MINUTES_PER_DEG = 2;
const MINUTES_ON_THE_DIAL = 720;

/**
 * Wheel angle as a clock position, 12 at the valve and 30 degrees an hour: 255° is "8:30".
 * Written to five minutes (2.5°), which is about as well as a hand can place a weight.
 */
export function formatClock(angleDeg: number, stepMinutes = 5): string {
  const exact = wrapTurnDeg(angleDeg) * MINUTES_PER_DEG;
  const minutes = (Math.round(exact / stepMinutes) * stepMinutes) % MINUTES_ON_THE_DIAL;
  const hour = Math.floor(minutes / 60) || 12;
  return `${hour}:${String(minutes % 60).padStart(2, '0')}`;
}

/** "8:30 · 255°" */
export function formatClockAndDeg(angleDeg: number): string {
  return `${formatClock(angleDeg)}${NO_BREAK_SPACE}·${NO_BREAK_SPACE}${formatDeg(angleDeg)}`;
}

/** A turning speed, degrees a second, its sign left to words. */
export function formatDegPerS(turningDegPerS: number): string {
  return `${formatNumber(Math.abs(turningDegPerS), 0)}°/s`;
}

/** A share from 0 to 1 as "40 %"; never 100 before it is all. */
export function formatShare(fraction: number): string {
  const percent = fraction >= 1 ? 100 : Math.min(99, Math.floor(fraction * 100));
  return `${formatNumber(Math.max(percent, 0), 0)}${NO_BREAK_SPACE}%`;
}

export function formatSeconds(timeS: number): string {
  return `${formatNumber(timeS, 1)}${NO_BREAK_SPACE}s`;
}

function measured(
  value: number,
  plusMinus: number | null,
  unit: string,
  finestDecimals: number,
): FigureText {
  if (plusMinus === null) {
    const figure = formatNumber(value, finestDecimals);
    return { figure, unit, plusMinus: null, text: `${figure}${NO_BREAK_SPACE}${unit}` };
  }
  const rounded = roundToPlusMinus(value, plusMinus, finestDecimals);
  const figure = formatNumber(rounded.value, rounded.decimals);
  const spread = formatNumber(rounded.plusMinus, rounded.decimals);
  const text = `${figure}${NO_BREAK_SPACE}${unit}${NO_BREAK_SPACE}±${NO_BREAK_SPACE}${spread}`;
  return { figure, unit, plusMinus: spread, text };
}

function shortest(value: number, finestDecimals: number): string {
  for (let decimals = 0; decimals < finestDecimals; decimals++) {
    // Half of the last digit shown is the most that may be lost without a further decimal.
    if (Math.abs(value - roundTo(value, decimals)) < 0.5 * 10 ** -finestDecimals) {
      return formatNumber(value, decimals);
    }
  }
  return formatNumber(value, finestDecimals);
}

/** 359.7° rounds to 0°, not to 360°. */
function wholeTurnDeg(angleDeg: number): number {
  return wrapTurnDeg(Math.round(wrapTurnDeg(angleDeg)));
}
