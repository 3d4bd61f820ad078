import type { ReactNode } from 'react';

import type { EyeEntry, WheelRecord } from '../../contract/logbook.ts';
import type { EyePair } from '../../job/eyePairs.ts';
import { ScreenTitle } from '../parts/ScreenTitle.tsx';
import { formatClockAndDeg, formatKnownMass, formatMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { angleOff, massOff } from './eyeDifference.ts';
import { EyeWheel } from './EyeWheel.tsx';

export interface EyeResultProps {
  readonly eye: EyeEntry | null;
  /** Null while no sweep has measured this state of the wheel. */
  readonly pair: EyePair | null;
  readonly wheel: WheelRecord;
  readonly units: Units;
  readonly onAgain: () => void;
  readonly onSweep: () => void;
  readonly children: ReactNode;
}

/** Kept, go and sweep; or, where the sweep is there, the two side by side. */
export function EyeResult(props: EyeResultProps) {
  const { eye, pair, wheel, units, children } = props;
  if (eye === null) return null;
  return (
    <div className="by-eye">
      <section className="by-eye-wheel">
        <EyeWheel wheel={wheel} lightDeg={eye.lightSpotDeg} massG={eye.massG} units={units} />
      </section>
      <section className="by-eye-say">
        <ScreenTitle>{pair === null ? words.byEye.title : words.byEye.resultTitle}</ScreenTitle>
        <p className="instruction">
          {pair === null ? words.byEye.thenSweep : verdictWords(pair, wheel.weightStepG)}
        </p>
        {pair !== null && <Compared pair={pair} units={units} />}
        <div className="read-actions">
          {pair === null && (
            <button type="button" className="main" onClick={props.onSweep}>
              {words.byEye.sweep}
            </button>
          )}
          <button type="button" className="plain" onClick={props.onAgain}>
            {words.byEye.again}
          </button>
        </div>
      </section>
      {children}
    </div>
  );
}

/** Within one step: as good as balanced by common practice; within two: one trim away. */
function verdictWords({ comparison }: EyePair, weightStepG: number): string {
  if (comparison.leftOverG <= weightStepG) return words.byEye.verdictGood;
  return comparison.leftOverG <= 2 * weightStepG
    ? words.byEye.verdictFair
    : words.byEye.verdictPoor;
}

function Compared({ pair, units }: { readonly pair: EyePair; readonly units: Units }) {
  const { eye, sweep, comparison } = pair;
  const rows: readonly (readonly [string, string])[] = [
    [
      words.byEye.yours,
      `${formatKnownMass(eye.massG, units)} · ${formatClockAndDeg(eye.lightSpotDeg)} (${
        eye.blind ? words.byEye.blind : words.byEye.known
      })`,
    ],
    [
      words.byEye.measured,
      `${formatMass(comparison.measuredG, units).text} · ${formatClockAndDeg(
        sweep.reading.unbalance.lightSpotDeg,
      )}`,
    ],
    [
      words.byEye.off,
      words.byEye.offText(massOff(comparison.massOffG, units), angleOff(comparison.angleOffDeg)),
    ],
    [words.byEye.leftOver, formatMass(comparison.leftOverG, units).text],
  ];
  return (
    <dl className="eye-compared">
      {rows.map(([name, text]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{text}</dd>
        </div>
      ))}
    </dl>
  );
}
