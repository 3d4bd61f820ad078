import { scaleLinear, type ScaleLinear } from 'd3-scale';
import { line } from 'd3-shape';

import type { AcceptedReading } from '../../contract/reading.ts';
import type { SweepTrace } from '../../contract/sweep.ts';
import { wrapTurnDeg } from '../../quantities/angle.ts';
import { HeavyDrop, LightRing } from '../parts/shapes.tsx';
import { textSizePx, useMeasuredWidth } from '../state/useMeasuredWidth.ts';
import { formatClockAndDeg, formatLength, unitName, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { NORMAL_95, type ReadingSummary } from './readingSummary.ts';
import { AngleAxis, HeightAxis } from './TraceAxes.tsx';
import {
  drawnRangeMm,
  onceRoundCurve,
  ownShapeCurve,
  rmsMm,
  type TracePoint,
} from './traceCurves.ts';

export interface EdgeTraceProps {
  readonly trace: SweepTrace;
  readonly reading: AcceptedReading;
  readonly summary: ReadingSummary;
  readonly units: Units;
}

const MAIN_HEIGHT_PX = 340;
const RESIDUAL_HEIGHT_PX = 120;
const GAP_PX = 28;
/** Above the crest and below the trough, for the ring and the drop. */
const SIGN_ROOM_PX = 44;

/** The edge unrolled: height against wheel angle, the fitted wave, and what is off it underneath. */
export function EdgeTrace({ trace, reading, summary, units }: EdgeTraceProps) {
  const [ref, widthPx] = useMeasuredWidth<SVGSVGElement>(1100);
  // An outline's heights are counted from a plane of its own, not from the line.
  const isOutline = reading.edge?.kind === 'outline';
  const { traceTitle, traceHeight, outlineTitle, outlineHeight } = words.reading;
  const text = textSizePx();
  const left = text * 3.2;
  const bottom = text * 2.6;
  const x = scaleLinear([0, 360], [left, widthPx - text]);
  const [low, high] = drawnRangeMm(trace.heightMm);
  const y = scaleLinear([low, high], [MAIN_HEIGHT_PX - SIGN_ROOM_PX, text + SIGN_ROOM_PX]).nice(5);
  const residualTop = MAIN_HEIGHT_PX + GAP_PX + text;
  const r = scaleLinear(drawnRangeMm(trace.residualMm), [RESIDUAL_HEIGHT_PX, 8]).nice(3);
  const height = residualTop + RESIDUAL_HEIGHT_PX + bottom;
  const label = words.reading.traceText(
    formatLength(reading.tilt.edgeRiseMm, units, NORMAL_95 * summary.edgeRiseStandardErrorMm).text,
    formatClockAndDeg(reading.tilt.highSpotDeg),
    formatLength(rmsMm(trace.residualMm), units).text,
  );
  return (
    <section className="trace" aria-labelledby="trace-title">
      <h2 id="trace-title">{isOutline ? outlineTitle : traceTitle}</h2>
      <svg ref={ref} width="100%" height={height} role="img" aria-label={label}>
        <HeightAxis y={y} leftPx={left} rightPx={widthPx - text} ticks={5} units={units} />
        <text className="trace-name" x={left + 18} y={text * 0.8}>
          {(isOutline ? outlineHeight : traceHeight)(unitName('length', units))}
        </text>
        <path
          className="trace-points trace-points-wide"
          d={dots(trace.wheelAngleDeg, trace.heightMm, x, y)}
        />
        <path className="trace-wave" d={curvePath(onceRoundCurve(trace.fit), x, y)} />
        <TraceSigns trace={trace} reading={reading} x={x} y={y} />
        <g transform={`translate(0 ${residualTop})`}>
          <HeightAxis y={r} leftPx={left} rightPx={widthPx - text} ticks={3} units={units} />
          <text className="trace-name" x={left + 18} y={-text * 0.35}>
            {words.reading.traceResidual(unitName('length', units))}
          </text>
          <path className="trace-points" d={dots(trace.wheelAngleDeg, trace.residualMm, x, r)} />
          <path className="trace-own" d={curvePath(ownShapeCurve(trace.fit), x, r)} />
        </g>
        <AngleAxis x={x} topPx={text} bottomPx={residualTop + RESIDUAL_HEIGHT_PX} textPx={text} />
      </svg>
      <ul className="trace-legend" aria-hidden="true">
        <li className="trace-key-points">{words.reading.tracePoints}</li>
        <li className="trace-key-wave">{words.reading.traceWave}</li>
        <li className="trace-key-own">{words.reading.traceOwnWave}</li>
      </ul>
      <p className="trace-words">{label}</p>
    </section>
  );
}

/** The light spot stands off the crest, the heavy spot hangs from the trough. */
function TraceSigns({
  trace,
  reading,
  x,
  y,
}: Pick<EdgeTraceProps, 'trace' | 'reading'> & { readonly x: Scale; readonly y: Scale }) {
  const { edgeRiseMm, highSpotDeg } = reading.tilt;
  const at = (angleDeg: number, heightMm: number) =>
    `translate(${x(wrapTurnDeg(angleDeg))} ${y(trace.fit.offsetMm + heightMm)})`;
  return (
    <g aria-hidden="true">
      <g transform={at(highSpotDeg, edgeRiseMm)}>
        <LightRing />
      </g>
      <g transform={`${at(highSpotDeg + 180, -edgeRiseMm)} rotate(180) translate(0 -3)`}>
        <HeavyDrop />
      </g>
    </g>
  );
}

type Scale = ScaleLinear<number, number>;

/** All points as one path of zero-length strokes: a round pen makes each a dot. */
function dots(angleDeg: Float32Array, valueMm: Float32Array, x: Scale, y: Scale): string {
  let path = '';
  for (let i = 0; i < angleDeg.length; i++) {
    const value = valueMm[i]!;
    if (Number.isFinite(value)) path += `M${x(angleDeg[i]!).toFixed(1)} ${y(value).toFixed(1)}h0`;
  }
  return path;
}

function curvePath(points: readonly TracePoint[], x: Scale, y: Scale): string {
  return (
    line<TracePoint>()
      .x((point) => x(point.angleDeg))
      .y((point) => y(point.valueMm))(points) ?? ''
  );
}
