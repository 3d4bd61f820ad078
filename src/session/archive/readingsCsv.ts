import type { LogbookContents, SweepEntry, WheelRecord } from '../../contract/logbook.ts';

/**
 * All sweeps as a table (RFC 4180: comma, CRLF, quotes doubled), one line a sweep in order of time.
 * Numbers have a decimal point whatever the language, units stand in the head. Angles are wheel
 * angles, clockwise from the valve.
 */
export function readingsCsv({
  wheels,
  entries,
}: Pick<LogbookContents, 'wheels' | 'entries'>): string {
  const wheelOf = new Map(wheels.map((wheel) => [wheel.id, wheel]));
  const sweeps = entries.filter((entry): entry is SweepEntry => entry.kind === 'sweep');
  const lines = sweeps.map((sweep) =>
    COLUMNS.map(({ of }) => of(sweep, wheelOf.get(sweep.wheelId))),
  );
  return [COLUMNS.map(({ head }) => head), ...lines]
    .map((cells) => `${cells.map(cellText).join(',')}\r\n`)
    .join('');
}

type Cell = string | number | null;
interface Column {
  readonly head: string;
  readonly of: (sweep: SweepEntry, wheel: WheelRecord | undefined) => Cell;
}

const ofReading =
  (value: (reading: Extract<SweepEntry['reading'], { status: 'ok' }>, sweep: SweepEntry) => Cell) =>
  (sweep: SweepEntry): Cell =>
    sweep.reading.status === 'ok' ? value(sweep.reading, sweep) : null;

const COLUMNS: readonly Column[] = [
  { head: 'time (UTC)', of: (sweep) => sweep.at },
  { head: 'wheel', of: (_, wheel) => text(wheel?.label) },
  { head: 'place', of: (_, wheel) => text(wheel?.place) },
  { head: 'tyre', of: (_, wheel) => text(wheel?.tyre) },
  { head: 'source', of: (sweep) => sweep.source },
  { head: 'status', of: (sweep) => sweep.reading.status },
  { head: 'refused for', of: ({ reading }) => reading.refusals.map(({ code }) => code).join(' ') },
  {
    head: 'unbalance (g at weight radius)',
    of: ofReading(({ unbalance }, { setup }) =>
      rounded(unbalance.amountGmm / setup.wheel.weightRadiusMm, 3),
    ),
  },
  {
    head: '95 % low (g)',
    of: ofReading(({ unbalance }, { setup }) =>
      rounded(unbalance.ci95.amountGmm[0] / setup.wheel.weightRadiusMm, 3),
    ),
  },
  {
    head: '95 % high (g)',
    of: ofReading(({ unbalance }, { setup }) =>
      rounded(unbalance.ci95.amountGmm[1] / setup.wheel.weightRadiusMm, 3),
    ),
  },
  { head: 'weight radius (mm)', of: ({ setup }) => setup.wheel.weightRadiusMm },
  { head: 'unbalance (g mm)', of: ofReading(({ unbalance }) => rounded(unbalance.amountGmm, 1)) },
  {
    head: 'heavy spot (deg)',
    of: ofReading(({ unbalance }) => rounded(unbalance.heavySpotDeg, 2)),
  },
  {
    head: 'light spot (deg)',
    of: ofReading(({ unbalance }) => rounded(unbalance.lightSpotDeg, 2)),
  },
  { head: 'edge rise (mm)', of: ofReading(({ tilt }) => rounded(tilt.edgeRiseMm, 4)) },
  { head: 'stand lean (mrad)', of: ofReading(({ tilt }) => rounded(tilt.standMrad, 3)) },
  {
    head: 'response (mm per g mm)',
    of: ofReading(({ response }) => rounded(response.mmPerGmm, 7)),
  },
  { head: 'response from', of: ofReading(({ response }) => response.source) },
  {
    head: 'turn (deg)',
    of: ({ reading }) => (reading.turn ? rounded(reading.turn.coveredDeg, 1) : null),
  },
  {
    head: 'left with the proposed weights (g mm)',
    of: ofReading(({ residualGmm }) => rounded(residualGmm, 1)),
  },
  { head: 'assumed', of: ({ assumed }) => text(assumed.join(' ')) },
];

/**
 * A name that a spreadsheet would take for a formula gets an apostrophe in front: a table from
 * another hand must not compute anything.
 */
function text(value: string | undefined): string {
  if (value === undefined) return '';
  return /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
}

function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}

function cellText(cell: Cell): string {
  if (cell === null) return '';
  const written = String(cell);
  return /[",\r\n]/.test(written) ? `"${written.replaceAll('"', '""')}"` : written;
}
