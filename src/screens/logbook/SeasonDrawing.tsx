import type { LogEntry } from '../../contract/logbook.ts';
import { clockPoint } from '../parts/polar.ts';
import { textSizePx, useMeasuredWidth } from '../state/useMeasuredWidth.ts';
import { displayUnit } from '../words/displayUnits.ts';
import { formatDay, formatKnownMass, unitName, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';
import { seasonReadings, type SeasonReading } from './seasonReadings.ts';

const WIDTH = 900;
const HEIGHT = 300;
const BOTTOM = 44;
const TOP = 64;
const DIAL_RADIUS = 16;
const BAR_WIDTH = 14;
/** Of few readings: a check stays beside the reading that it belongs to. */
const WIDEST_COLUMN = 170;

/**
 * Amount over time, each reading a bar as high as its grams, with its light spot on a small dial.
 * How the wheel came is a full bar, what its weights left an open one beside it.
 */
export function SeasonDrawing({
  entries,
  units,
}: {
  readonly entries: readonly LogEntry[];
  readonly units: Units;
}) {
  const [ref, widthPx] = useMeasuredWidth<SVGSVGElement>(WIDTH);
  const read = seasonReadings(entries);
  if (read.length < 2) return null;
  const letters = (textSizePx() * WIDTH) / widthPx;
  // Room for "123 g" in letters of any size.
  const left = 3.2 * letters;
  const most = Math.max(...read.map(({ amountG, plusMinusG }) => amountG + plusMinusG), 1);
  const room = WIDTH - left - 2 * DIAL_RADIUS;
  const column = Math.min(WIDEST_COLUMN, room / (read.at(-1)!.place + 1));
  const x = ({ place }: SeasonReading) => left + DIAL_RADIUS + column * (place + 0.5);
  const y = (grams: number) => HEIGHT - BOTTOM - (grams / most) * (HEIGHT - BOTTOM - TOP);
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
        aria-label={labelOf(read, units)}
        style={{ fontSize: letters }}
      >
        <path className="season-axis" d={`M${left} ${TOP} V${y(0)} H${WIDTH}`} />
        <text x={left - 8} y={TOP + letters * 0.4} textAnchor="end">
          {topLabel}
        </text>
        <text x={left - 8} y={y(0)} textAnchor="end">
          0
        </text>
        {read.map((reading) => (
          <SeasonBar key={reading.id} reading={reading} x={x(reading)} y={y} />
        ))}
        {daysBelow(read, x, left, letters).map(({ text, middle }) => (
          <text key={text} x={middle} y={HEIGHT - 6} textAnchor="middle">
            {text}
          </text>
        ))}
      </svg>
      {read.some(({ isCheck }) => isCheck) && (
        <ul className="season-legend">
          <LegendLine isCheck={false} word={words.logbook.asItCame} />
          <LegendLine isCheck word={words.logbook.leftWithWeights} />
        </ul>
      )}
    </section>
  );
}

interface SeasonBarProps {
  readonly reading: SeasonReading;
  readonly x: number;
  readonly y: (grams: number) => number;
}

function SeasonBar({ reading, x, y }: SeasonBarProps) {
  const { amountG, plusMinusG, lightSpotDeg, isCheck } = reading;
  const spot = clockPoint(lightSpotDeg, DIAL_RADIUS);
  const dialY = y(amountG + plusMinusG) - DIAL_RADIUS - 8;
  return (
    <g data-check={isCheck}>
      <rect
        className="season-bar"
        x={x - BAR_WIDTH / 2}
        y={y(amountG)}
        width={BAR_WIDTH}
        height={y(0) - y(amountG)}
      />
      <path
        className="season-spread"
        d={`M${x} ${y(Math.max(0, amountG - plusMinusG))} V${y(amountG + plusMinusG)}`}
      />
      <circle className="season-dial" cx={x} cy={dialY} r={DIAL_RADIUS} />
      <circle className="season-spot" cx={x + spot.x} cy={dialY + spot.y} r={6} />
    </g>
  );
}

function LegendLine({ isCheck, word }: { readonly isCheck: boolean; readonly word: string }) {
  return (
    <li>
      <svg viewBox="-10 -14 20 28" aria-hidden="true" focusable="false">
        <g data-check={isCheck}>
          <rect className="season-bar" x={-BAR_WIDTH / 2} y={-12} width={BAR_WIDTH} height={24} />
        </g>
      </svg>
      {word}
    </li>
  );
}

function labelOf(read: readonly SeasonReading[], units: Units): string {
  const checks = read.filter(({ isCheck }) => isCheck).length;
  const [first, last] = [formatDay(read[0]!.at), formatDay(read.at(-1)!.at)];
  const said = words.logbook.seasonsText(read.length - checks, checks, first, last);
  return `${words.logbook.amountAxis(unitName('weight', units))}. ${said}`;
}

/** Width of a letter, on average, in its height. */
const LETTER_WIDTH = 0.6;

/** The day of every season under its first bar, as far as there is room; each day once. */
function daysBelow(
  read: readonly SeasonReading[],
  x: (reading: SeasonReading) => number,
  left: number,
  letters: number,
): readonly { readonly text: string; readonly middle: number }[] {
  let free = left - letters;
  let before = '';
  return read.flatMap((reading, i) => {
    const text = formatDay(reading.at);
    if ((reading.isCheck && i > 0) || text === before) return [];
    const half = (LETTER_WIDTH * letters * text.length) / 2;
    const middle = Math.min(Math.max(x(reading), left + half), WIDTH - half);
    if (middle - half < free + letters) return [];
    free = middle + half;
    before = text;
    return [{ text, middle }];
  });
}
