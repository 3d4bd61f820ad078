import { compareByEye, type EyeReading } from '../../balance/byEye.ts';
import type { AcceptedReading } from '../../contract/reading.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import { vectorFromPolar } from '../../quantities/vector.ts';
import type { PracticeState, PracticeSweep } from '../../session/practice/practiceRoom.ts';
import { readingSummary } from '../read/readingSummary.ts';
import { formatClockAndDeg, formatDeg, formatMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';

export interface PracticeOutcomeProps {
  readonly state: PracticeState;
  readonly sweep: PracticeSweep;
  readonly units: Units;
}

/** What the last sweep said, and how the guess by eye compares. */
export function PracticeOutcome({ state, sweep, units }: PracticeOutcomeProps) {
  const { reading } = sweep.result;
  if (reading.status === 'refused') {
    return (
      <section className="group" data-role="practice-refused">
        <h2>{words.practice.refused}</h2>
        <p>{words.notices[reading.refusals[0]!.code].cause}</p>
      </section>
    );
  }
  const { setup } = state.stand;
  return (
    <section className="group" data-role="practice-reading">
      <h2>{sweep.withWeights.length > 0 ? words.practice.readingLeft : words.practice.reading}</h2>
      <ReadingLine reading={reading} setup={setup} units={units} />
      {state.guess !== null && sweep.withWeights.length === 0 && (
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

function ReadingLine({ reading, setup, units }: OfReading) {
  const { amountG, amountPlusMinusG, spots } = readingSummary(reading, setup);
  const mass = formatMass(amountG, units, amountPlusMinusG).text;
  const place = spots === null ? null : formatClockAndDeg(spots.lightDeg);
  return (
    <p className="practice-figure">
      {place === null ? mass : words.practice.readingIs(mass, place)}
    </p>
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
