import type { Weight } from '../../contract/reading.ts';
import { GRAMS_PER_OUNCE } from '../../quantities/units.ts';
import {
  formatClock,
  formatClockAndDeg,
  formatKnownMass,
  formatMass,
  knownFigure,
} from '../words/numbers.ts';
import type { FigureText, Units } from '../words/numbers.ts';
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
  units: Units,
): ReadingAdvice {
  return summary.spots === null
    ? unplacedAdvice(summary, weightStepG, units)
    : placedAdvice(summary, summary.spots.lightDeg, weightStepG, units);
}

/** No side is clearly heavy: only the upper end of the range is a fact. */
function unplacedAdvice(summary: ReadingSummary, weightStepG: number, units: Units): ReadingAdvice {
  const atMostG = summary.amountRangeG[1];
  return {
    before: words.reading.atMost,
    figure: atMostFigure(atMostG, units),
    where: words.reading.noClearSide,
    next:
      atMostG <= weightStepG
        ? words.reading.balancedNext(formatKnownMass(weightStepG, units))
        : words.reading.unsureNext,
  };
}

function placedAdvice(
  summary: ReadingSummary,
  lightDeg: number,
  weightStepG: number,
  units: Units,
): ReadingAdvice {
  const { weights } = summary;
  return {
    before: null,
    figure: formatMass(summary.amountG, units, summary.amountPlusMinusG),
    where: whereText(weights, lightDeg),
    next:
      weights.length === 0
        ? words.reading.nothingNext(formatKnownMass(weightStepG, units))
        : nextText(weights, units),
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

function nextText(weights: readonly Weight[], units: Units): string {
  const [only] = weights;
  if (only !== undefined && weights.length === 1) {
    const mass = formatKnownMass(Math.abs(only.massG), units);
    const clock = formatClock(only.angleDeg);
    return only.massG < 0
      ? words.reading.takeOffNext(mass, clock)
      : words.reading.stickOneNext(mass);
  }
  return words.reading.stickSeveralNext(weightList(weights, units));
}

/** "20 g at 8:00 and 10 g at 9:00" */
export function weightList(weights: readonly Weight[], units: Units): string {
  return weights
    .map((weight) => {
      const mass = formatKnownMass(Math.abs(weight.massG), units);
      const clock = formatClock(weight.angleDeg);
      return weight.massG < 0
        ? words.reading.takeOffInList(mass, clock)
        : words.reading.placeInList(mass, clock);
    })
    .join(words.reading.and);
}

/** An upper bound is rounded up, so that it stays one. */
export function atMostFigure(atMostG: number, units: Units): FigureText {
  // Whole grams, or hundredths of an ounce (0.28 g): finer than the bound is known.
  const stepsPerG = units === 'metric' ? 1 : 100 / GRAMS_PER_OUNCE;
  const roundedUpG = Math.ceil(atMostG * stepsPerG - 1e-9) / stepsPerG;
  return knownFigure('weight', roundedUpG, units);
}
