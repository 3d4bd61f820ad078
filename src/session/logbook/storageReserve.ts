import type { KeepingTrouble } from '../../contract/storageState.ts';
import type { Outcome } from '../../contract/outcome.ts';

import type { LogbookDatabase } from './databaseSchema.ts';
import { wholeOrNothing } from './wholeOrNothing.ts';

/**
 * Room kept in reserve. Not every browser tells how much it will store (Chromium names ten gigabytes
 * more than are used, whatever its quota is), so that a full storage would first be known from the
 * write that fails. So some of the room is taken by a Blob of noise. A write that does not fit takes
 * its place and is stored, and from then on the person is told that storage is nearly full.
 */
export interface StorageReserve {
  /** True while there is no room for it. */
  isUsed(): boolean;
  /** How much room it takes now; 0 where storage cannot be asked. */
  keptBytes(): Promise<number>;
  /** Lays it by where it is missing; for when something was stored, or deleted. */
  layBy(): Promise<void>;
}

/** What is needed of the connection to the database. */
interface Running {
  run<T>(work: (database: LogbookDatabase) => Promise<T>): Promise<Outcome<T, KeepingTrouble>>;
}

/**
 * A sweep with its film and its notes, and some readings, in parts of 4 MB: a larger Blob Chromium counts
 * as if it were smaller.
 */
const PARTS = 6;
const PART_BYTES = 4e6;
/** A browser gives so many random bytes at a time, and no more. */
const MOST_RANDOM_BYTES = 65_536;

export function createStorageReserve(
  access: Running,
  onChange: () => void,
): StorageReserve & { readonly given: () => void } {
  let used = false;
  /** Not by the change that has just taken it: what is said would be gone before it is read. */
  let isFresh = false;
  const setUsed = (next: boolean) => {
    if (next === used) return;
    used = next;
    onChange();
  };
  /** One at a time, and not again while it is known to be there. */
  let laying: Promise<Outcome<void, KeepingTrouble>> | null = null;
  return {
    isUsed: () => used,
    async keptBytes() {
      const parts = await access.run((database) => database.count('reserve'));
      return parts.ok ? parts.value * PART_BYTES : 0;
    },
    given: () => {
      laying = null;
      isFresh = true;
      setUsed(true);
    },
    async layBy() {
      if (isFresh) {
        isFresh = false;
        return;
      }
      const isFirst = laying === null;
      laying ??= access.run(layReserve);
      const mine = laying;
      const laid = await mine;
      if (laid.ok) {
        used = false;
        if (isFirst) onChange();
      } else if (laying === mine) {
        laying = null;
        if (laid.failure.code === 'storage-full') setUsed(true);
      }
    },
  };
}

async function layReserve(database: LogbookDatabase): Promise<void> {
  if ((await database.count('reserve')) === PARTS) return;
  const parts: Blob[] = [];
  while (parts.length < PARTS) parts.push(await noise());
  const writing = database.transaction('reserve', 'readwrite', { durability: 'strict' });
  await wholeOrNothing(writing, async () => {
    await Promise.all(parts.map((part, number) => writing.store.put(part, number)));
  });
}

/** Browsers may compress what they store: what is alike takes no room. */
async function noise(): Promise<Blob> {
  const bytes = new Uint8Array(PART_BYTES);
  for (let at = 0; at < bytes.length; at += MOST_RANDOM_BYTES) {
    crypto.getRandomValues(bytes.subarray(at, at + MOST_RANDOM_BYTES));
  }
  // The page answers between the parts.
  await new Promise((resolve) => setTimeout(resolve));
  return new Blob([bytes]);
}

/** Frees it for a write that found no room; false when there is none. */
export async function giveReserve(database: LogbookDatabase): Promise<boolean> {
  if ((await database.count('reserve')) === 0) return false;
  await database.clear('reserve');
  return true;
}
