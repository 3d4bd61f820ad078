import type { ScaleLinear } from 'd3-scale';

import { ValveStem } from '../parts/shapes.tsx';
import { displayUnit, type Units } from '../words/displayUnits.ts';
import { formatClock, formatNumber } from '../words/numbers.ts';

type Scale = ScaleLinear<number, number>;

export interface HeightAxisProps {
  readonly y: Scale;
  readonly leftPx: number;
  readonly rightPx: number;
  readonly ticks: number;
  readonly units: Units;
}

/** Millimetres, or inches, on the left, a fine line across at each. */
export function HeightAxis({ y: yOfMm, leftPx, rightPx, ticks, units }: HeightAxisProps) {
  const { size } = displayUnit('length', units);
  const y = yOfMm.copy().domain(yOfMm.domain().map((heightMm) => heightMm / size));
  const values = y.ticks(ticks);
  const decimals = decimalsOf(values);
  return (
    <g className="axis" aria-hidden="true">
      {values.map((value) => (
        <g key={value} transform={`translate(0 ${y(value)})`}>
          <path
            className={value === 0 ? 'axis-zero' : 'axis-fine'}
            d={`M${leftPx} 0 H${rightPx}`}
          />
          <text x={leftPx - 10} dy="0.35em" textAnchor="end">
            {formatNumber(value, decimals)}
          </text>
        </g>
      ))}
    </g>
  );
}

export interface AngleAxisProps {
  readonly x: Scale;
  readonly topPx: number;
  readonly bottomPx: number;
  readonly textPx: number;
}

const QUARTERS_DEG = [0, 90, 180, 270, 360] as const;
/** Below this width of a quarter, clock and degrees do not fit side by side. */
const ROOMY_QUARTER_PX = 170;

/** Wheel angle, the valve at both ends; clock and degrees. */
export function AngleAxis({ x, topPx, bottomPx, textPx }: AngleAxisProps) {
  const roomy = x(90) - x(0) > ROOMY_QUARTER_PX;
  return (
    <g className="axis" aria-hidden="true">
      {QUARTERS_DEG.map((angleDeg) => {
        const atEnd = angleDeg === 360;
        return (
          <g key={angleDeg} transform={`translate(${x(angleDeg)} 0)`}>
            <path className="axis-fine" d={`M0 ${topPx} V${bottomPx + 8}`} />
            {(angleDeg === 0 || atEnd) && (
              <g transform={`translate(0 ${topPx + 2})`}>
                <ValveStem />
              </g>
            )}
            <text
              y={bottomPx + textPx * 1.4}
              textAnchor={angleDeg === 0 ? 'start' : atEnd ? 'end' : 'middle'}
            >
              {roomy ? `${formatClock(angleDeg)} · ${angleDeg}°` : `${angleDeg}°`}
            </text>
          </g>
        );
      })}
    </g>
  );
}

/** As many decimals as the step between ticks needs. */
function decimalsOf(values: readonly number[]): number {
  const step = values.length > 1 ? Math.abs(values[1]! - values[0]!) : 1;
  return Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
}
