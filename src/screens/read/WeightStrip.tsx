import type { Weight } from '../../contract/reading.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { clockPoint, sectorPath } from '../parts/polar.ts';
import { formatKnownMass, type MassUnit } from '../words/numbers.ts';
import { stripArcDeg, type WheelLayout } from './wheelLayout.ts';

export interface WeightStripProps {
  readonly weight: Weight;
  readonly layout: WheelLayout;
  readonly unit: MassUnit;
  readonly textUnits: number;
}

/** Breadth of the block across the rim: room for its grams. */
const BREADTH_UNITS = 34;
/** Letters of this face are about six tenths of their size wide. */
const LETTER_WIDTH = 0.6;

/** A weight as a block as long as the real strip, with its grams in it, or beside it when short. */
export function WeightStrip({ weight, layout, unit, textUnits }: WeightStripProps) {
  const arcDeg = stripArcDeg(weight.massG, weight.radiusMm);
  const from = weight.angleDeg - arcDeg / 2;
  const text = formatKnownMass(weight.massG, unit);
  const lengthUnits = arcDeg * RAD_PER_DEG * layout.weights;
  const fits = text.length * LETTER_WIDTH * textUnits < lengthUnits;
  const at = clockPoint(
    weight.angleDeg,
    fits ? layout.weights : layout.weights - BREADTH_UNITS / 2 - textUnits,
  );
  return (
    <g className={weight.massG < 0 ? 'strip strip-off' : 'strip'}>
      <path
        d={sectorPath(
          from,
          from + arcDeg,
          layout.weights - BREADTH_UNITS / 2,
          layout.weights + BREADTH_UNITS / 2,
        )}
      />
      <text
        className={fits ? 'strip-inside' : 'strip-beside'}
        x={at.x}
        y={at.y}
        transform={fits ? `rotate(${uprightDeg(weight.angleDeg)} ${at.x} ${at.y})` : undefined}
      >
        {text}
      </text>
    </g>
  );
}

/** Along the strip, but never upside down. */
function uprightDeg(angleDeg: number): number {
  return angleDeg > 90 && angleDeg < 270 ? angleDeg + 180 : angleDeg;
}
