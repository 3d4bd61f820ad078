import { useState } from 'react';

import type { WheelRecord } from '../../contract/logbook.ts';
import { ChoiceTiles } from '../parts/ChoiceTiles.tsx';
import { NumberStepper } from '../parts/NumberStepper.tsx';
import { WheelAngleField } from '../parts/WheelAngleField.tsx';
import { formatClock, formatKnown, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import type { NewEntry } from './useWheelEntries.ts';

export interface HandWeightsProps {
  readonly wheel: WheelRecord;
  readonly units: Units;
  readonly onAdd: (entry: NewEntry) => void;
}

/** A weight that a person could stick on or pull off in one piece. */
const MASS_RANGE_G = [0.5, 500] as const;

/** A weight that went on or came off without being led: the next sweep has to know of it. */
export function HandWeights({ wheel, units, onAdd }: HandWeightsProps) {
  const [massG, setMassG] = useState(wheel.weightStepG);
  const [angleDeg, setAngleDeg] = useState(wheel.lastReading?.lightSpotDeg ?? 0);
  const [ring, setRing] = useState(0);
  const [sense, setSense] = useState<'on' | 'off'>('on');
  const { job } = words;
  const radiusMm = (wheel.rings[ring] ?? wheel.rings[0]!).radiusMm.value;
  const add = () => {
    const signedG = sense === 'on' ? massG : -massG;
    onAdd({ kind: 'weights', added: [{ massG: signedG, radiusMm, angleDeg }] });
  };
  return (
    <details className="drawer">
      <summary>{job.handWeights}</summary>
      <div className="fields">
        <p>{job.handWeightsHelp}</p>
        <ChoiceTiles
          label={job.handWeights}
          tiles={[
            { value: 'on', word: job.putOn },
            { value: 'off', word: job.takenOff },
          ]}
          chosen={sense}
          onChoose={setSense}
        />
        <NumberStepper
          label={job.massOfWeight}
          name="handMass"
          quantity="weight"
          units={units}
          value={massG}
          range={MASS_RANGE_G}
          onValue={(value) => setMassG(value ?? massG)}
        />
        <WheelAngleField
          label={job.placeOfWeight}
          name="handAngle"
          help={job.clockIs(formatClock(angleDeg))}
          units={units}
          value={Math.round(angleDeg)}
          onValue={(value) => setAngleDeg(value ?? angleDeg)}
        />
        {wheel.rings.length > 1 && (
          <ChoiceTiles
            label={job.ring}
            tiles={wheel.rings.map((one, index) => ({
              value: String(index),
              word: job.ringName(formatKnown('length', one.radiusMm.value, units)),
            }))}
            chosen={String(ring)}
            onChoose={(value) => setRing(Number(value))}
          />
        )}
        <button type="button" className="main" data-role="add-hand-weight" onClick={add}>
          {job.addWeight}
        </button>
      </div>
    </details>
  );
}
