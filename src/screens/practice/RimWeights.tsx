import { useState } from 'react';

import { practiceRoom, type PracticeState } from '../../session/practice/practiceRoom.ts';
import { ChoiceTiles } from '../parts/ChoiceTiles.tsx';
import { formatClockAndDeg, formatKnownMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { PracticeWheel } from './PracticeWheel.tsx';
import { StickByPlace } from './StickByPlace.tsx';

/** Strips to stick on by touch, g. */
const STRIPS_G = ['5', '10', '20', '30'] as const;

/** The wheel from above: touch its rim to stick a strip there; the list takes them off again. */
export function RimWeights({
  state,
  units,
}: {
  readonly state: PracticeState;
  readonly units: Units;
}) {
  const [strip, setStrip] = useState<(typeof STRIPS_G)[number]>('10');
  const { stand, guess, sweeps, weights, truthShown } = state;
  const room = practiceRoom();
  const stick = (angleDeg: number) =>
    room.stick([{ massG: Number(strip), radiusMm: stand.setup.wheel.weightRadiusMm, angleDeg }]);
  const last = sweeps.at(-1)?.result.reading;
  const lightDeg = last?.status === 'ok' ? last.unbalance.lightSpotDeg : null;
  return (
    <section className="group">
      <h2>{words.practice.weightsOn}</h2>
      <PracticeWheel
        weights={weights}
        guess={guess}
        lightDeg={lightDeg}
        heavyDeg={truthShown ? stand.truth().hidden.heavySpotDeg : null}
        onTouch={stick}
      />
      <ChoiceTiles
        label={words.practice.piece}
        tiles={STRIPS_G.map((value) => ({ value, word: formatKnownMass(Number(value), units) }))}
        chosen={strip}
        onChoose={setStrip}
      />
      <StickByPlace massG={Number(strip)} units={units} onStick={stick} />
      {weights.length === 0 ? (
        <p>{words.practice.noWeights}</p>
      ) : (
        <ul className="practice-weights">
          {weights.map(({ massG, angleDeg }, index) => (
            <li key={`${index} ${angleDeg}`}>
              <button type="button" className="plain" onClick={() => room.takeOff(index)}>
                {words.practice.takeOff(formatKnownMass(massG, units), formatClockAndDeg(angleDeg))}
              </button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
