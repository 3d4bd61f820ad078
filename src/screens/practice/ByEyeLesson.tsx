import { useState } from 'react';

import type { EyeReading } from '../../balance/byEye.ts';
import { modelResponse } from '../../balance/response.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import { practiceRoom } from '../../session/practice/practiceRoom.ts';
import { NumberStepper } from '../parts/NumberStepper.tsx';
import { WheelAngleField } from '../parts/WheelAngleField.tsx';
import { formatClockAndDeg, formatKnown, formatKnownMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';

/** Most that a hidden weight pulls, g, with room for a bold guess. */
const MOST_G = 120;

/** Balance by eye first: look, guess place and weight; the tool checks it later. */
export function ByEyeLesson({
  guess,
  setup,
  units,
}: {
  readonly guess: EyeReading | null;
  readonly setup: SweepSetup;
  readonly units: Units;
}) {
  const [placeDeg, setPlaceDeg] = useState<number | null>(null);
  const [massG, setMassG] = useState<number | null>(null);
  const [isMissing, setMissing] = useState(false);
  // A button that waits for both would look dead while the last field has not been left.
  const take = () => {
    setMissing(placeDeg === null || massG === null);
    if (placeDeg === null || massG === null) return;
    practiceRoom().guess({ lightSpotDeg: placeDeg, massG });
  };
  return (
    <section className="group">
      <h2>{words.practice.byEye}</h2>
      <p>
        {words.practice.byEyeHow} {ruleOfThumb(setup, units)}
      </p>
      <WheelAngleField
        label={words.practice.guessAt}
        name="guess.lightSpotDeg"
        units={units}
        value={placeDeg}
        onValue={setPlaceDeg}
      />
      <NumberStepper
        label={words.practice.grams}
        name="guess.massG"
        quantity="weight"
        units={units}
        value={massG}
        range={[0, MOST_G]}
        proposal={30}
        onValue={setMassG}
      />
      <button type="button" className="plain" data-role="guess" onClick={take}>
        {words.practice.guessIt}
      </button>
      {isMissing && <p role="alert">{words.practice.guessNeeds}</p>}
      {guess !== null && (
        <p role="status">
          {words.practice.guessed(
            formatKnownMass(guess.massG, units),
            formatClockAndDeg(guess.lightSpotDeg),
          )}
        </p>
      )}
    </section>
  );
}

/** What the eye needs to make grams of millimetres. */
const THUMB_G = 10;
/** Finer than this no eye reads the edge over the line, mm. */
const EYE_STEP_MM = 0.5;

function ruleOfThumb({ wheel, stand }: SweepSetup, units: Units): string {
  const response = modelResponse({ ...wheel, ...stand });
  if (!response.ok) return '';
  const liftMm = THUMB_G * wheel.weightRadiusMm * response.value.mmPerGmm;
  const riseMm = EYE_STEP_MM * Math.round(liftMm / EYE_STEP_MM);
  const mass = formatKnownMass(THUMB_G, units);
  return words.practice.riseOf(mass, formatKnown('length', riseMm, units));
}
