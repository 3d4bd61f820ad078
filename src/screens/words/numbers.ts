import { wrapTurnDeg } from '../../quantities/angle.ts';
import { displayUnit, type Quantity, type Units } from './displayUnits.ts';
import { roundTo, roundToPlusMinus } from './roundToPlusMinus.ts';
import { language } from './words.ts';

/**
 * The one place where a figure becomes something to read, and typed text a figure: rounding, unit,
 * ±, sign, spaces, the language's decimal mark. What goes in and comes out is metric.
 */

export type { Quantity, Units } from './displayUnits.ts';

/** Thin enough not to part figure and unit, and never broken over two lines. */
const NO_BREAK_SPACE = '\u00a0';
const MINUS = '\u2212';

/** A figure in its pieces, so that a screen can set the number large and the rest small. */
export interface FigureText {
  readonly figure: string;
  readonly unit: string;
  /** Written ±, without the sign; null when there is none. */
  readonly plusMinus: string | null;
  /** The whole on one line: "28 g ± 1". */
  readonly text: string;
}

/** Plain digits with a real minus sign and the decimal mark of the language in use. */
export function formatNumber(value: number, decimals: number): string {
  const digits = new Intl.NumberFormat(language, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
    useGrouping: false,
  }).format(roundTo(value, decimals));
  return digits.replace('-', MINUS);
}

/** A measured figure in the units asked for; `plusMinus` is its 95 % half width, metric as well. */
export function formatFigure(
  quantity: Quantity,
  value: number,
  units: Units,
  plusMinus?: number,
): FigureText {
  const { name, size, finestDecimals } = displayUnit(quantity, units);
  return measured(
    value / size,
    plusMinus === undefined ? null : plusMinus / size,
    name,
    finestDecimals,
  );
}

/** A value known without a ±, such as a weight's own mass: no more decimals than it has. */
export const formatKnown = (quantity: Quantity, value: number, units: Units): string =>
  knownFigure(quantity, value, units).text;

/** A measured mass of weights, g or oz. */
export const formatMass = (massG: number, units: Units, plusMinusG?: number): FigureText =>
  formatFigure('weight', massG, units, plusMinusG);

/** "± 1.2 g": the half width of a 95 % range alone, to two digits and never written as 0. */
export function formatPlusMinus(quantity: Quantity, halfWidth: number, units: Units): string {
  const { name, size, finestDecimals } = displayUnit(quantity, units);
  const shown = Math.max(halfWidth / size, 10 ** -finestDecimals);
  const decimals = Math.min(Math.max(1 - Math.floor(Math.log10(shown)), 0), finestDecimals);
  return `±${NO_BREAK_SPACE}${withUnit(formatNumber(shown, decimals), name)}`;
}

/** The same in its pieces. */
export function knownFigure(quantity: Quantity, value: number, units: Units): FigureText {
  const { name, size, finestDecimals } = displayUnit(quantity, units);
  const figure = shortest(value / size, finestDecimals);
  return { figure, unit: name, plusMinus: null, text: withUnit(figure, name) };
}

/** A known mass of weights: "30 g", "0.25 oz". */
export const formatKnownMass = (massG: number, units: Units): string =>
  formatKnown('weight', massG, units);

/** A measured length, mm or in. */
export const formatLength = (lengthMm: number, units: Units, plusMinusMm?: number): FigureText =>
  formatFigure('length', lengthMm, units, plusMinusMm);

/** What stands in a field for a value, and behind the field. */
export function fieldText(quantity: Quantity, value: number, units: Units): string {
  const { size, finestDecimals } = displayUnit(quantity, units);
  return shortest(value / size, finestDecimals).replace(MINUS, '-');
}

