import type { IDBPTransaction } from 'idb';

import type { LogEntry, PackedEntry, WheelRecord } from '../../contract/logbook.ts';
import { readEntry, readStand, readWheel } from '../../contract/readRecords.ts';
import type { DatabaseAccess } from './database.ts';
import { STAND_KEY, type LogbookDatabase, type LogbookSchema } from './databaseSchema.ts';
import { entryOfRow, packedEntryOfRow, rowOfEntry } from './entryRows.ts';
import { wheelAfter } from './memoryRecords.ts';
import { wholeOrNothing } from './wholeOrNothing.ts';
import { touchedWheelIds, type RecordBatch, type RecordStore } from './recordStore.ts';

type StoreName = 'stand' | 'wheels' | 'entries' | 'traces';
const ALL_STORES = ['stand', 'wheels', 'entries', 'traces'] as const satisfies StoreName[];
type Writing = IDBPTransaction<LogbookSchema, StoreName[], 'readwrite'>;

/**
 * Records in the browser's database. All that is read back is checked; what is none of the records
 * that this program knows is left out and left alone.
 */
export function createDatabaseRecords(access: DatabaseAccess): RecordStore {
  const unreadable = new Set<string>();
  const readableWheel = (row: unknown): WheelRecord[] => {
    const read = readWheel(row);
    if (!read.ok) unreadable.add(`wheel ${idOf(row)}`);
    return read.ok ? [read.value] : [];
  };
  const readableEntry = (row: unknown, points?: Float32Array): LogEntry[] => {
    const read = readEntry(entryOfRow(row, points));
    if (!read.ok) unreadable.add(`entry ${idOf(row)}`);
    return read.ok ? [read.value] : [];
  };
  const readableStand = (row: unknown) => {
    if (row === undefined) return null;
    const read = readStand(row);
    if (!read.ok) unreadable.add('stand');
    return read.ok ? read.value : null;
  };
  const readablePacked = (row: unknown, points?: Float32Array<ArrayBuffer>): PackedEntry[] => {
    const read = packedEntryOfRow(row, points);
    if (!read.ok) unreadable.add(`entry ${idOf(row)}`);
    return read.ok ? [read.value] : [];
  };
  const everything = async <Entry>(
    db: LogbookDatabase,
    readable: (row: unknown, points?: Float32Array<ArrayBuffer>) => Entry[],
  ) => {
    const read = db.transaction(ALL_STORES);
    const [stand, wheels, rows, keys, points] = await Promise.all([
      read.objectStore('stand').get(STAND_KEY),
      read.objectStore('wheels').getAll(),
      read.objectStore('entries').getAll(),
      read.objectStore('traces').getAllKeys(),
      read.objectStore('traces').getAll(),
    ]);
    const pointsOf = new Map(keys.map((key, i) => [key, points[i]]));
    return {
      stand: readableStand(stand),
      wheels: wheels.flatMap(readableWheel),
      entries: rows.flatMap((row) => readable(row, pointsOf.get(idOf(row)))),
    };
  };
  /** A wheel's entries inside a transaction. */
  const entriesIn = async (transaction: Writing, wheelId: string): Promise<LogEntry[]> => {
    const rows = await transaction
      .objectStore('entries')
      .index('byWheelAndTime')
      .getAll(wholeTimeOf(wheelId));
    // Stage and figures need no trace.
    return rows.flatMap((row) => readableEntry({ ...(row as object), trace: null }, undefined));
  };

  return {
    stand: () => access.run(async (db) => readableStand(await db.get('stand', STAND_KEY))),
    wheels: () => access.run(async (db) => (await db.getAll('wheels')).flatMap(readableWheel)),
    wheel: (id) =>
      access.run(async (db) => {
        const row = await db.get('wheels', id);
        return (row === undefined ? null : readableWheel(row)[0]) ?? null;
      }),
    entriesOf: (wheelId) =>
      access.run(async (db) => {
        const read = db.transaction(['entries', 'traces']);
        const rows = await read
          .objectStore('entries')
          .index('byWheelAndTime')
          .getAll(wholeTimeOf(wheelId));
        const traces = read.objectStore('traces');
        const points = await Promise.all(rows.map((row) => traces.get(idOf(row))));
        return rows.flatMap((row, i) => readableEntry(row, points[i]));
      }),
    entry: (id) =>
      access.run(async (db) => {
        const read = db.transaction(['entries', 'traces']);
        const [row, points] = await Promise.all([
          read.objectStore('entries').get(id),
          read.objectStore('traces').get(id),
        ]);
        return (row === undefined ? null : readableEntry(row, points)[0]) ?? null;
      }),
    all: () => access.run(async (db) => everything(db, readableEntry)),
    packed: () => access.run(async (db) => everything(db, readablePacked)),
    write: (batch) =>
      access.run(async (db) => {
        // "strict": on the disk, not only on its way there, when the promise resolves.
        const writing: Writing = db.transaction<StoreName[], 'readwrite'>(
          [...ALL_STORES],
          'readwrite',
          { durability: 'strict' },
        );
        await wholeOrNothing(writing, () => writeBatch(writing, batch, entriesIn));
      }),
    unreadableCount: () => unreadable.size,
  };
}

async function writeBatch(
  writing: Writing,
  batch: RecordBatch,
  entriesIn: (writing: Writing, wheelId: string) => Promise<LogEntry[]>,
): Promise<void> {
  const wheels = writing.objectStore('wheels');
  const entries = writing.objectStore('entries');
  const traces = writing.objectStore('traces');
  const asked: Promise<unknown>[] = [];
  if (batch.stand) asked.push(writing.objectStore('stand').put(batch.stand, STAND_KEY));
  for (const wheel of batch.wheels) asked.push(wheels.put(wheel));
  for (const { id } of batch.removed) asked.push(entries.delete(id), traces.delete(id));
  for (const entry of batch.entries) {
    const { row, points } = rowOfEntry(entry);
    asked.push(entries.put(row));
    asked.push(points ? traces.put(points, entry.id) : traces.delete(entry.id));
  }
  await Promise.all(asked);
  await Promise.all(
    [...touchedWheelIds(batch)].map(async (wheelId) => {
      const [row, ofWheel] = await Promise.all([wheels.get(wheelId), entriesIn(writing, wheelId)]);
      const wheel = readWheel(row);
      if (wheel.ok) await wheels.put(wheelAfter(wheel.value, ofWheel, batch));
    }),
  );
}

function wholeTimeOf(wheelId: string): IDBKeyRange {
  // An empty list is greater than any text (Indexed Database API, section 2.4, order of keys).
  return IDBKeyRange.bound([wheelId], [wheelId, []]);
}

function idOf(row: unknown): string {
  return String((row as { id?: unknown }).id);
}
