import { useState } from 'react';

import type { LogEntry } from '../../contract/logbook.ts';
import { centreDepthMm } from '../../balance/ballSeat.ts';
import { boreOf, depthFromSweeps, withCentreDepth } from '../../job/wheelOnBall.ts';
import { NumberStepper } from '../parts/NumberStepper.tsx';
import { formatLength } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { DEPTH_STEP } from './ranges.ts';
import { TwoWeighingsForm } from './TwoWeighingsForm.tsx';
import type { WheelPartProps } from './WheelFields.tsx';

export interface DepthWaysProps extends WheelPartProps {
  readonly entries: readonly LogEntry[];
}

/** A centre of mass from here to there below the seat could be any wheel's, mm. */
const CENTRE_RANGE_MM = [1, 200] as const;
/** Half of a 95 % range in standard errors. */
const NORMAL_95 = 1.96;

/** Three ways to the depth: a check sweep, two weighings, or the centre of mass by other means. */
export function DepthWays({ wheel, entries, units, edit }: DepthWaysProps) {
  const [typedMm, setTypedMm] = useState<number | null>(null);
  const { bench } = words;
  const measured = depthFromSweeps(wheel, entries);
  const seat = {
    ballDiameterMm: wheel.ballDiameterMm.value,
    boreDiameterMm: boreOf(wheel).value,
  };
  const follows = centreDepthMm(seat, wheel.pendulumDepthMm.value);
  const centreMm = typedMm ?? (follows.ok ? follows.value : null);
  return (
    <details className="drawer">
      <summary>{bench.depthWays}</summary>
      <div className="fields">
        {measured !== null && (
          <div className="bench-way">
            <p>
              {bench.fromSweeps(
                formatLength(measured.pendulumDepthMm, units, NORMAL_95 * measured.standardErrorMm)
                  .text,
              )}
            </p>
            <button
              type="button"
              className="plain"
              onClick={() =>
                edit.keep({
                  ...wheel,
                  pendulumDepthMm: { value: measured.pendulumDepthMm, origin: 'measured' },
                })
              }
            >
              {bench.takeSweeps}
            </button>
          </div>
        )}
        <TwoWeighingsForm wheel={wheel} units={units} edit={edit} />
        <div className="bench-way">
          <NumberStepper
            label={bench.centre}
            name="centreDepthMm"
            help={bench.centreHelp}
            quantity="length"
            units={units}
            value={centreMm}
            range={CENTRE_RANGE_MM}
            stepShown={DEPTH_STEP[units]}
            onValue={setTypedMm}
          />
          <button
            type="button"
            className="plain"
            disabled={typedMm === null}
            onClick={() => {
              const centre = { value: typedMm!, origin: 'entered' as const };
              edit.keepIfItStands(withCentreDepth(wheel, centre));
            }}
          >
            {bench.takeCentre}
          </button>
        </div>
      </div>
    </details>
  );
}
