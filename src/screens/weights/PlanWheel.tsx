import type { WeightPlace } from '../../balance/weightChoice.ts';
import type { WheelArcRecord } from '../../contract/logbook.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import { HeavyDrop, LightRing } from '../parts/shapes.tsx';
import type { ReadingSummary } from '../read/readingSummary.ts';
import { FACE_HALF, WheelFace } from '../read/WheelFace.tsx';
import { wheelLayout } from '../read/wheelLayout.ts';
import { stripLabel, WeightStrip } from '../read/WeightStrip.tsx';
import { textSizePx, useMeasuredWidth } from '../state/useMeasuredWidth.ts';
import { formatClockAndDeg, formatKnownMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { BlockedArc } from './BlockedArc.tsx';
import { useDrawnArc } from './useDrawnArc.ts';

export interface PlanWheelProps {
  readonly summary: ReadingSummary;
  readonly setup: SweepSetup;
  readonly places: readonly WeightPlace[];
  readonly arcs: readonly WheelArcRecord[];
  /** What will be left, in words. */
  readonly left: string;
  readonly units: Units;
  /** True while a finger on the rim draws a blocked stretch. */
  readonly drawing: boolean;
  readonly onArc: (arc: WheelArcRecord) => void;
}

export function PlanWheel(props: PlanWheelProps) {
  const { summary, setup, places, arcs, units, drawing } = props;
  const [svg, widthPx] = useMeasuredWidth<SVGSVGElement>(540);
  const layout = wheelLayout(setup);
  const textUnits = (textSizePx() * 2 * FACE_HALF) / widthPx;
  const { drawn, ...finger } = useDrawnArc(props.onArc);
  return (
    <div
      className="plan-wheel"
      data-drawing={drawing}
      role={drawing ? 'application' : undefined}
      aria-label={drawing ? words.weights.drawing : undefined}
      {...(drawing ? finger : {})}
    >
      <WheelFace
        svgRef={svg}
        layout={layout}
        textUnits={textUnits}
        label={words.weights.wheelText(placesText(places, units), props.left)}
        under={
          <>
            {arcs.map((arc) => (
              <BlockedArc key={`${arc.fromDeg} ${arc.toDeg}`} arc={arc} layout={layout} />
            ))}
            {drawn !== null && <BlockedArc arc={drawn} layout={layout} />}
          </>
        }
      >
        {places.map(({ massG, radiusMm, angleDeg }) => {
          const weight = { massG, radiusMm, angleDeg };
          const label = stripLabel(weight, layout, units, textUnits);
          return <WeightStrip key={angleDeg} {...{ weight, label, layout, textUnits }} />;
        })}
        {summary.spots !== null && (
          <>
            <g transform={`rotate(${summary.spots.heavyDeg}) translate(0 ${-layout.rim})`}>
              <HeavyDrop />
            </g>
            <g transform={`rotate(${summary.spots.lightDeg}) translate(0 ${-layout.rim - 9})`}>
              <LightRing />
            </g>
          </>
        )}
      </WheelFace>
    </div>
  );
}

function placesText(places: readonly WeightPlace[], units: Units): string {
  if (places.length === 0) return words.reading.noWeights;
  return places
    .map((place) =>
      words.weights.place(formatKnownMass(place.massG, units), formatClockAndDeg(place.angleDeg)),
    )
    .join(words.reading.and);
}
