import { useState } from 'react';

import { WheelAngleField } from '../parts/WheelAngleField.tsx';
import { formatClockAndDeg, formatKnownMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';

export interface StickByPlaceProps {
  readonly massG: number;
  readonly units: Units;
  readonly onStick: (angleDeg: number) => void;
}

/** The same as a touch on the rim, for those who go by the keyboard or want the place to a degree. */
export function StickByPlace({ massG, units, onStick }: StickByPlaceProps) {
  const [placeDeg, setPlaceDeg] = useState<number | null>(null);
  const [isMissing, setMissing] = useState(false);
  const stick = () => {
    setMissing(placeDeg === null);
    if (placeDeg !== null) onStick(placeDeg);
  };
  return (
    <>
      <WheelAngleField
        label={words.practice.place}
        name="stick.angleDeg"
        units={units}
        value={placeDeg}
        onValue={setPlaceDeg}
      />
      <button type="button" className="plain" data-role="stick-strip" onClick={stick}>
        {placeDeg === null
          ? words.practice.stickIt
          : words.practice.stick(formatKnownMass(massG, units), formatClockAndDeg(placeDeg))}
      </button>
      {isMissing && <p role="alert">{words.practice.stickNeeds}</p>}
    </>
  );
}
