import type { PackedEntry, TraceHead } from '../../contract/logbook.ts';
import { succeeded, type Outcome } from '../../contract/outcome.ts';
import { readEntry, readPackedTrace, type RecordTrouble } from '../../contract/readRecords.ts';
import { LISTS, unpackedTrace } from './packedTrace.ts';

/** An entry as it is stored: the points of its trace lie beside it. */
export interface EntryRow {
  readonly row: unknown;
  readonly points: Float32Array<ArrayBuffer> | null;
}

export function rowOfPacked({ entry, trace }: PackedEntry): EntryRow {
  if (trace === null) return { row: entry, points: null };
  return { row: { ...entry, trace: trace.head }, points: trace.points };
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

/** The entry of a row, checked, its trace left packed: what {@link entryOfRow} is for a drawing. */
export function packedEntryOfRow(
  row: unknown,
  points: Float32Array<ArrayBuffer> | undefined,
): Outcome<PackedEntry, RecordTrouble> {
  const head = traceHeadOf(row);
  const entry = readEntry(head === null ? row : { ...(row as object), trace: null });
  if (!entry.ok) return entry;
  const hasTrace = entry.value.kind === 'sweep' && head !== null;
  if (!hasTrace || points?.length !== LISTS * head.pointCount) {
    return succeeded({ entry: entry.value, trace: null });
  }
  const trace = readPackedTrace({ head, points });
  return trace.ok ? succeeded({ entry: entry.value, trace: trace.value }) : trace;
}

function traceHeadOf(row: unknown): TraceHead | null {
  if (typeof row !== 'object' || row === null || !('trace' in row)) return null;
  return row.trace as TraceHead | null;
}
