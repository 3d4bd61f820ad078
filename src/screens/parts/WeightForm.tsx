import { useState } from 'react';

import type { AddedWeight } from '../../contract/setup.ts';
import { formatClock, formatKnown, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { ChoiceTiles } from './ChoiceTiles.tsx';
import { NumberStepper } from './NumberStepper.tsx';
import { WheelAngleField } from './WheelAngleField.tsx';

export interface WeightFormProps {
  /** Where it can sit, from the middle of the wheel; at least one. */
  readonly radiiMm: readonly number[];
  /** What stands there at first. */
  readonly massG: number;
  readonly angleDeg: number;
  readonly units: Units;
  readonly onAdd: (added: AddedWeight) => void;
}

/** A weight that a person could stick on or pull off in one piece. */
const MASS_RANGE_G = [0.5, 500] as const;

/** One weight that went on the wheel or came off it: how heavy, and where. */
export function WeightForm({ radiiMm, units, onAdd, ...first }: WeightFormProps) {
  const [massG, setMassG] = useState(first.massG);
  const [angleDeg, setAngleDeg] = useState(first.angleDeg);
  const [ring, setRing] = useState(0);
  const [sense, setSense] = useState<'on' | 'off'>('on');
  const { job } = words;
  const add = () => {
    const radiusMm = radiiMm[ring] ?? radiiMm[0]!;
    onAdd({ massG: sense === 'on' ? massG : -massG, radiusMm, angleDeg });
  };
  return (
    <>
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
      {radiiMm.length > 1 && (
        <ChoiceTiles
          label={job.ring}
          tiles={radiiMm.map((radiusMm, index) => ({
            value: String(index),
            word: job.ringName(formatKnown('length', radiusMm, units)),
          }))}
          chosen={String(ring)}
          onChoose={(value) => setRing(Number(value))}
        />
      )}
      <button type="button" className="main" data-role="add-hand-weight" onClick={add}>
        {job.addWeight}
      </button>
    </>
  );
}
