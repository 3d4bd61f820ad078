import { scaleLinear } from 'd3-scale';

import { textSizePx, useMeasuredWidth } from '../state/useMeasuredWidth.ts';
import { formatKnownMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { weightList } from './adviceFor.ts';
import type { ReadingSummary } from './readingSummary.ts';

export interface AmountScaleProps {
  readonly summary: ReadingSummary;
  readonly weightStepG: number;
  readonly units: Units;
  readonly figureText: string;
}

/** Room at the right end beyond the larger of band and strip, as a share of it. */
const AIR = 1.12;
/** More pieces than this would be too thin to count. */
const MOST_PIECES_DRAWN = 40;

/**
 * How much is missing, with its ± as a band, over the strip that comes nearest, piece by piece:
 * shows why 28 g are wanted, 30 g are stuck on and 2 g are left.
 */
export function AmountScale({ summary, weightStepG, units, figureText }: AmountScaleProps) {
  const [ref, widthPx] = useMeasuredWidth<SVGSVGElement>(600);
  const stuckG = summary.weights.reduce((sum, weight) => sum + Math.max(weight.massG, 0), 0);
  const [lowG, highG] = summary.amountRangeG;
  const endG = Math.max(highG, stuckG, weightStepG) * AIR;
  const x = scaleLinear([0, endG], [4, widthPx - 4]);
  const text = textSizePx();
  const pieces = Math.min(Math.round(stuckG / weightStepG), MOST_PIECES_DRAWN);
  const shown = summary.spots !== null;
  const label = words.reading.amountScaleText(
    figureText,
    summary.weights.length === 0 ? words.reading.noWeights : weightList(summary.weights, units),
  );
  return (
    <svg
      ref={ref}
      className="amount-scale"
      width="100%"
      height={60 + text}
      role="img"
      aria-label={label}
    >
      <rect className="amount-band" x={x(lowG)} y={4} width={x(highG) - x(lowG)} height={52} />
      <path className="amount-base" d={`M4 30 H${widthPx - 4}`} />
      {shown && (
        <>
          <path className="amount-line" d={`M4 12 H${x(summary.amountG)}`} />
          <circle className="shape-light" cx={x(summary.amountG)} cy={12} r={8} />
        </>
      )}
      {Array.from({ length: pieces }, (_, index) => (
        <rect
          key={index}
          className="shape-weight amount-piece"
          x={x((stuckG * index) / pieces) + 1}
          y={36}
          width={x(stuckG / pieces) - x(0) - 2}
          height={18}
        />
      ))}
      <text x={4} y={56 + text}>
        0
      </text>
      {(stuckG > 0 ? [stuckG] : [weightStepG]).map((massG) => (
        <g key={massG} transform={`translate(${x(massG)} 0)`}>
          <path className="amount-base" d="M0 30 V58" />
          <text y={56 + text} textAnchor={x(massG) > widthPx - 60 ? 'end' : 'middle'}>
            {formatKnownMass(massG, units)}
          </text>
        </g>
      ))}
    </svg>
  );
}
