import type { LogEntry, PackedEntry, WheelRecord } from '../../contract/logbook.ts';
import { readEntry, readStand, readWheel } from '../../contract/readRecords.ts';
import type { DatabaseAccess } from './database.ts';
import { STAND_KEY } from './databaseSchema.ts';
import { entryOfRow, packedEntryOfRow } from './entryRows.ts';
import type { RecordStore } from './recordStore.ts';
import { idOf, RECORD_STORES, wholeTimeOf, writeRecords } from './writeRecords.ts';

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
    all: () =>
      access.run(async (db) => {
        const read = db.transaction(RECORD_STORES);
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
          entries: rows.flatMap((row) => readablePacked(row, pointsOf.get(idOf(row)))),
        };
      }),
    write: (batch, watch) =>
      access.run((db) =>
        writeRecords(db, batch, (row) => readableEntry({ ...(row as object), trace: null }), watch),
      ),
    unreadableCount: () => unreadable.size,
  };
}
