import type { StorageState, StorageWatch } from '../../contract/storageState.ts';
import type { HeldRecords } from './heldRecords.ts';
import type { StorageReserve } from './storageReserve.ts';

export interface RefreshedStorageWatch extends Omit<StorageWatch, 'retry'> {
  /** Looks anew at what is held and at what the browser says of its storage. */
  refresh(): void;
}

/** Follows how storage stands, and tells when that changes. */
export function createStorageWatch(
  records: HeldRecords,
  wiped: () => boolean,
  reserve: Pick<StorageReserve, 'isUsed' | 'keptBytes'>,
): RefreshedStorageWatch {
  const listeners = new Set<() => void>();
  let state: StorageState = {
    trouble: null,
    heldCount: 0,
    wiped: false,
    unreadableCount: 0,
    persisted: null,
    usedBytes: null,
    quotaBytes: null,
    isReserveUsed: false,
    reserveBytes: 0,
  };
  const show = (part: Partial<StorageState>) => {
    const next = { ...state, ...part };
    const keys = Object.keys(next) as (keyof StorageState)[];
    if (keys.every((key) => next[key] === state[key])) return;
    state = next;
    for (const listener of listeners) listener();
  };
  return {
    state: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    refresh() {
      show({
        trouble: records.trouble(),
        heldCount: records.heldCount(),
        unreadableCount: records.unreadableCount(),
        wiped: wiped(),
        isReserveUsed: reserve.isUsed(),
      });
      void reserve.keptBytes().then((reserveBytes) => show({ reserveBytes }));
      void browserStorage().then(show);
    },
  };
}

type BrowserStorage = Pick<StorageState, 'persisted' | 'usedBytes' | 'quotaBytes'>;

/** What the browser says (WHATWG Storage Standard); nothing where it has no such interface. */
async function browserStorage(): Promise<BrowserStorage> {
  const none: BrowserStorage = { persisted: null, usedBytes: null, quotaBytes: null };
  if (typeof navigator === 'undefined' || !navigator.storage) return none;
  try {
    const persisted = await navigator.storage.persisted();
    const { usage, quota } = await navigator.storage.estimate();
    return { persisted, usedBytes: usage ?? null, quotaBytes: quota ?? null };
  } catch {
    return none;
  }
}

/**
 * Asks the browser not to clear this page's storage by itself. Some browsers ask the person, some
 * decide; a "no" changes nothing else.
 */
export async function askToPersist(): Promise<void> {
  try {
    if (!(await navigator.storage?.persisted())) await navigator.storage?.persist();
  } catch {
    // Not to be had here: the state says so.
  }
}
