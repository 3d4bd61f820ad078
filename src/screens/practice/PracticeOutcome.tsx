import { compareByEye, type EyeReading } from '../../balance/byEye.ts';
import type { AcceptedReading } from '../../contract/reading.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import { vectorFromPolar } from '../../quantities/vector.ts';
import {
  practiceRoom,
  type PracticeState,
  type PracticeSweep,
} from '../../session/practice/practiceRoom.ts';
import type { PracticeTruth } from '../../session/practice/practiceStand.ts';
import { readingSummary } from '../read/readingSummary.ts';
import {
  formatClockAndDeg,
  formatDeg,
  formatKnownMass,
  formatMass,
  type Units,
} from '../words/numbers.ts';
import { words } from '../words/words.ts';

export interface PracticeOutcomeProps {
  readonly state: PracticeState;
  readonly sweep: PracticeSweep;
  readonly units: Units;
}

/** What the last sweep said, what to do about it, and how the guess by eye compares. */
export function PracticeOutcome({ state, sweep, units }: PracticeOutcomeProps) {
  const { reading } = sweep.result;
  if (reading.status === 'refused') {
    const { cause, remedy } = words.notices[reading.refusals[0]!.code];
    return (
      <section className="group" data-role="practice-refused">
        <h2>{words.practice.refused}</h2>
        <p>{cause}</p>
        <p className="instruction">{remedy}</p>
      </section>
    );
  }
  return (
    <section className="group" data-role="practice-reading">
      <h2>{words.practice.reading}</h2>
      <ReadingLine reading={reading} setup={state.stand.setup} units={units} />
      <Advice state={state} sweep={sweep} reading={reading} units={units} />
      {state.guess !== null && sweep.withWeights.length === 0 && (
        <GuessCheck guess={state.guess} reading={reading} setup={state.stand.setup} units={units} />
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

/** One thing to do: stick on what is advised, prove what is stuck on, or be done. */
function Advice({
  state,
  sweep,
  reading,
  units,
}: PracticeOutcomeProps & { reading: AcceptedReading }) {
  const { weights } = readingSummary(reading, state.stand.setup);
  if (sweep.withWeights !== state.weights) {
    return <p className="instruction">{words.practice.proveIt}</p>;
  }
  if (weights.length === 0) {
    return (
      <p className="instruction" data-role="practice-done">
        {words.practice.done}
      </p>
    );
  }
  return (
    <>
      {weights.map(({ massG, angleDeg }) => (
        <p className="instruction" key={angleDeg}>
          {words.practice.stick(formatKnownMass(massG, units), formatClockAndDeg(angleDeg))}
        </p>
      ))}
      <button
        type="button"
        className="main"
        data-role="stick-on"
        onClick={() => practiceRoom().stick(weights)}
      >
        {words.practice.stickIt}
      </button>
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

/** The truth, once it is asked for. */
export function PracticeTruthTable({
  truth,
  setup,
  units,
}: {
  readonly truth: PracticeTruth;
  readonly setup: SweepSetup;
  readonly units: Units;
}) {
  const { weightRadiusMm } = setup.wheel;
  const line = ({ amountGmm, heavySpotDeg }: PracticeTruth['left']) =>
    words.practice.truthIs(
      formatMass(amountGmm / weightRadiusMm, units).text,
      formatClockAndDeg(heavySpotDeg),
    );
  return (
    <section className="group" data-role="practice-truth">
      <h2>{words.practice.truth}</h2>
      <dl className="practice-truth">
        <dt>{words.practice.hidden}</dt>
        <dd>{line(truth.hidden)}</dd>
        <dt>{words.practice.left}</dt>
        <dd data-left-g={(truth.left.amountGmm / weightRadiusMm).toFixed(2)}>{line(truth.left)}</dd>
      </dl>
    </section>
  );
}
