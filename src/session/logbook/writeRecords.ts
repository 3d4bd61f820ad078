import { unwrap, type IDBPTransaction } from 'idb';

import type { LogEntry, WheelRecord, WorkWatch } from '../../contract/logbook.ts';
import { readWheel } from '../../contract/readRecords.ts';
import { STAND_KEY, type LogbookDatabase, type LogbookSchema } from './databaseSchema.ts';
import { rowOfPacked } from './entryRows.ts';
import { wheelWith } from './memoryRecords.ts';
import { batchByWheel, type RecordBatch, type WriteEnd } from './recordStore.ts';
import { abort, wholeOrNothing } from './wholeOrNothing.ts';

type StoreName = 'stand' | 'wheels' | 'entries' | 'traces';
export const RECORD_STORES = [
  'stand',
  'wheels',
  'entries',
  'traces',
] as const satisfies StoreName[];
type Writing = IDBPTransaction<LogbookSchema, StoreName[], 'readwrite'>;

/** Entries that are given to the browser before it is waited for: a few hundred kilobytes. */
const AT_ONCE = 100;
/** With more wheels than that, all stored entries are asked for together: it is one question. */
const MANY_WHEELS = 100;

/**
 * Stores a batch and what follows from it for its wheels, in one transaction. `readable` checks a
 * stored row. Stopped before it is in storage, nothing of it is.
 */
export async function writeRecords(
  db: LogbookDatabase,
  batch: RecordBatch,
  readable: (row: unknown) => readonly LogEntry[],
  watch?: WorkWatch,
): Promise<WriteEnd> {
  // "strict": on the disk, not only on its way there, when the promise resolves.
  const writing: Writing = db.transaction<StoreName[], 'readwrite'>(
    [...RECORD_STORES],
    'readwrite',
    { durability: 'strict' },
  );
  const stop = () => abort(writing);
  watch?.stop.addEventListener('abort', stop);
  try {
    if (watch?.stop.aborted) stop();
    await wholeOrNothing(writing, async () => {
      const wheels = await wheelsAfter(writing, batch, readable);
      await putAll(writing, batch, wheels, watch);
    });
    return 'written';
  } catch (error) {
    if (watch?.stop.aborted) return 'stopped';
    throw error;
  } finally {
    watch?.stop.removeEventListener('abort', stop);
  }
}

/** The wheels that a batch touches as they will be, worked out from what is stored before it. */
async function wheelsAfter(
  writing: Writing,
  batch: RecordBatch,
  readable: (row: unknown) => readonly LogEntry[],
): Promise<WheelRecord[]> {
  const { touched, changesEntriesOf, entriesAfter } = batchByWheel(batch);
  const given = new Map(batch.wheels.map((wheel) => [wheel.id, wheel]));
  const storedOf = await storedEntries(writing, touched, readable);
  const stored = writing.objectStore('wheels');
  const after = await Promise.all(
    [...touched].map(async (wheelId) => {
      const wheel = given.get(wheelId) ?? readableWheel(await stored.get(wheelId));
      if (wheel === null) return [];
      const at = changesEntriesOf(wheelId) ? batch.at : null;
      // Stage and figures need no trace.
      const entries = entriesAfter(await storedOf(wheelId), wheelId, ({ entry }) => entry);
      return [wheelWith(wheel, entries, at)];
    }),
  );
  return after.flat();
}

async function storedEntries(
  writing: Writing,
  touched: ReadonlySet<string>,
  readable: (row: unknown) => readonly LogEntry[],
): Promise<(wheelId: string) => Promise<LogEntry[]>> {
  const index = writing.objectStore('entries').index('byWheelAndTime');
  if (touched.size <= MANY_WHEELS) {
    return async (wheelId) => (await index.getAll(wholeTimeOf(wheelId))).flatMap(readable);
  }
  const rowsOf = new Map<unknown, unknown[]>();
  for (const row of await index.getAll()) {
    const { wheelId } = row as { wheelId?: unknown };
    const rows = rowsOf.get(wheelId);
    if (rows) rows.push(row);
    else rowsOf.set(wheelId, [row]);
  }
  return async (wheelId) => (rowsOf.get(wheelId) ?? []).flatMap(readable);
}

/**
 * Of ten thousand requests only a few are listened to: one that fails makes the transaction fail,
 * and they come to their end in order.
 */
async function putAll(
  writing: Writing,
  { stand, entries, removed, removedWheels, removesStand }: RecordBatch,
  wheels: readonly WheelRecord[],
  watch?: WorkWatch,
): Promise<void> {
  const rows = unwrap(writing.objectStore('entries'));
  const traces = unwrap(writing.objectStore('traces'));
  const plainWheels = unwrap(writing.objectStore('wheels'));
  const plainStand = unwrap(writing.objectStore('stand'));
  if (stand) plainStand.put(stand, STAND_KEY);
  else if (removesStand) plainStand.delete(STAND_KEY);
  for (const id of removedWheels) plainWheels.delete(id);
  for (const { id } of removed) {
    rows.delete(id);
    traces.delete(id);
  }
  for (const wheel of wheels) plainWheels.put(wheel);
  for (let at = 0; at < entries.length; at += AT_ONCE) {
    for (const packed of entries.slice(at, at + AT_ONCE)) {
      const { row, points } = rowOfPacked(packed);
      rows.put(row);
      if (points) traces.put(points, packed.entry.id);
      else traces.delete(packed.entry.id);
    }
    await writing.objectStore('stand').count();
    watch?.told(Math.min(1, (at + AT_ONCE) / entries.length));
  }
}

function readableWheel(row: unknown): WheelRecord | null {
  const read = readWheel(row);
  return read.ok ? read.value : null;
}

export function wholeTimeOf(wheelId: string): IDBKeyRange {
  // An empty list is greater than any text (Indexed Database API, section 2.4, order of keys).
  return IDBKeyRange.bound([wheelId], [wheelId, []]);
}

export function idOf(row: unknown): string {
  return String((row as { id?: unknown }).id);
}
