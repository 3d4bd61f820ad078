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

const LOAD_RANGE_KG = [0, 80] as const;
const LENGTH_RANGE_MM = [0, 500] as const;

/** The wheel upright on two rails, each weighed in turn: mass and centre of mass by the lever rule. */
export function TwoWeighingsForm({ wheel, units, edit }: WheelPartProps) {
  const half = wheel.massKg.value / 2;
  const [upperKg, setUpperKg] = useState(half);
  const [lowerKg, setLowerKg] = useState(half);
  const [spacingMm, setSpacingMm] = useState(160);
  const [seatMm, setSeatMm] = useState(50);
  const { bench } = words;
  const weighed = centreDepthFromWeighings({
    upperRailLoadKg: upperKg,
    lowerRailLoadKg: lowerKg,
    scaleSdKg: SCALE_SD_KG,
    railSpacingMm: spacingMm,
    seatFromUpperRailMm: seatMm,
    rulerSdMm: RULER_SD_MM,
  });
  const load = { quantity: 'wheelMass', units, range: LOAD_RANGE_KG } as const;
  const length = { quantity: 'length', units, range: LENGTH_RANGE_MM } as const;
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
      <NumberStepper
        {...load}
        label={bench.weighUpper}
        name="upperRailLoadKg"
        value={upperKg}
        onValue={(value) => setUpperKg(value ?? upperKg)}
      />
      <NumberStepper
        {...load}
        label={bench.weighLower}
        name="lowerRailLoadKg"
        value={lowerKg}
        onValue={(value) => setLowerKg(value ?? lowerKg)}
      />
      <NumberStepper
        {...length}
        label={bench.weighSpacing}
        name="railSpacingMm"
        value={spacingMm}
        onValue={(value) => setSpacingMm(value ?? spacingMm)}
      />
      <NumberStepper
        {...length}
        label={bench.weighSeat}
        name="seatFromUpperRailMm"
        value={seatMm}
        onValue={(value) => setSeatMm(value ?? seatMm)}
      />
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
