import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';

import { drawnRangeMm } from '../read/traceCurves.ts';
import { textSizePx, useMeasuredWidth } from '../state/useMeasuredWidth.ts';
import { formatKnown, roundedToStep, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import {
  isLostAfter,
  pointNow,
  tracePoints,
  type TurnTrace,
  type TurnTracePoint,
} from './turnTrace.ts';

export interface GrowingTraceProps {
  readonly trace: TurnTrace;
  readonly units: Units;
  /** The tyre's outline is followed: its heights are counted from a plane of its own, not from the line. */
  readonly isOutline: boolean;
}

const HEIGHT_PX = 132;
/** The sweep ends a little past the whole turn. */
const END_DEG = 390;
const QUARTERS_DEG = [0, 90, 180, 270, 360] as const;
/** The edge against the laser line as it passes the sight: grows from left to right. */
export function GrowingTrace({ trace, units, isOutline }: GrowingTraceProps) {
  const [ref, widthPx] = useMeasuredWidth<SVGSVGElement>(600);
  const text = textSizePx();
  const points = tracePoints(trace);
  const [low, high] = drawnRangeMm(points.map(({ heightMm }) => heightMm));
  const x = scaleLinear([0, END_DEG], [8, widthPx - 8]);
  const y = scaleLinear([low, high], [HEIGHT_PX - text * 1.3, text * 0.4 + 8]);
  const draw = line<TurnTracePoint | null>()
    .defined((point) => point !== null)
    .x((point) => x(point!.turnDeg))
    .y((point) => y(point!.heightMm));
  const now = pointNow(trace);
  return (
    <figure className="growing">
      <figcaption>{isOutline ? words.sweep.traceOutline : captionNow(now, units)}</figcaption>
      <svg ref={ref} width="100%" height={HEIGHT_PX} aria-hidden="true" focusable="false">
        {QUARTERS_DEG.map((deg) => (
          <g key={deg} transform={`translate(${x(deg)} 0)`}>
            <path className="axis-fine" d={`M0 4 V${HEIGHT_PX - text * 1.15}`} />
            <text
              y={HEIGHT_PX - 4}
              textAnchor={deg === 0 ? 'start' : deg === 360 ? 'end' : 'middle'}
            >
              {deg}°
            </text>
          </g>
        ))}
        {!isOutline && low < 0 && high > 0 && (
          <path className="growing-line" d={`M8 ${y(0)} H${widthPx - 8}`} />
        )}
        <path className="growing-edge" d={draw(withGaps(trace, points)) ?? ''} />
        {now !== null && (
          <circle className="growing-now" cx={x(now.turnDeg)} cy={y(now.heightMm)} r={8} />
        )}
      </svg>
    </figure>
  );
}

function captionNow(now: TurnTracePoint | null, units: Units): string {
  return now === null ? words.sweep.trace : edgeNow(now.heightMm, units);
}

/** Whole millimetres, or the step of an inch: what can be read while the wheel moves. */
function edgeNow(heightMm: number, units: Units): string {
  const rounded = roundedToStep('length', Math.abs(heightMm), units);
  if (rounded === 0) return words.sweep.edgeOnLine;
  const distance = formatKnown('length', rounded, units);
  return heightMm > 0 ? words.sweep.edgeAbove(distance) : words.sweep.edgeBelow(distance);
}

function withGaps(trace: TurnTrace, points: readonly TurnTracePoint[]): (TurnTracePoint | null)[] {
  return points.flatMap((point) => (isLostAfter(trace, point) ? [point, null] : [point]));
}
