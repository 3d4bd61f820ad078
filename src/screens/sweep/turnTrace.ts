import type { SweepProgress } from '../../contract/sweep.ts';

/** What the sight has seen of the edge so far: its height above the line by the turn. */
export interface TurnTrace {
  /** Edge height, mm, by whole degrees of turn since the first picture. */
  readonly heights: ReadonlyMap<number, number>;
  /** The report's own turn at the first picture, degrees; null before it. */
  readonly zeroDeg: number | null;
  readonly lastTurnDeg: number | null;
  readonly markSeen: boolean;
  readonly coveredDeg: number;
}

export const EMPTY_TRACE: TurnTrace = {
  heights: new Map(),
  zeroDeg: null,
  lastTurnDeg: null,
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
  if (stage !== 'following' || turnDeg === null || edgeHeightMm === null) return trace;
  const { zeroDeg, lastTurnDeg } = trace;
  const isRebased = markSeen && !trace.markSeen && lastTurnDeg !== null;
  const zero = zeroDeg === null ? turnDeg : isRebased ? zeroDeg + (turnDeg - lastTurnDeg) : zeroDeg;
  const heights = new Map(trace.heights);
  heights.set(Math.round(turnDeg - zero), edgeHeightMm);
  return { heights, zeroDeg: zero, lastTurnDeg: turnDeg, markSeen, coveredDeg };
}

export interface TurnTracePoint {
  /** Degrees of turn in the sense in which the wheel is turned, from the first picture. */
  readonly turnDeg: number;
  readonly heightMm: number;
}

/** In order of turn; a wheel turned counter-clockwise is drawn from left to right as well. */
export function tracePoints(trace: TurnTrace): readonly TurnTracePoint[] {
  const points = [...trace.heights].map(([turnDeg, heightMm]) => ({ turnDeg, heightMm }));
  const reach = points.reduce((sum, { turnDeg }) => sum + turnDeg, 0);
  const sense = reach < 0 ? -1 : 1;
  return points
    .map(({ turnDeg, heightMm }) => ({ turnDeg: sense < 0 ? 0 - turnDeg : turnDeg, heightMm }))
    .toSorted((a, b) => a.turnDeg - b.turnDeg);
}
