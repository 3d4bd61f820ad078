import type { LogEntry } from '../../contract/logbook.ts';
import { packedTrace, unpackedTrace, type TraceHead } from './packedTrace.ts';

/** An entry as it is stored: the points of its trace lie beside it. */
export interface EntryRow {
  readonly row: unknown;
  readonly points: Float32Array<ArrayBuffer> | null;
}

export function rowOfEntry(entry: LogEntry): EntryRow {
  if (entry.kind !== 'sweep' || entry.trace === null) return { row: entry, points: null };
  const { head, points } = packedTrace(entry.trace);
  return { row: { ...entry, trace: head }, points };
}

/**
 * The entry of a row, still to be checked. Where the points do not fit, the trace is left out: the
 * figures stand without the drawing.
 */
export function entryOfRow(row: unknown, points: Float32Array | undefined): unknown {
  const head = traceHeadOf(row);
  if (head === null) return row;
  return { ...(row as object), trace: points ? unpackedTrace(head, points) : null };
}

function traceHeadOf(row: unknown): TraceHead | null {
  if (typeof row !== 'object' || row === null || !('trace' in row)) return null;
  return row.trace as TraceHead | null;
}
