import * as v from 'valibot';

import { FilmRecordSchema, type FilmRecord } from '../../contract/filmShelf.ts';
import type { PackedContents, PackedEntry, WheelRecord } from '../../contract/logbook.ts';
import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import { readStand, readWheel } from '../../contract/readRecords.ts';
import { packedEntryOfRow } from '../logbook/entryRows.ts';
import { ARCHIVE_FORMAT, IS_LITTLE_ENDIAN } from './archiveFormat.ts';

/** Ten times what a logbook is made for. */
const MOST_WHEELS = 20_000;
const MOST_ENTRIES = 100_000;
const MOST_FILMS = 5000;

const OutlineSchema = v.object({
  format: v.literal(ARCHIVE_FORMAT),
  madeAt: v.pipe(v.string(), v.isoTimestamp()),
  stand: v.unknown(),
  wheels: v.pipe(v.array(v.unknown()), v.maxLength(MOST_WHEELS)),
  entries: v.pipe(v.array(v.unknown()), v.maxLength(MOST_ENTRIES)),
  films: v.pipe(v.array(FilmRecordSchema), v.maxLength(MOST_FILMS)),
});

export interface CheckedLogbook {
  readonly contents: PackedContents;
  readonly films: readonly FilmRecord[];
}

type JsonTrouble = 'archive-newer' | 'archive-record' | 'archive-unreadable';

/** So many records are checked in a few milliseconds. */
const RECORDS_A_STEP = 50;

/** What is given between the steps: how much is done, 0 to 1. */
type Checking<T> = Generator<number, Outcome<T, JsonTrouble>, undefined>;

/**
 * The records of `logbook.json`, all of them right, or the first thing that is wrong. Ten thousand
 * take a second or two: between its steps other work may be done.
 */
export function* checkLogbookJson(json: unknown, traces: Uint8Array): Checking<CheckedLogbook> {
  const outline = v.safeParse(OutlineSchema, json);
  if (!outline.success) {
    const issue = outline.issues[0];
    const where = v.getDotPath(issue) ?? 'the whole file';
    const isOther = where === 'format' && /^tiltsweep\.logbook\/\d+$/.test(String(issue.input));
    return failed(isOther ? 'archive-newer' : 'archive-record', { where, problem: issue.message });
  }
  const { stand, wheels, entries, films } = outline.output;
  const readStandRecord = stand === null ? succeeded(null) : readStand(stand);
  if (!readStandRecord.ok) return wrong('stand', readStandRecord.failure.evidence);
  const readWheels: WheelRecord[] = [];
  for (const [i, row] of wheels.entries()) {
    const wheel = readWheel(row);
    if (!wheel.ok) return wrong(`wheels ${i + 1}`, wheel.failure.evidence);
    readWheels.push(wheel.value);
  }
  const readEntries = yield* entriesWithTraces(entries, traces);
  if (!readEntries.ok) return readEntries;
  const doubled = doubledId(readWheels) ?? doubledEntry(readEntries.value) ?? doubledId(films);
  if (doubled !== null) return wrong('id', { problem: `${doubled} is there twice` });
  const known = new Set(readWheels.map(({ id }) => id));
  const lost = readEntries.value.find(({ entry }) => !known.has(entry.wheelId));
  if (lost) return wrong('wheelId', { problem: `${lost.entry.wheelId} is no wheel of this file` });
  return succeeded({
    contents: { stand: readStandRecord.value, wheels: readWheels, entries: readEntries.value },
    films,
  });
}

function* entriesWithTraces(rows: readonly unknown[], traces: Uint8Array): Checking<PackedEntry[]> {
  const entries: PackedEntry[] = [];
  let at = 0;
  for (const [i, row] of rows.entries()) {
    const count = traceFloats(row);
    if (
      count !== null &&
      (!Number.isInteger(count) || count < 0 || at + 4 * count > traces.length)
    ) {
      return wrong(`entries ${i + 1} trace`, { problem: 'points are missing' });
    }
    const points = count === null ? undefined : floatsAt(traces, at, count);
    const entry = packedEntryOfRow(row, points);
    if (!entry.ok) return wrong(`entries ${i + 1}`, entry.failure.evidence);
    entries.push(entry.value);
    at += 4 * (count ?? 0);
    if ((i + 1) % RECORDS_A_STEP === 0) yield (i + 1) / rows.length;
  }
  if (at !== traces.length) return wrong('traces', { problem: 'points are left over' });
  return succeeded(entries);
}

/** How many floats belong to an entry's trace; null for an entry without one. */
function traceFloats(row: unknown): number | null {
  const trace = (row as { trace?: { pointCount?: unknown } | null } | null)?.trace;
  if (trace === undefined || trace === null) return null;
  return 3 * Number(trace.pointCount);
}

/** In memory of their own: what is stored of a list is all of the memory that it lies in. */
function floatsAt(bytes: Uint8Array, at: number, count: number): Float32Array<ArrayBuffer> {
  const own = bytes.slice(at, at + 4 * count);
  if (IS_LITTLE_ENDIAN) return new Float32Array(own.buffer);
  const view = new DataView(own.buffer);
  return Float32Array.from({ length: count }, (_, i) => view.getFloat32(4 * i, true));
}

const doubledEntry = (entries: readonly PackedEntry[]) => doubledId(entries.map((e) => e.entry));

function doubledId(records: readonly { readonly id: string }[]): string | null {
  const seen = new Set<string>();
  for (const { id } of records) {
    if (seen.has(id)) return id;
    seen.add(id);
  }
  return null;
}

function wrong(place: string, evidence: Readonly<Record<string, number | string | boolean>>) {
  const where = [place, evidence['where']].filter((part) => part !== undefined).join(': ');
  return failed('archive-record' as const, { ...evidence, where });
}
