import type { Weight } from '../../contract/reading.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { clockPoint, sectorPath } from '../parts/polar.ts';
import { knownFigure, type Units } from '../words/numbers.ts';
import { LETTER_WIDTH, RimWord } from './RimWord.tsx';
import { stripArcDeg, type WheelLayout } from './wheelLayout.ts';

/** Breadth of the block across the rim: room for its grams. */
export const STRIP_BREADTH_UNITS = 34;

export interface StripLabel {
  readonly text: string;
  readonly inside: boolean;
}

/** Grams with unit where the strip is long enough, the bare number where not, else beside it. */
export function stripLabel(
  weight: Weight,
  layout: WheelLayout,
  units: Units,
  textUnits: number,
): StripLabel {
  const lengthUnits = stripArcDeg(weight.massG, weight.radiusMm) * RAD_PER_DEG * layout.weights;
  const fits = (text: string) => text.length * LETTER_WIDTH * textUnits < lengthUnits;
  const { figure, text } = knownFigure('weight', weight.massG, units);
  if (fits(text)) return { text, inside: true };
  return fits(figure) ? { text: figure, inside: true } : { text, inside: false };
}

export interface WeightStripProps {
  readonly weight: Weight;
  readonly label: StripLabel;
  readonly layout: WheelLayout;
  readonly textUnits: number;
}

/** A weight as a block as long as the real strip, with its grams. */
export function WeightStrip({ weight, label, layout, textUnits }: WeightStripProps) {
  const arcDeg = stripArcDeg(weight.massG, weight.radiusMm);
  const from = weight.angleDeg - arcDeg / 2;
  const inner = layout.weights - STRIP_BREADTH_UNITS / 2;
  const at = clockPoint(weight.angleDeg, layout.weights);
  return (
    <g className={weight.massG < 0 ? 'strip strip-off' : 'strip'}>
      <path d={sectorPath(from, from + arcDeg, inner, inner + STRIP_BREADTH_UNITS)} />
      {label.inside ? (
        <text
          className="strip-inside"
          x={at.x}
          y={at.y}
          transform={`rotate(${uprightDeg(weight.angleDeg)} ${at.x} ${at.y})`}
        >
          {label.text}
        </text>
      ) : (
        <RimWord
          angleDeg={weight.angleDeg}
          word={label.text}
          outerRadius={inner - 8}
          textUnits={textUnits}
          className="strip-beside"
        />
      )}
    </g>
  );
}

/** Along the strip, but never upside down. */
function uprightDeg(angleDeg: number): number {
  return angleDeg > 90 && angleDeg < 270 ? angleDeg + 180 : angleDeg;
}
