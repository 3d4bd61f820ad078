import { useState } from 'react';

import { measureDownTiltDeg } from '../../session/tiltSensor.ts';
import { words } from '../words/words.ts';
import { STAND_RANGES } from './ranges.ts';

type Sensing = 'idle' | 'reading' | 'missing';

/** Asks the tablet itself, where the browser lets a page do so. */
export function TiltFromSensor({ onTilt }: { readonly onTilt: (tiltDeg: number) => void }) {
  const [sensing, setSensing] = useState<Sensing>('idle');
  const measure = async () => {
    setSensing('reading');
    const tilt = await measureDownTiltDeg();
    const [low, high] = STAND_RANGES.downTiltDeg;
    const fits = tilt.ok && tilt.value >= low && tilt.value <= high;
    setSensing(fits ? 'idle' : 'missing');
    if (fits) onTilt(Math.round(tilt.value * 10) / 10);
  };
  return (
    <div className="stand-sensor">
      <button
        type="button"
        className="plain"
        disabled={sensing === 'reading'}
        onClick={() => void measure()}
      >
        {sensing === 'reading' ? words.stand.sensorReading : words.stand.fromSensor}
      </button>
      <p role="status">{sensing === 'missing' && words.stand.sensorMissing}</p>
    </div>
  );
}
