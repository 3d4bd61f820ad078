import type {
  LogbookContents,
  LogEntry,
  PackedContents,
  PackedEntry,
  PackedTrace,
  TraceHead,
} from '../../contract/logbook.ts';
import type { SweepTrace } from '../../contract/sweep.ts';

/**
 * A trace is kept in two parts: what is said in words and numbers, and its three lists as one run of
 * 32-bit floats (angle, height, residual, one list after the other). Stored apart, since a logbook
 * is listed and searched a thousand times for each time that a trace is drawn.
 */
/** Angle, height, residual. */
export const LISTS = 3;

function packedTrace(trace: SweepTrace): PackedTrace {
  const { wheelAngleDeg, heightMm, residualMm, fit, rockingPeriodS, contributionsG } = trace;
  const pointCount = wheelAngleDeg.length;
  const points = new Float32Array(LISTS * pointCount);
  [wheelAngleDeg, heightMm, residualMm].forEach((list, i) => points.set(list, i * pointCount));
  return { head: { pointCount, fit, rockingPeriodS, contributionsG }, points };
}

/** Null where head and points do not belong together. What comes out has still to be checked. */
export function unpackedTrace(head: TraceHead, points: Float32Array): SweepTrace | null {
  const { pointCount, ...rest } = head;
  if (points.length !== LISTS * pointCount) return null;
  const list = (i: number) => points.slice(i * pointCount, (i + 1) * pointCount);
  return { ...rest, wheelAngleDeg: list(0), heightMm: list(1), residualMm: list(2) };
}

export function packedEntry(entry: LogEntry): PackedEntry {
  if (entry.kind !== 'sweep' || entry.trace === null) return { entry, trace: null };
  return { entry: { ...entry, trace: null }, trace: packedTrace(entry.trace) };
}

/** Null for `trace` where its points do not fit its head: the figures stand without the drawing. */
export function unpackedEntry({ entry, trace }: PackedEntry): LogEntry {
  if (entry.kind !== 'sweep' || trace === null) return entry;
  return { ...entry, trace: unpackedTrace(trace.head, trace.points) };
}

export function packedContents(contents: LogbookContents): PackedContents {
  return { ...contents, entries: contents.entries.map(packedEntry) };
}