/** The next value when a field's plus (1) or minus (−1) is pressed: on the grid of its steps. */
export function steppedValue(
  quantity: Quantity,
  value: number,
  units: Units,
  direction: 1 | -1,
  stepShown: number = displayUnit(quantity, units).step,
): number {
  const { size } = displayUnit(quantity, units);
  const steps = value / size / stepShown;
  const next =
    direction > 0 ? Math.floor(steps + STEP_SLACK) + 1 : Math.ceil(steps - STEP_SLACK) - 1;
  return next * stepShown * size;
}

/** The nearest value on the grid of a field's steps: whole millimetres, twentieths of an inch. */
export function roundedToStep(quantity: Quantity, value: number, units: Units): number {
  const { size, step } = displayUnit(quantity, units);
  return Math.round(value / size / step) * step * size;
}

/** A value this near to a step counts as standing on it, in steps. */
const STEP_SLACK = 1e-6;

export const unitName = (quantity: Quantity, units: Units): string =>
  displayUnit(quantity, units).name;

/** A number as people type it, with a point or a comma; null when it is none. */
export function parseTyped(text: string): number | null {
  const trimmed = text.trim().replace(',', '.').replace(MINUS, '-');
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(trimmed)) return null;
  return Number(trimmed);
}

/** What was typed in the units shown, in the program's own unit. */
export function parseTypedIn(quantity: Quantity, text: string, units: Units): number | null {
  const shown = parseTyped(text);
  return shown === null ? null : shown * displayUnit(quantity, units).size;
}

/** A lean in milliradians: to a tenth, or with its 95 % range as whole as that is. */
export function formatMrad(leanMrad: number, plusMinusMrad?: number): string {
  const decimals = plusMinusMrad === undefined || plusMinusMrad < 1 ? 1 : 0;
  const lean = `${formatNumber(leanMrad, decimals)}${NO_BREAK_SPACE}mrad`;
  return plusMinusMrad === undefined
    ? lean
    : `${lean}${NO_BREAK_SPACE}±${NO_BREAK_SPACE}${formatNumber(plusMinusMrad, decimals)}`;
}

/** Whole degrees with the sign directly behind, as a compass has them: "255°". */
export function formatDeg(angleDeg: number): string {
  return `${formatNumber(wholeTurnDeg(angleDeg), 0)}°`;
}

/** "395°": how far something was turned, which may be more than once round. */
export function formatTurned(turnedDeg: number): string {
  return `${formatNumber(turnedDeg, 0)}°`;
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
  // 0.29 · 100 is a little less than 29 in binary.
  const percent = fraction >= 1 ? 100 : Math.min(99, Math.floor(fraction * 100 + 1e-9));
  return `${formatNumber(Math.max(percent, 0), 0)}${NO_BREAK_SPACE}%`;
}

/** A moment in the logbook: "25 Nov 2026, 14:05", in the language and the place's own time. */
export function formatMoment(instant: string): string {
  return new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeStyle: 'short' }).format(
    new Date(instant),
  );
}

/** The day alone. */
export function formatDay(instant: string): string {
  return new Intl.DateTimeFormat(language, { dateStyle: 'medium' }).format(new Date(instant));
}

export function formatSeconds(timeS: number): string {
  return `${formatNumber(timeS, 1)}${NO_BREAK_SPACE}s`;
}

/** Degrees stand directly behind their figure, all other units after a space. */
function withUnit(figure: string, unit: string): string {
  if (unit === '' || unit === '°') return figure + unit;
  return `${figure}${NO_BREAK_SPACE}${unit}`;
}

function measured(
  value: number,
  plusMinus: number | null,
  unit: string,
  finestDecimals: number,
): FigureText {
  if (plusMinus === null) {
    const figure = formatNumber(value, finestDecimals);
    return { figure, unit, plusMinus: null, text: withUnit(figure, unit) };
  }
  const rounded = roundToPlusMinus(value, plusMinus, finestDecimals);
  const figure = formatNumber(rounded.value, rounded.decimals);
  const spread = formatNumber(rounded.plusMinus, rounded.decimals);
  const text = `${withUnit(figure, unit)}${NO_BREAK_SPACE}±${NO_BREAK_SPACE}${spread}`;
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
