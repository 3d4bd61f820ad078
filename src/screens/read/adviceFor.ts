import type { Weight } from '../../contract/reading.ts';
import { GRAMS_PER_OUNCE } from '../../quantities/units.ts';
import { formatClock, formatClockAndDeg, formatKnownMass, formatMass } from '../words/numbers.ts';
import type { FigureText, MassUnit } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import type { ReadingSummary } from './readingSummary.ts';

/** What stands in large letters over a reading: how much, where, and the next thing to do. */
export interface ReadingAdvice {
  /** "at most" where only an upper bound is known, else null. */
  readonly before: string | null;
  readonly figure: FigureText;
  readonly where: string;
  readonly next: string;
}

export function adviceFor(
  summary: ReadingSummary,
  weightStepG: number,
  unit: MassUnit,
): ReadingAdvice {
  return summary.spots === null
    ? unplacedAdvice(summary, weightStepG, unit)
    : placedAdvice(summary, summary.spots.lightDeg, weightStepG, unit);
}

/** No side is clearly heavy: only the upper end of the range is a fact. */
function unplacedAdvice(
  summary: ReadingSummary,
  weightStepG: number,
  unit: MassUnit,
): ReadingAdvice {
  const atMostG = summary.amountRangeG[1];
  return {
    before: words.reading.atMost,
    figure: atMostFigure(atMostG, unit),
    where: words.reading.noClearSide,
    next:
      atMostG <= weightStepG
        ? words.reading.balancedNext(formatKnownMass(weightStepG, unit))
        : words.reading.unsureNext,
  };
}

function placedAdvice(
  summary: ReadingSummary,
  lightDeg: number,
  weightStepG: number,
  unit: MassUnit,
): ReadingAdvice {
  const { weights } = summary;
  return {
    before: null,
    figure: formatMass(summary.amountG, unit, summary.amountPlusMinusG),
    where: whereText(weights, lightDeg),
    next:
      weights.length === 0
        ? words.reading.nothingNext(formatKnownMass(weightStepG, unit))
        : nextText(weights, unit),
  };
}

function whereText(weights: readonly Weight[], lightDeg: number): string {
  const [only] = weights;
  if (only === undefined || weights.some((weight) => weight.massG < 0)) {
    return words.reading.lightAt(formatClockAndDeg(lightDeg));
  }
  if (weights.length === 2) {
    const clocks = weights.map((weight) => formatClock(weight.angleDeg));
    return words.reading.stickOn(clocks.join(words.reading.and));
  }
  if (weights.length > 2) return words.reading.stickOnSeveral(weights.length);
  return words.reading.stickOn(formatClockAndDeg(only.angleDeg));
}

function nextText(weights: readonly Weight[], unit: MassUnit): string {
  const [only] = weights;
  if (only !== undefined && weights.length === 1) {
    const mass = formatKnownMass(Math.abs(only.massG), unit);
    const clock = formatClock(only.angleDeg);
    return only.massG < 0
      ? words.reading.takeOffNext(mass, clock)
      : words.reading.stickOneNext(mass);
  }
  return words.reading.stickSeveralNext(weightList(weights, unit));
}

/** "20 g at 8:00 and 10 g at 9:00" */
export function weightList(weights: readonly Weight[], unit: MassUnit): string {
  return weights
    .map((weight) => {
      const mass = formatKnownMass(Math.abs(weight.massG), unit);
      const clock = formatClock(weight.angleDeg);
      return weight.massG < 0
        ? words.reading.takeOffInList(mass, clock)
        : words.reading.placeInList(mass, clock);
    })
    .join(words.reading.and);
}

/** An upper bound is rounded up, so that it stays one. */
export function atMostFigure(atMostG: number, unit: MassUnit): FigureText {
  // Whole grams, or hundredths of an ounce (0.28 g): finer than the bound is known.
  const stepsPerG = unit === 'g' ? 1 : 100 / GRAMS_PER_OUNCE;
  const roundedUpG = Math.ceil(atMostG * stepsPerG - 1e-9) / stepsPerG;
  const text = formatKnownMass(roundedUpG, unit);
  const [figure = text] = text.split('\u00a0');
  return { figure, unit, plusMinus: null, text };
}
