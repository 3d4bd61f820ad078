import { compareByEye, type EyeReading } from '../../balance/byEye.ts';
import type { AcceptedReading } from '../../contract/reading.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import { vectorFromPolar } from '../../quantities/vector.ts';
import type { PracticeState, PracticeSweep } from '../../session/practice/practiceRoom.ts';
import { readingSummary } from '../read/readingSummary.ts';
import { formatClockAndDeg, formatDeg, formatMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { readingAsItCame } from './readingAsItCame.ts';

export interface PracticeOutcomeProps {
  readonly state: PracticeState;
  readonly sweep: PracticeSweep;
  readonly units: Units;
}

/** What the last sweep said, largest of all; how the guess by eye compares, and what it was before. */
export function PracticeOutcome({ state, sweep, units }: PracticeOutcomeProps) {
  const { reading } = sweep.result;
  if (reading.status === 'refused') {
    const { cause, remedy } = words.notices[reading.refusals[0]!.code];
    return (
      <section className="group" data-role="practice-refused">
        <h2>{words.practice.refused}</h2>
        <p>{cause}</p>
        <p>{remedy}</p>
      </section>
    );
  }
  const { setup } = state.stand;
  const isCheck = sweep.withWeights.length > 0;
  const before = isCheck ? readingAsItCame(state) : null;
  return (
    <section className="group" data-role="practice-reading">
      <h2>{isCheck ? words.practice.readingLeft : words.practice.reading}</h2>
      <ReadingLines reading={reading} setup={setup} units={units} />
      {before !== null && (
        <p>{words.practice.readingWas(massOf({ reading: before, setup, units }).text)}</p>
      )}
      {state.guess !== null && !isCheck && (
        <GuessCheck guess={state.guess} reading={reading} setup={setup} units={units} />
      )}
    </section>
  );
}

interface OfReading {
  readonly reading: AcceptedReading;
  readonly setup: SweepSetup;
  readonly units: Units;
}

function massOf({ reading, setup, units }: OfReading) {
  const { amountG, amountPlusMinusG } = readingSummary(reading, setup);
  return formatMass(amountG, units, amountPlusMinusG);
}

function ReadingLines(props: OfReading) {
  const { figure, unit, plusMinus } = massOf(props);
  const { spots } = readingSummary(props.reading, props.setup);
  return (
    <>
      <p className="practice-figure">
        <span className="figure">{figure}</span> {unit}
        {plusMinus !== null && ` ± ${plusMinus}`}
      </p>
      {spots !== null && (
        <p className="practice-place">
          {words.practice.readingIs(formatClockAndDeg(spots.lightDeg))}
        </p>
      )}
    </>
  );
}

function GuessCheck({ guess, reading, setup, units }: OfReading & { readonly guess: EyeReading }) {
  const { amountGmm, heavySpotDeg } = reading.unbalance;
  const compared = compareByEye(
    vectorFromPolar(amountGmm, heavySpotDeg),
    guess,
    setup.wheel.weightRadiusMm,
  );
  if (!compared.ok) return null;
  const { angleOffDeg, massOffG, leftOverG } = compared.value;
  return (
    <p>
      {words.practice.guessOff(
        formatMass(Math.abs(massOffG), units).text,
        formatDeg(Math.abs(angleOffDeg ?? 0)),
      )}{' '}
      {words.practice.guessLeaves(formatMass(leftOverG, units).text)}
    </p>
  );
}
