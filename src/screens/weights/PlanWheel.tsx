import { useRef, useState, type PointerEvent } from 'react';

import type { WeightPlace } from '../../balance/weightChoice.ts';
import type { WheelArcRecord } from '../../contract/logbook.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import { shortWayDeg, wrapTurnDeg } from '../../quantities/angle.ts';
import { sectorPath } from '../parts/polar.ts';
import { HeavyDrop, LightRing } from '../parts/shapes.tsx';
import type { ReadingSummary } from '../read/readingSummary.ts';
import { FACE_HALF, WheelFace } from '../read/WheelFace.tsx';
import { wheelLayout, type WheelLayout } from '../read/wheelLayout.ts';
import { STRIP_BREADTH_UNITS, stripLabel, WeightStrip } from '../read/WeightStrip.tsx';
import { textSizePx, useMeasuredWidth } from '../state/useMeasuredWidth.ts';
import { formatClockAndDeg, formatKnownMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { wheelAngleAt } from './wheelAngleAt.ts';

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

/** A stretch shorter than this was a slip of the finger, degrees. */
const SHORTEST_ARC_DEG = 4;

export function PlanWheel(props: PlanWheelProps) {
  const { summary, setup, places, arcs, units, drawing } = props;
  const [svg, widthPx] = useMeasuredWidth<SVGSVGElement>(540);
  const layout = wheelLayout(setup);
  const textUnits = (textSizePx() * 2 * FACE_HALF) / widthPx;
  const { drawn, ...finger } = useDrawnArc(props);
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

/** Hatched: told from everything else on the rim by its texture, not by colour. */
function BlockedArc({
  arc,
  layout,
}: {
  readonly arc: WheelArcRecord;
  readonly layout: WheelLayout;
}) {
  const span = wrapTurnDeg(arc.toDeg - arc.fromDeg) || 359.9;
  const half = STRIP_BREADTH_UNITS / 2 + 4;
  const strokes = Math.max(1, Math.floor(span / 5));
  return (
    <g className="blocked-arc">
      <path
        d={sectorPath(
          arc.fromDeg,
          arc.fromDeg + span,
          layout.weights - half,
          layout.weights + half,
        )}
      />
      {Array.from({ length: strokes }, (_, i) => (
        <path
          key={i}
          className="blocked-hatch"
          transform={`rotate(${arc.fromDeg + ((i + 0.5) * span) / strokes})`}
          d={`M-7 ${-layout.weights + half} L7 ${-layout.weights - half}`}
        />
      ))}
    </g>
  );
}

/** Follows one finger along the rim; the stretch runs the way the finger went. */
function useDrawnArc({ onArc }: Pick<PlanWheelProps, 'onArc'>) {
  const [drawn, setDrawn] = useState<WheelArcRecord | null>(null);
  const course = useRef<{ startDeg: number; lastDeg: number; sumDeg: number } | null>(null);
  const arcOf = ({ startDeg, sumDeg }: { startDeg: number; sumDeg: number }): WheelArcRecord => {
    const ends = sumDeg >= 0 ? [startDeg, startDeg + sumDeg] : [startDeg + sumDeg, startDeg];
    return { fromDeg: wrapTurnDeg(ends[0]!), toDeg: wrapTurnDeg(ends[1]!) };
  };
  return {
    drawn,
    onPointerDown(event: PointerEvent<HTMLElement>) {
      event.currentTarget.setPointerCapture(event.pointerId);
      const startDeg = wheelAngleAt(event);
      course.current = { startDeg, lastDeg: startDeg, sumDeg: 0 };
    },
    onPointerMove(event: PointerEvent<HTMLElement>) {
      if (course.current === null) return;
      const nowDeg = wheelAngleAt(event);
      const { startDeg, lastDeg, sumDeg } = course.current;
      const whole = Math.max(-359, Math.min(359, sumDeg + shortWayDeg(lastDeg, nowDeg)));
      course.current = { startDeg, lastDeg: nowDeg, sumDeg: whole };
      setDrawn(arcOf(course.current));
    },
    onPointerUp() {
      const done = course.current;
      course.current = null;
      setDrawn(null);
      if (done !== null && Math.abs(done.sumDeg) >= SHORTEST_ARC_DEG) onArc(arcOf(done));
    },
    onPointerCancel() {
      course.current = null;
      setDrawn(null);
    },
  };
}

function placesText(places: readonly WeightPlace[], units: Units): string {
  if (places.length === 0) return words.reading.noWeights;
  return places
    .map((place) =>
      words.weights.place(formatKnownMass(place.massG, units), formatClockAndDeg(place.angleDeg)),
    )
    .join(words.reading.and);
}
