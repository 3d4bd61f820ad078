import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';

import type { SweepPair } from '../../job/sweepPair.ts';
import { AngleAxis, HeightAxis } from '../read/TraceAxes.tsx';
import { NORMAL_95, readingSummary } from '../read/readingSummary.ts';
import { onceRoundCurve, type TracePoint } from '../read/traceCurves.ts';
import { textSizePx, useMeasuredWidth } from '../state/useMeasuredWidth.ts';
import { formatLength, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import type { AcceptedSweep } from '../../job/wheelState.ts';

const HEIGHT_PX = 320;

/** Both once-round waves about their means, over each other: the flatter, the better balanced. */
export function BeforeAfterTrace({
  pair: { before, after },
  units,
}: {
  readonly pair: SweepPair;
  readonly units: Units;
}) {
  const [ref, widthPx] = useMeasuredWidth<SVGSVGElement>(1100);
  const text = textSizePx();
  if (before === null) return <p>{words.proof.noBefore}</p>;
  const reach = 1.15 * Math.max(1, riseOf(before), riseOf(after));
  const left = text * 3.2;
  const bottomPx = HEIGHT_PX - text * 2.6;
  const x = scaleLinear([0, 360], [left, widthPx - text]);
  const y = scaleLinear([-reach, reach], [bottomPx, text]).nice(5);
  const path = line<TracePoint>(
    ({ angleDeg }) => x(angleDeg),
    ({ valueMm }) => y(valueMm),
  );
  const rise = ({ reading, setup }: AcceptedSweep) => {
    const { edgeRiseStandardErrorMm: sdMm } = readingSummary(reading, setup);
    return formatLength(2 * reading.tilt.edgeRiseMm, units, 2 * NORMAL_95 * sdMm).text;
  };
  return (
    <section className="trace" aria-labelledby="proof-trace-title">
      <h2 id="proof-trace-title">{words.proof.traceTitle}</h2>
      <svg
        ref={ref}
        width="100%"
        height={HEIGHT_PX}
        role="img"
        aria-label={words.proof.traceText(rise(before), rise(after))}
      >
        <HeightAxis y={y} leftPx={left} rightPx={widthPx - text} ticks={5} units={units} />
        <path className="proof-before" d={path(wave(before)) ?? ''} />
        <path className="proof-after" d={path(wave(after)) ?? ''} />
        <AngleAxis x={x} topPx={text} bottomPx={bottomPx} textPx={text} />
      </svg>
      <ul className="trace-legend" aria-hidden="true">
        <li className="trace-key-before">
          {words.proof.before} {rise(before)}
        </li>
        <li className="trace-key-after">
          {words.proof.after} {rise(after)}
        </li>
      </ul>
    </section>
  );
}

/** From the reading itself: a record kept without its trace can still be drawn. */
function wave({ reading }: AcceptedSweep): readonly TracePoint[] {
  const { edgeRiseMm, highSpotDeg } = reading.tilt;
  const angle = (highSpotDeg * Math.PI) / 180;
  return onceRoundCurve({
    offsetMm: 0,
    cosMm: [edgeRiseMm * Math.cos(angle)],
    sinMm: [edgeRiseMm * Math.sin(angle)],
  });
}

function riseOf({ reading }: AcceptedSweep): number {
  return reading.tilt.edgeRiseMm;
}
