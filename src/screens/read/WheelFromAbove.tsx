import type { SweepSetup } from '../../contract/setup.ts';
import { wrapTurnDeg } from '../../quantities/angle.ts';
import { clockPoint, sectorPath } from '../parts/polar.ts';
import { HeavyDrop, LightRing, ValveStem } from '../parts/shapes.tsx';
import { textSizePx, useMeasuredWidth } from '../state/useMeasuredWidth.ts';
import { commonWords } from '../words/commonWords.ts';
import { formatClockAndDeg, type MassUnit } from '../words/numbers.ts';
import { readingWords } from '../words/readingWords.ts';
import { weightList } from './adviceFor.ts';
import type { ReadingSummary } from './readingSummary.ts';
import { WeightStrip } from './WeightStrip.tsx';
import { wheelLayout, type WheelLayout } from './wheelLayout.ts';

export interface WheelFromAboveProps {
  readonly summary: ReadingSummary;
  readonly setup: SweepSetup;
  readonly unit: MassUnit;
}

/** Half the width of the drawing, in its units. */
const HALF = 318;
/** Words for heavy and light stand this far out, just off the tyre. */
const WORD_RADIUS = 275;
/** A wedge thinner than this would vanish. */
const THINNEST_WEDGE_DEG = 1.2;

export function WheelFromAbove({ summary, setup, unit }: WheelFromAboveProps) {
  const [ref, widthPx] = useMeasuredWidth<SVGSVGElement>(560);
  const layout = wheelLayout(setup);
  const textUnits = (textSizePx() * 2 * HALF) / widthPx;
  const { spots, weights } = summary;
  return (
    <svg
      ref={ref}
      className="wheel-drawing"
      viewBox={`${-HALF} ${-HALF} ${2 * HALF} ${2 * HALF}`}
      role="img"
      aria-label={describe(summary, unit)}
      style={{ fontSize: textUnits }}
    >
      <circle className="wheel-tyre" r={layout.tyre} />
      <circle className="wheel-rim" r={layout.rim} />
      {spots !== null && <Wedge range={spots.lightRangeDeg} layout={layout} />}
      <circle className="wheel-circle" r={layout.weights} />
      <circle className="wheel-bore" r={layout.bore} />
      <Dial layout={layout} />
      <g transform={`translate(0 ${-layout.rim + 14})`}>
        <ValveStem />
      </g>
      {weights.map((weight) => (
        <WeightStrip
          key={`${weight.angleDeg} ${weight.massG}`}
          weight={weight}
          layout={layout}
          unit={unit}
          textUnits={textUnits}
        />
      ))}
      {spots !== null && (
        <>
          <g transform={`rotate(${spots.heavyDeg}) translate(0 ${-layout.rim})`}>
            <HeavyDrop />
          </g>
          <g transform={`rotate(${spots.lightDeg}) translate(0 ${-layout.rim - 2})`}>
            <LightRing />
          </g>
          <Word angleDeg={spots.heavyDeg} word={commonWords.heavyHere} />
          <Word angleDeg={spots.lightDeg} word={commonWords.lightHere} />
        </>
      )}
    </svg>
  );
}

/** The clock face on the tyre, in chalk: a figure at every quarter, a stroke at every hour. */
function Dial({ layout }: { readonly layout: WheelLayout }) {
  const hours = Array.from({ length: 12 }, (_, index) => index + 1);
  return (
    <g className="wheel-dial">
      {hours.map((hour) => {
        const at = clockPoint(hour * 30, layout.tyre - 21);
        return hour % 3 === 0 ? (
          <text key={hour} x={at.x} y={at.y}>
            {hour}
          </text>
        ) : (
          <path
            key={hour}
            transform={`rotate(${hour * 30})`}
            d={`M0 ${-layout.tyre + 10} V${-layout.tyre + 26}`}
          />
        );
      })}
    </g>
  );
}

/** The ± of the place: from the hub to the rim, as wide as the angle's 95 % range. */
function Wedge({
  range,
  layout,
}: {
  readonly range: readonly [number, number];
  readonly layout: WheelLayout;
}) {
  const widthDeg = wrapTurnDeg(range[1] - range[0]);
  const padDeg = Math.max(0, THINNEST_WEDGE_DEG - widthDeg) / 2;
  return (
    <path
      className="wheel-wedge"
      d={sectorPath(range[0] - padDeg, range[0] + widthDeg + padDeg, layout.bore, layout.rim)}
    />
  );
}

function Word({ angleDeg, word }: { readonly angleDeg: number; readonly word: string }) {
  const at = clockPoint(angleDeg, WORD_RADIUS);
  return (
    <text className="wheel-word" x={at.x} y={at.y}>
      {word}
    </text>
  );
}

function describe({ spots, weights }: ReadingSummary, unit: MassUnit): string {
  if (spots === null) return `${readingWords.wheelTitle}. ${readingWords.noClearSide}.`;
  const parts = [
    readingWords.wheelTitle,
    `${readingWords.heavySpot} ${formatClockAndDeg(spots.heavyDeg)}`,
    `${readingWords.lightSpot} ${formatClockAndDeg(spots.lightDeg)}`,
    `${readingWords.weights}: ${weights.length === 0 ? readingWords.noWeights : weightList(weights, unit)}`,
  ];
  return `${parts.join('. ')}.`;
}
