import type { SweepSetup } from '../../contract/setup.ts';
import { shortWayDeg, wrapTurnDeg } from '../../quantities/angle.ts';
import { sectorPath } from '../parts/polar.ts';
import { HeavyDrop, LightRing } from '../parts/shapes.tsx';
import { textSizePx, useMeasuredWidth } from '../state/useMeasuredWidth.ts';
import { words } from '../words/words.ts';
import { formatClockAndDeg, type Units } from '../words/numbers.ts';
import { weightList } from './adviceFor.ts';
import type { ReadingSummary } from './readingSummary.ts';
import { RimWord } from './RimWord.tsx';
import { FACE_HALF, WheelFace } from './WheelFace.tsx';
import { STRIP_BREADTH_UNITS, stripLabel, WeightStrip } from './WeightStrip.tsx';
import { wheelLayout, type WheelLayout } from './wheelLayout.ts';

export interface WheelFromAboveProps {
  readonly summary: ReadingSummary;
  readonly setup: SweepSetup;
  readonly units: Units;
}

/** A wedge thinner than this would vanish. */
const THINNEST_WEDGE_DEG = 1.2;
/** Nearer than this to twelve o'clock, the drop would hide the valve. */
const DROP_HIDES_VALVE_DEG = 11;
/** A strip's own label this near to the light spot takes the place of the word "Light". */
const LABEL_REPLACES_WORD_DEG = 45;
/** How far the open ring stands off the rim: clear of the valve. */
const RING_STANDS_OFF = 9;

export function WheelFromAbove({ summary, setup, units }: WheelFromAboveProps) {
  const [ref, widthPx] = useMeasuredWidth<SVGSVGElement>(540);
  const layout = wheelLayout(setup);
  const textUnits = (textSizePx() * 2 * FACE_HALF) / widthPx;
  const { spots, weights } = summary;
  const strips = weights.map((weight) => ({
    weight,
    label: stripLabel(weight, layout, units, textUnits),
  }));
  const valveInside =
    spots !== null && Math.abs(shortWayDeg(0, spots.heavyDeg)) < DROP_HIDES_VALVE_DEG;
  const lightIsNamed =
    spots !== null &&
    strips.some(
      ({ weight, label }) =>
        !label.inside &&
        Math.abs(shortWayDeg(spots.lightDeg, weight.angleDeg)) < LABEL_REPLACES_WORD_DEG,
    );
  const wordEdge = layout.weights - STRIP_BREADTH_UNITS / 2 - 8;
  return (
    <WheelFace
      svgRef={ref}
      layout={layout}
      textUnits={textUnits}
      label={describe(summary, units)}
      valveInside={valveInside}
      under={spots !== null && <Wedge range={spots.lightRangeDeg} layout={layout} />}
    >
      {strips.map(({ weight, label }) => (
        <WeightStrip
          key={`${weight.angleDeg} ${weight.massG}`}
          weight={weight}
          label={label}
          layout={layout}
          textUnits={textUnits}
        />
      ))}
      {spots !== null && (
        <>
          <g transform={`rotate(${spots.heavyDeg}) translate(0 ${-layout.rim})`}>
            <HeavyDrop />
          </g>
          <g transform={`rotate(${spots.lightDeg}) translate(0 ${-layout.rim - RING_STANDS_OFF})`}>
            <LightRing />
          </g>
          <RimWord
            angleDeg={spots.heavyDeg}
            word={words.common.heavyHere}
            outerRadius={wordEdge}
            textUnits={textUnits}
          />
          {!lightIsNamed && (
            <RimWord
              angleDeg={spots.lightDeg}
              word={words.common.lightHere}
              outerRadius={wordEdge}
              textUnits={textUnits}
            />
          )}
        </>
      )}
    </WheelFace>
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

function describe({ spots, weights }: ReadingSummary, units: Units): string {
  if (spots === null) return `${words.reading.wheelTitle}. ${words.reading.noClearSide}.`;
  const stuck = weights.length === 0 ? words.reading.noWeights : weightList(weights, units);
  const parts = [
    words.reading.wheelTitle,
    `${words.reading.heavySpot} ${formatClockAndDeg(spots.heavyDeg)}`,
    `${words.reading.lightSpot} ${formatClockAndDeg(spots.lightDeg)}`,
    `${words.reading.weights}: ${stuck}`,
  ];
  return `${parts.join('. ')}.`;
}
