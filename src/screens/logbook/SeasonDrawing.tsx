import type { LogEntry, SweepEntry } from '../../contract/logbook.ts';
import { clockPoint } from '../parts/polar.ts';
import { textSizePx, useMeasuredWidth } from '../state/useMeasuredWidth.ts';
import { displayUnit } from '../words/displayUnits.ts';
import { formatDay, formatKnownMass, unitName, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { amountOf } from './amountOf.ts';

const WIDTH = 900;
const HEIGHT = 300;
const BOTTOM = 44;
const TOP = 64;
const DIAL_RADIUS = 16;
/** Dials of more readings would cover each other: the latest are drawn. */
const MOST_DRAWN = 18;

/** Amount over time, each reading a stem as high as its grams, with its light spot on a small dial. */
export function SeasonDrawing({
  entries,
  units,
}: {
  readonly entries: readonly LogEntry[];
  readonly units: Units;
}) {
  const [ref, widthPx] = useMeasuredWidth<SVGSVGElement>(WIDTH);
  const read = entries
    .filter((entry): entry is SweepEntry => entry.kind === 'sweep')
    .flatMap((entry) => {
      const amount = amountOf(entry);
      return amount === null ? [] : [{ ...amount, id: entry.id, at: entry.at }];
    })
    .slice(-MOST_DRAWN);
  if (read.length < 2) return null;
  const letters = (textSizePx() * WIDTH) / widthPx;
  // Room for "123 g" in letters of any size.
  const left = 3.2 * letters;
  const most = Math.max(...read.map(({ amountG, plusMinusG }) => amountG + plusMinusG), 1);
  const step = (WIDTH - left - 2 * DIAL_RADIUS) / read.length;
  const x = (i: number) => left + DIAL_RADIUS + step * (i + 0.5);
  const y = (grams: number) => HEIGHT - BOTTOM - (grams / most) * (HEIGHT - BOTTOM - TOP);
  const first = formatDay(read[0]!.at);
  const last = formatDay(read.at(-1)!.at);
  const { finestDecimals } = displayUnit('weight', units);
  const topLabel = formatKnownMass(Number(most.toFixed(finestDecimals > 1 ? 1 : 0)), units);
  return (
    <section className="season">
      <h2>{words.logbook.seasons}</h2>
      <svg
        ref={ref}
        className="season-drawing"
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`${words.logbook.amountAxis(unitName('weight', units))}. ${words.logbook.seasonsText(read.length, first, last)}`}
        style={{ fontSize: letters }}
      >
        <path className="season-axis" d={`M${left} ${TOP} V${y(0)} H${WIDTH}`} />
        <text x={left - 8} y={TOP + letters * 0.4} textAnchor="end">
          {topLabel}
        </text>
        <text x={left - 8} y={y(0)} textAnchor="end">
          0
        </text>
        {read.map(({ id, amountG, plusMinusG, lightSpotDeg }, i) => {
          const spot = clockPoint(lightSpotDeg, DIAL_RADIUS);
          const dialY = y(amountG + plusMinusG) - DIAL_RADIUS - 8;
          return (
            <g key={id}>
              <path className="season-stem" d={`M${x(i)} ${y(0)} V${y(amountG)}`} />
              <path
                className="season-spread"
                d={`M${x(i)} ${y(Math.max(0, amountG - plusMinusG))} V${y(amountG + plusMinusG)}`}
              />
              <circle className="season-dial" cx={x(i)} cy={dialY} r={DIAL_RADIUS} />
              <circle className="season-spot" cx={x(i) + spot.x} cy={dialY + spot.y} r={6} />
            </g>
          );
        })}
        <text x={left} y={HEIGHT - 6}>
          {first}
        </text>
        <text x={WIDTH} y={HEIGHT - 6} textAnchor="end">
          {last}
        </text>
      </svg>
    </section>
  );
}
