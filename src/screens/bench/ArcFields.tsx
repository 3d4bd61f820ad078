import { useState } from 'react';

import type { WheelArcRecord } from '../../contract/logbook.ts';
import { wrapTurnDeg } from '../../quantities/angle.ts';
import { MinusIcon, PlusIcon } from '../parts/icons.tsx';
import { NumberStepper } from '../parts/NumberStepper.tsx';
import { formatClock, type Units } from '../words/numbers.ts';
import { RimDrawing } from '../weights/RimDrawing.tsx';
import { words } from '../words/words.ts';
import { DIRECTION_RANGE_DEG } from './ranges.ts';
import type { WheelPartProps } from './WheelFields.tsx';

/** As many as the logbook keeps. */
const MOST_ARCS = 40;
/** A new stretch: an hour on the dial, at the valve, where weights are in the way most often. */
const NEW_ARC = { fromDeg: 345, toDeg: 15 };
/** Ten minutes on the dial. */
const STEP_DEG = 5;

type ArcEnd = 'fromDeg' | 'toDeg';

/** Stretches of the rim where no weight may sit, by finger or by number; clockwise from one end to the other. */
export function ArcFields({ wheel, units, edit }: WheelPartProps) {
  const { bench } = words;
  const [drawing, setDrawing] = useState(false);
  const { forbiddenArcs: arcs } = wheel;
  const set = (index: number, end: ArcEnd, angleDeg: number) => {
    const arc = { ...arcs[index]!, [end]: angleDeg };
    edit.keep({ ...wheel, forbiddenArcs: arcs.with(index, arc) });
  };
  const remove = (index: number) => {
    const { fromDeg, toDeg } = arcs[index]!;
    const name = bench.arcName(formatClock(fromDeg), formatClock(toDeg));
    const forbiddenArcs = arcs.toSpliced(index, 1);
    edit.keepWithUndo({ ...wheel, forbiddenArcs }, wheel, bench.removed(name));
  };
  return (
    <div className="fields">
      <div>
        <h3>{bench.arcs}</h3>
        <p className="stepper-help">{bench.arcsHelp}</p>
      </div>
      {arcs.map((arc, index) => (
        <ArcRow
          key={index}
          {...{ arc, index, units }}
          onEnd={(end, angleDeg) => set(index, end, angleDeg)}
          onRemove={() => remove(index)}
        />
      ))}
      {drawing && arcs.length < MOST_ARCS && (
        <RimDrawing
          wheel={wheel}
          onArc={(arc) => edit.keep({ ...wheel, forbiddenArcs: [...arcs, arc] })}
        />
      )}
      {arcs.length < MOST_ARCS && (
        <div className="bench-arc-ways">
          <button
            type="button"
            className={drawing ? 'main' : 'plain'}
            aria-pressed={drawing}
            data-role="draw-arc"
            onClick={() => setDrawing(!drawing)}
          >
            {drawing ? words.weights.blockedDone : words.weights.blockedDraw}
          </button>
          <button
            type="button"
            className="plain"
            onClick={() => edit.keep({ ...wheel, forbiddenArcs: [...arcs, NEW_ARC] })}
          >
            <PlusIcon />
            {bench.addArc}
          </button>
        </div>
      )}
    </div>
  );
}

interface ArcRowProps {
  readonly arc: WheelArcRecord;
  readonly index: number;
  readonly units: Units;
  readonly onEnd: (end: ArcEnd, angleDeg: number) => void;
  readonly onRemove: () => void;
}

/** One stretch: both of its ends by number, with the clock beside. */
function ArcRow({ arc, index, units, onEnd, onRemove }: ArcRowProps) {
  const { bench, job } = words;
  return (
    <div className="bench-arc">
      {(['fromDeg', 'toDeg'] as const).map((end) => (
        <NumberStepper
          key={end}
          label={end === 'fromDeg' ? bench.arcFrom : bench.arcTo}
          name={`arc${index}-${end}`}
          help={job.clockIs(formatClock(arc[end]))}
          quantity="angle"
          units={units}
          value={Math.round(wrapTurnDeg(arc[end]))}
          range={DIRECTION_RANGE_DEG}
          stepShown={STEP_DEG}
          onValue={(angleDeg) => angleDeg !== null && onEnd(end, angleDeg)}
        />
      ))}
      <button type="button" className="plain" onClick={onRemove}>
        <MinusIcon />
        {bench.removeArc}
      </button>
    </div>
  );
}
