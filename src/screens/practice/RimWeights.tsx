import { useState } from 'react';

import type { Weight } from '../../contract/reading.ts';
import { practiceRoom, type PracticeState } from '../../session/practice/practiceRoom.ts';
import { ChoiceTiles } from '../parts/ChoiceTiles.tsx';
import { readingSummary } from '../read/readingSummary.ts';
import { formatClockAndDeg, formatKnownMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { PracticeWheel } from './PracticeWheel.tsx';
import { StickByPlace } from './StickByPlace.tsx';

/** Strips to stick on by touch, g. */
const STRIPS_G = ['5', '10', '20', '30'] as const;

export interface RimWeightsProps {
  readonly state: PracticeState;
  /** What the next step sticks on: shown where it will go. */
  readonly proposed: readonly Weight[];
  readonly units: Units;
}

/** The wheel from above with what is on it and what comes next; the list takes weights off again. */
export function RimWeights({ state, proposed, units }: RimWeightsProps) {
  const [strip, setStrip] = useState<(typeof STRIPS_G)[number]>('10');
  // Only with the drawer open: a finger that scrolls past the drawing means nothing by it.
  const [byHand, setByHand] = useState(false);
  const { stand, guess, weights, truthShown } = state;
  const room = practiceRoom();
  const stick = (angleDeg: number) =>
    room.stick([{ massG: Number(strip), radiusMm: stand.setup.wheel.weightRadiusMm, angleDeg }]);
  return (
    <section className="group">
      <h2>{words.practice.weightsOn}</h2>
      <PracticeWheel
        weights={weights}
        proposed={proposed}
        guess={guess}
        lightDeg={lightSpotOf(state)}
        heavyDeg={truthShown ? stand.truth().hidden.heavySpotDeg : null}
        onTouch={byHand ? stick : null}
      />
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
      <details className="drawer" onToggle={(event) => setByHand(event.currentTarget.open)}>
        <summary>{words.practice.byHand}</summary>
        <div className="fields">
          <p>{words.practice.touchRim}</p>
          <ChoiceTiles
            label={words.practice.piece}
            tiles={STRIPS_G.map((value) => ({
              value,
              word: formatKnownMass(Number(value), units),
            }))}
            chosen={strip}
            onChoose={setStrip}
          />
          <StickByPlace massG={Number(strip)} units={units} onStick={stick} />
        </div>
      </details>
    </section>
  );
}

/** As the last sweep told it; null where none was told from the others. */
function lightSpotOf({ stand, sweeps }: PracticeState): number | null {
  const last = sweeps.at(-1)?.result.reading;
  if (last?.status !== 'ok') return null;
  return readingSummary(last, stand.setup).spots?.lightDeg ?? null;
}
