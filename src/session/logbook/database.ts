import { openDB } from 'idb';

import type { KeepingTrouble } from '../../contract/storageState.ts';
import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import { giveReserve } from './storageReserve.ts';
import {
  DATABASE_NAME,
  DATABASE_VERSION,
  upgradeDatabase,
  type LogbookDatabase,
  type LogbookSchema,
} from './databaseSchema.ts';

/** The one connection to the database: opened when needed, opened anew when the browser cut it. */
export interface DatabaseAccess {
  /** Does the work; what the browser throws at it comes back as a value. */
  run<T>(work: (database: LogbookDatabase) => Promise<T>): Promise<Outcome<T, KeepingTrouble>>;
}

/**
 * A browser that has not opened the database by then is taken as one that will not: on a slow tablet
 * it takes a few hundred milliseconds.
 */
const LONGEST_OPENING_MS = 8000;

/** Freed room shows in the browser's own count only after a moment, ms. */
const FREED_AFTER_MS = [0, 200, 800];

/**
 * `onMadeNew` is told when opening found no database and made one, `onReserveGiven` when a write
 * found no room but that kept in reserve.
 */
export function createDatabaseAccess(
  onMadeNew: () => void = () => undefined,
  onReserveGiven: () => void = () => undefined,
): DatabaseAccess {
  let opening: Promise<LogbookDatabase> | null = null;
  /** The opening did not come in time. It goes on, and nobody waits for it any more. */
  let isLate = false;

  const start = (): Promise<LogbookDatabase> => {
    const forget = () => (opening = null);
    const opened = openDB<LogbookSchema>(DATABASE_NAME, DATABASE_VERSION, {
      upgrade(database, fromVersion, _to, upgrade) {
        if (fromVersion === 0) onMadeNew();
        void upgradeDatabase(database, fromVersion, upgrade);
      },
      // A newer version of the program waits in another tab: it must not wait for this one.
      blocking(_current, _blocked, event) {
        (event.target as IDBDatabase).close();
        forget();
      },
      terminated: forget,
    });
    opened.catch(forget).finally(() => (isLate = false));
    return opened;
  };
  const open = async (): Promise<LogbookDatabase> => {
    opening ??= start();
    try {
      return await withinTime(opening, isLate ? 0 : LONGEST_OPENING_MS);
    } catch (error) {
      if (nameOf(error) === 'TimeoutError') isLate = true;
      throw error;
    }
  };

  async function attempt<T>(
    work: (database: LogbookDatabase) => Promise<T>,
  ): Promise<Outcome<T, KeepingTrouble> | 'cut'> {
    let database: LogbookDatabase;
    try {
      database = await open();
    } catch (error) {
      return failed(openingTrouble(error), evidenceOf(error));
    }
    try {
      return succeeded(await work(database));
    } catch (error) {
      if (nameOf(error) === 'InvalidStateError' || nameOf(error) === 'AbortError') {
        database.close();
        opening = null;
        return 'cut';
      }
      return failed(workTrouble(error), evidenceOf(error));
    }
  }

  async function twice<T>(
    work: (database: LogbookDatabase) => Promise<T>,
  ): Promise<Outcome<T, KeepingTrouble>> {
    const first = await attempt(work);
    if (first !== 'cut') return first;
    // The connection was cut (storage cleared, browser tidied up): once more with a new one.
    const second = await attempt(work);
    return second === 'cut' ? failed('storage-failed') : second;
  }

  return {
    async run(work) {
      let outcome = await twice(work);
      if (outcome.ok || outcome.failure.code !== 'storage-full') return outcome;
      const given = await twice(giveReserve);
      if (!given.ok || !given.value) return outcome;
      onReserveGiven();
      for (const waitMs of FREED_AFTER_MS) {
        await new Promise((resolve) => setTimeout(resolve, waitMs));
        outcome = await twice(work);
        if (outcome.ok || outcome.failure.code !== 'storage-full') break;
      }
      return outcome;
    },
  };
}

function withinTime<T>(work: Promise<T>, limitMs: number): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(
      () => reject(new DOMException('the database did not open in time', 'TimeoutError')),
      limitMs,
    );
    work.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

function openingTrouble(error: unknown): KeepingTrouble {
  switch (nameOf(error)) {
    case 'VersionError':
      return 'storage-newer';
    case 'QuotaExceededError':
      return 'storage-full';
    default:
      return 'storage-blocked';
  }
}

function workTrouble(error: unknown): KeepingTrouble {
  return nameOf(error) === 'QuotaExceededError' ? 'storage-full' : 'storage-failed';
}

function nameOf(error: unknown): string {
  return error instanceof Error ? error.name : '';
}

function evidenceOf(error: unknown): { browser: string } {
  return { browser: error instanceof Error ? `${error.name}: ${error.message}` : String(error) };
}
