import type { DBSchema, IDBPDatabase, IDBPTransaction, StoreNames } from 'idb';

/**
 * The database, version by version. A version once released is never changed: a new one adds a step
 * at the end of `STEPS`, which leads the stores and records of the one before over to it. The
 * upgrade runs in one transaction: whole or not at all.
 *
 * 1. stand, wheels, entries, and traces apart from their entries.
 * 2. films, and the pieces that they were recorded in.
 * 3. notes of sweeps that have no reading yet, and room kept in reserve.
 */
export const DATABASE_NAME = 'tiltsweep';

export interface LogbookSchema extends DBSchema {
  /** One record under the key {@link STAND_KEY}. */
  stand: { key: string; value: unknown };
  /** By `id`. */
  wheels: { key: string; value: unknown };
  /** By `id`; a sweep's `trace` holds the head only. */
  entries: { key: string; value: unknown; indexes: { byWheelAndTime: [string, string] } };
  /** The points of a sweep's trace, by the entry's id. */
  traces: { key: string; value: Float32Array<ArrayBuffer> };
  /** By `id`. */
  films: { key: string; value: unknown };
  /** By the film's id and the piece's number from 0. */
  filmPieces: { key: [string, number]; value: Blob };
  /** The same for the notes of its sweep. */
  sweepNotes: { key: [string, number]; value: Blob };
  /** Blobs of noise by their number from 0 (`storageReserve`). */
  reserve: { key: number; value: Blob };
}

export const STAND_KEY = 'stand';

export type LogbookDatabase = IDBPDatabase<LogbookSchema>;
export type Upgrade = IDBPTransaction<LogbookSchema, StoreNames<LogbookSchema>[], 'versionchange'>;
/** May wait for requests of the upgrade's own transaction, and for nothing else. */
export type Step = (database: LogbookDatabase, upgrade: Upgrade) => void | Promise<void>;

export const STEPS: readonly Step[] = [
  (database) => {
    database.createObjectStore('stand');
    database.createObjectStore('wheels', { keyPath: 'id' });
    const entries = database.createObjectStore('entries', { keyPath: 'id' });
    entries.createIndex('byWheelAndTime', ['wheelId', 'at']);
    database.createObjectStore('traces');
  },
  (database) => {
    database.createObjectStore('films', { keyPath: 'id' });
    database.createObjectStore('filmPieces');
  },
  (database) => {
    database.createObjectStore('sweepNotes');
    database.createObjectStore('reserve');
  },
];

export const DATABASE_VERSION = STEPS.length;

/**
 * Leads a database of any older version to the newest; 0 is one that was not there. A step that
 * fails takes back those before it: the database stays as it was, at its old version. `steps` is
 * there for tests.
 */
export async function upgradeDatabase(
  database: LogbookDatabase,
  fromVersion: number,
  upgrade: Upgrade,
  steps: readonly Step[] = STEPS,
): Promise<void> {
  try {
    for (const step of steps.slice(fromVersion)) await step(database, upgrade);
  } catch {
    upgrade.abort();
  }
}
