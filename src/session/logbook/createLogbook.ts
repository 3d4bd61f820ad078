import type {
  Logbook,
  LogbookTrouble,
  LogEntry,
  PackedContents,
  PutIn,
  TakenOut,
  WheelRecord,
  WorkWatch,
} from '../../contract/logbook.ts';
import { failed, succeeded, type Failure, type Outcome } from '../../contract/outcome.ts';
import { proposedStand } from '../../job/proposals.ts';
import { createHeldRecords } from './heldRecords.ts';
import { packedEntry } from './packedTrace.ts';
import { NO_CHANGE, type RecordBatch, type RecordStore } from './recordStore.ts';
import type { StorageReserve } from './storageReserve.ts';
import { createStorageWatch } from './storageWatch.ts';
import type { TabLine } from './tabLine.ts';

export interface LogbookOptions {
  /** Tells other tabs of changes, and tells of theirs. */
  readonly tabs?: TabLine;
  /** True when a logbook that was here is not there any more. */
  readonly wiped?: () => boolean;
  /** The room kept in reserve; none unless told. */
  readonly reserve?: Pick<StorageReserve, 'isUsed' | 'keptBytes'>;
  /** Calls back when that comes to light later on, and when films have come or gone. */
  readonly onStorageNews?: (heard: () => void) => void;
}

const NO_RESERVE = { isUsed: () => false, keptBytes: () => Promise.resolve(0) };

/** A logbook over a place for records; where that fails, changes are held in the page. */
export function createLogbook(store: RecordStore, options: LogbookOptions = {}): Logbook {
  const { tabs, wiped = () => false, reserve = NO_RESERVE } = options;
  const listeners = new Set<() => void>();
  const tellAll = () => {
    for (const listener of listeners) listener();
  };
  tabs?.onNews(tellAll);

  const records = createHeldRecords(store, () => storage.refresh());
  const storage = createStorageWatch(records, wiped, reserve);
  options.onStorageNews?.(() => storage.refresh());
  // Asked at once, so that trouble with storage shows on the first screen.
  void records.stand().then(() => storage.refresh());
  // One change after the other: what is held is stored with the next one.
  let writing: Promise<unknown> = Promise.resolve();
  const watched = (batch: RecordBatch, watch?: WorkWatch): Promise<PutIn> => {
    const written = writing.then(async () => {
      const end = await records.write(batch, watch);
      if (end === 'stopped') return 'stopped';
      storage.refresh();
      if (end === 'stored') tabs?.tell();
      tellAll();
      return 'in';
    });
    writing = written;
    return written;
  };
  const write = async (batch: RecordBatch) => void (await watched(batch));

  return {
    storage: {
      state: storage.state,
      subscribe: storage.subscribe,
      retry: () => write(NO_CHANGE),
    },
    stand: async () => succeeded((await records.stand()) ?? proposedStand()),
    async saveStand(stand) {
      return succeeded(await write({ ...NO_CHANGE, stand }));
    },
    wheels: async () => succeeded(newestChangeFirst(await records.wheels())),
    wheel: async (wheelId) => found(await records.wheel(wheelId)),
    async saveWheel(wheel) {
      return succeeded(await write({ ...NO_CHANGE, wheels: [wheel] }));
    },
    entriesOf: async (wheelId) => succeeded(inOrderOfTime(await records.entriesOf(wheelId))),
    entry: async (entryId) => found(await records.entry(entryId), { entryId }),
    async addEntry(entry) {
      if (!(await records.wheel(entry.wheelId))) {
        return failed('not-found', { wheelId: entry.wheelId });
      }
      return succeeded(await write({ ...NO_CHANGE, entries: [packedEntry(entry)], at: entry.at }));
    },
    async removeEntry(entryId) {
      const entry = await records.entry(entryId);
      if (!entry) return failed('not-found', { entryId });
      const removed = [{ id: entryId, wheelId: entry.wheelId }];
      return succeeded(await write({ ...NO_CHANGE, removed, at: new Date().toISOString() }));
    },
    packed: async () => {
      const all = await records.all();
      const entries = [...all.entries].sort((a, b) => compared(a.entry.at, b.entry.at));
      return succeeded({ ...all, entries });
    },
    async putIn(contents: PackedContents, watch?: WorkWatch) {
      return succeeded(await watched({ ...NO_CHANGE, ...contents }, watch));
    },
    async takeOut(taken: TakenOut) {
      return succeeded(await write({ ...NO_CHANGE, ...taken }));
    },
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

function newestChangeFirst(wheels: readonly WheelRecord[]): WheelRecord[] {
  return [...wheels].sort((a, b) => compared(b.changedAt, a.changedAt));
}

function inOrderOfTime(entries: readonly LogEntry[]): LogEntry[] {
  return [...entries].sort((a, b) => compared(a.at, b.at));
}

/** ISO instants in UTC sort as plain text; comparing by a language's rules takes ten times as long. */
function compared(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function found<T>(value: T | null, evidence: Failure['evidence'] = {}): Outcome<T, LogbookTrouble> {
  return value === null ? failed('not-found', evidence) : succeeded(value);
}
