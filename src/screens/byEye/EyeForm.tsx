import { useState, type ReactNode } from 'react';

import type { WheelRecord } from '../../contract/logbook.ts';
import { wrapTurnDeg } from '../../quantities/angle.ts';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { StepLine } from '../parts/StepLine.tsx';
import { formatClockAndDeg, formatKnownMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { EyeWheel } from './EyeWheel.tsx';
import type { EyeValues } from './useKeptEye.ts';

export interface EyeFormProps {
  readonly wheel: WheelRecord;
  /** True when this state of the wheel was measured already. */
  readonly known: boolean;
  /** A reading to be mended; null for a fresh one. */
  readonly begun: EyeValues | null;
  readonly units: Units;
  readonly onKeep: (lightSpotDeg: number, massG: number) => void;
  readonly children: ReactNode;
}

/** The hand sets a place to about this, degrees: ten minutes on the clock. */
const ANGLE_STEP_DEG = 5;
const HEAVIEST_G = 200;

/** Touch the wheel where it is light; more or less for the grams. */
export function EyeForm({ wheel, known, begun, units, onKeep, children }: EyeFormProps) {
  const [lightDeg, setLightDeg] = useState(begun?.lightSpotDeg ?? 180);
  const [massG, setMassG] = useState(begun?.massG ?? 2 * wheel.weightStepG);
  const turnBy = (deg: number) => setLightDeg((before) => wrapTurnDeg(before + deg));
  const add = (massOff: number) =>
    setMassG((before) => Math.min(HEAVIEST_G, Math.max(0, before + massOff)));
  return (
    <div className="by-eye">
      <section className="by-eye-wheel">
        <EyeWheel
          wheel={wheel}
          lightDeg={lightDeg}
          massG={massG}
          units={units}
          onTouch={setLightDeg}
        />
      </section>
      <section className="by-eye-say">
        <ScreenTitle>{words.byEye.title}</ScreenTitle>
        <p className="instruction">{known ? words.byEye.leadKnown : words.byEye.leadBlind}</p>
        <EyeValue
          name={words.byEye.angle}
          value={formatClockAndDeg(lightDeg)}
          onStep={(direction) => turnBy(direction * ANGLE_STEP_DEG)}
        />
        <EyeValue
          name={words.byEye.mass}
          value={formatKnownMass(massG, units)}
          onStep={(direction) => add(direction * wheel.weightStepG)}
        />
        <button
          type="button"
          className="main"
          data-role="keep-eye"
          onClick={() => onKeep(lightDeg, massG)}
        >
          {words.byEye.keep}
        </button>
      </section>
      {children}
    </div>
  );
}

interface EyeValueProps {
  readonly name: string;
  readonly value: string;
  readonly onStep: (direction: 1 | -1) => void;
}

function EyeValue({ name, value, onStep }: EyeValueProps) {
  return (
    <div className="eye-value" role="group" aria-label={name}>
      <span className="eye-value-name">{name}</span>
      <StepLine label={name} onStep={onStep}>
        <output>{value}</output>
      </StepLine>
    </div>
  );
}
