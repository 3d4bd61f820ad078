import type { WheelArcRecord } from '../../contract/logbook.ts';
import { wrapTurnDeg } from '../../quantities/angle.ts';
import { sectorPath } from '../parts/polar.ts';
import type { WheelLayout } from '../read/wheelLayout.ts';
import { STRIP_BREADTH_UNITS } from '../read/WeightStrip.tsx';

/** Hatched: told from everything else on the rim by its texture, not by colour. */
export function BlockedArc({
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
