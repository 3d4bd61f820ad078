import { scaleLinear } from 'd3-scale';

import { NAMED_ROAD_SPEED_KMH, type Proof } from '../../job/proof.ts';
import type { SweepPair } from '../../job/sweepPair.ts';
import { readingSummary } from '../read/readingSummary.ts';
import { textSizePx, useMeasuredWidth } from '../state/useMeasuredWidth.ts';
import { formatKnown, formatKnownMass, formatMass, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';

export interface LeftScaleProps {
  readonly pair: SweepPair;
  readonly proof: Proof;
  readonly units: Units;
}

const HEIGHT_PX = 150;
const LINE_PX = 64;
const BAND_HALF_PX = 13;

/** What is left with its ±, against one weight and against the standard, on one line of grams. */
export function LeftScale({ pair, proof, units }: LeftScaleProps) {
  const [ref, widthPx] = useMeasuredWidth<SVGSVGElement>(600);
  const text = textSizePx();
  const summary = readingSummary(pair.after.reading, pair.after.setup);
  const radiusMm = pair.after.setup.wheel.weightRadiusMm;
  const stepG = proof.oneStepGmm / radiusMm;
  const isoG = proof.permissibleGmm / radiusMm;
  const beforeG = pair.before === null ? 0 : pair.before.reading.unbalance.amountGmm / radiusMm;
  const x = scaleLinear(
    [0, 1.15 * Math.max(isoG, stepG, beforeG, summary.amountRangeG[1])],
    [12, widthPx - 12],
  );
  const [low, high] = summary.amountRangeG;
  const speed = formatKnown('speed', NAMED_ROAD_SPEED_KMH, units);
  const mass = (massG: number) => formatMass(massG, units).text;
  return (
    <section className="left-scale" aria-labelledby="left-scale-title">
      <h2 id="left-scale-title">{words.proof.measuresTitle}</h2>
      <svg
        ref={ref}
        width="100%"
        height={HEIGHT_PX}
        role="img"
        aria-label={words.proof.scaleText(
          formatMass(summary.amountG, units, summary.amountPlusMinusG).text,
          formatKnownMass(stepG, units),
          mass(isoG),
        )}
      >
        <path className="amount-base" d={`M${x(0)} ${LINE_PX} H${widthPx - 12}`} />
        <rect
          className="amount-band"
          x={x(low)}
          width={Math.max(3, x(high) - x(low))}
          y={LINE_PX - BAND_HALF_PX}
          height={2 * BAND_HALF_PX}
        />
        {pair.before !== null && (
          <g transform={`translate(${x(beforeG)} ${LINE_PX})`}>
            <circle className="left-before" r={9} />
            <text y={-22} textAnchor={anchorAt(x(beforeG), widthPx)}>
              {words.proof.before}
            </text>
          </g>
        )}
        <circle className="left-after" cx={x(summary.amountG)} cy={LINE_PX} r={11} />
        <Limit at={x(stepG)} widthPx={widthPx} rowPx={LINE_PX + text * 1.6}>
          {words.proof.oneStep(formatKnownMass(stepG, units))}
        </Limit>
        <Limit at={x(isoG)} widthPx={widthPx} rowPx={LINE_PX + text * 2.9}>
          {words.proof.iso(mass(isoG))}
        </Limit>
      </svg>
      <p>{words.proof.practiceNote}</p>
      <p>{words.proof.isoNote(speed)}</p>
    </section>
  );
}

function Limit(props: {
  readonly at: number;
  readonly widthPx: number;
  readonly rowPx: number;
  readonly children: string;
}) {
  return (
    <g>
      <path
        className="left-limit"
        d={`M${props.at} ${LINE_PX - 24} V${props.rowPx - textSizePx() * 0.9}`}
      />
      <text x={props.at} y={props.rowPx} textAnchor={anchorAt(props.at, props.widthPx)}>
        {props.children}
      </text>
    </g>
  );
}

/** Words near an end must not run out of the drawing. */
function anchorAt(xPx: number, widthPx: number): 'start' | 'middle' | 'end' {
  if (xPx < 0.25 * widthPx) return 'start';
  return xPx > 0.75 * widthPx ? 'end' : 'middle';
}
