import { useState } from 'react';

import { centreDepthFromWeighings } from '../../balance/twoWeighings.ts';
import { withCentreDepth } from '../../job/wheelOnBall.ts';
import { NumberStepper } from '../parts/NumberStepper.tsx';
import { formatFigure, formatKnown } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { TwoWeighingsDrawing } from './TwoWeighingsDrawing.tsx';
import type { WheelPartProps } from './WheelFields.tsx';

/** A bathroom scale's and a tape measure's standard deviation. */
const SCALE_SD_KG = 0.05;
const RULER_SD_MM = 1;
const NORMAL_95 = 1.96;

const LOAD = { quantity: 'wheelMass', range: [0, 80] } as const;
const LENGTH = { quantity: 'length', range: [0, 500] } as const;

/** In the order in which they are taken. The words are asked for anew: the language may change. */
const FIELDS = [
  { ...LOAD, name: 'upperRailLoadKg', label: () => words.bench.weighUpper },
  { ...LOAD, name: 'lowerRailLoadKg', label: () => words.bench.weighLower },
  { ...LENGTH, name: 'railSpacingMm', label: () => words.bench.weighSpacing },
  { ...LENGTH, name: 'seatFromUpperRailMm', label: () => words.bench.weighSeat },
] as const;

/** To begin with: the load shared alike, rails and seat where a car wheel has them. */
const usualWeighing = (massKg: number) => ({
  upperRailLoadKg: massKg / 2,
  lowerRailLoadKg: massKg / 2,
  railSpacingMm: 160,
  seatFromUpperRailMm: 50,
});

/** The wheel upright on two rails, each weighed in turn: mass and centre of mass by the lever rule. */
export function TwoWeighingsForm({ wheel, units, edit }: WheelPartProps) {
  const [taken, setTaken] = useState(() => usualWeighing(wheel.massKg.value));
  const { bench } = words;
  const weighed = centreDepthFromWeighings({
    ...taken,
    scaleSdKg: SCALE_SD_KG,
    rulerSdMm: RULER_SD_MM,
  });
  const take = () => {
    if (!weighed.ok) return;
    const { massKg, centreDepthMm } = weighed.value;
    const heavier = { ...wheel, massKg: { value: massKg, origin: 'measured' as const } };
    edit.keepIfItStands(withCentreDepth(heavier, { value: centreDepthMm, origin: 'measured' }));
  };
  return (
    <div className="bench-way">
      <h3>{bench.weighTitle}</h3>
      <TwoWeighingsDrawing />
      <p>{bench.weighHelp}</p>
      {FIELDS.map(({ name, label, ...field }) => (
        <NumberStepper
          key={name}
          {...field}
          label={label()}
          name={name}
          units={units}
          value={taken[name]}
          onValue={(value) => value !== null && setTaken({ ...taken, [name]: value })}
        />
      ))}
      {weighed.ok && (
        <p className="bench-result" role="status">
          {bench.weighResult(
            formatKnown('wheelMass', weighed.value.massKg, units),
            formatFigure(
              'length',
              weighed.value.centreDepthMm,
              units,
              NORMAL_95 * weighed.value.standardErrorMm,
            ).text,
          )}
        </p>
      )}
      <button type="button" className="plain" disabled={!weighed.ok} onClick={take}>
        {bench.takeWeighing}
      </button>
    </div>
  );
}
