import type { SweepProgress } from '../../contract/sweep.ts';

/** What the sight has seen of the edge so far: its height above the line by the turn. */
export interface TurnTrace {
  /** Edge height, mm, by whole degrees of turn since the first picture. */
  readonly heights: ReadonlyMap<number, number>;
  /** The report's own turn at the first picture, degrees; null before it. */
  readonly zeroDeg: number | null;
  readonly lastTurnDeg: number | null;
  /** Whole degrees of turn, as in `heights`, after which line or edge was out of sight. */
  readonly lostAfter: ReadonlySet<number>;
  readonly markSeen: boolean;
  readonly coveredDeg: number;
}

export const EMPTY_TRACE: TurnTrace = {
  heights: new Map(),
  zeroDeg: null,
  lastTurnDeg: null,
  lostAfter: new Set(),
  markSeen: false,
  coveredDeg: 0,
};

/**
 * The trace with one more report. When the tape is found the report's turn is counted from it, from
 * then on: the zero moves along, so that the trace goes on where it was. A sweep that counts less
 * turn than before has begun anew.
 */
export function withReport(trace: TurnTrace, progress: SweepProgress): TurnTrace {
  const { turnDeg, edgeHeightMm, markSeen, stage, coveredDeg } = progress;
  if (stage === 'looking') return EMPTY_TRACE;
  if (coveredDeg < trace.coveredDeg) return withReport(EMPTY_TRACE, progress);
  if (stage === 'lost') return brokenOff(trace);
  if (stage !== 'following' || turnDeg === null || edgeHeightMm === null) return trace;
  const { zeroDeg, lastTurnDeg } = trace;
  const isRebased = markSeen && !trace.markSeen && lastTurnDeg !== null;
  const zero = zeroDeg === null ? turnDeg : isRebased ? zeroDeg + (turnDeg - lastTurnDeg) : zeroDeg;
  const heights = new Map(trace.heights);
  heights.set(Math.round(turnDeg - zero), edgeHeightMm);
  return { ...trace, heights, zeroDeg: zero, lastTurnDeg: turnDeg, markSeen, coveredDeg };
}

function brokenOff(trace: TurnTrace): TurnTrace {
  const { zeroDeg, lastTurnDeg, lostAfter } = trace;
  if (zeroDeg === null || lastTurnDeg === null) return trace;
  return { ...trace, lostAfter: new Set(lostAfter).add(Math.round(lastTurnDeg - zeroDeg)) };
}

export interface TurnTracePoint {
  /** Degrees of turn in the sense in which the wheel is turned, from the first picture. */
  readonly turnDeg: number;
  readonly heightMm: number;
}

/** What the sight saw last, which is not the farthest when the wheel is turned back; null before it. */
export function pointNow(trace: TurnTrace): TurnTracePoint | null {
  const { zeroDeg, lastTurnDeg, heights } = trace;
  if (zeroDeg === null || lastTurnDeg === null) return null;
  const turnDeg = Math.round(lastTurnDeg - zeroDeg);
  const heightMm = heights.get(turnDeg);
  return heightMm === undefined ? null : { turnDeg: turnDeg * senseOf(trace), heightMm };
}

/** In order of turn; a wheel turned counter-clockwise is drawn from left to right as well. */
export function tracePoints(trace: TurnTrace): readonly TurnTracePoint[] {
  const sense = senseOf(trace);
  return [...trace.heights]
    .map(([turnDeg, heightMm]) => ({ turnDeg: turnDeg * sense + 0, heightMm }))
    .toSorted((a, b) => a.turnDeg - b.turnDeg);
}

/** Whether line or edge went out of sight after a point; a film read fast has far points without that. */
export function isLostAfter(trace: TurnTrace, { turnDeg }: TurnTracePoint): boolean {
  return trace.lostAfter.has(turnDeg * senseOf(trace) + 0);
}

/** −1 for a wheel turned counter-clockwise, by where most of what was seen lies. */
function senseOf({ heights }: TurnTrace): 1 | -1 {
  let reach = 0;
  for (const turnDeg of heights.keys()) reach += turnDeg;
  return reach < 0 ? -1 : 1;
}
