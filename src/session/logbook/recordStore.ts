import type {
  EntryName,
  LogEntry,
  PackedContents,
  PackedEntry,
  StandRecord,
  WheelRecord,
  WorkWatch,
} from '../../contract/logbook.ts';
import type { KeepingTrouble } from '../../contract/storageState.ts';
import type { Outcome } from '../../contract/outcome.ts';
import { unpackedEntry } from './packedTrace.ts';

/** Changes that belong together: all of them are made, or none. */
export interface RecordBatch {
  readonly stand: StandRecord | null;
  readonly wheels: readonly WheelRecord[];
  readonly entries: readonly PackedEntry[];
  readonly removed: readonly EntryName[];
  /** Wheels to be taken away, by id; their entries are among those removed. */
  readonly removedWheels: readonly string[];
  readonly removesStand: boolean;
  /** Becomes the time of change of every wheel whose entries change, where it is later. */
  readonly at: string | null;
}

export const NO_CHANGE: RecordBatch = {
  stand: null,
  wheels: [],
  entries: [],
  removed: [],
  removedWheels: [],
  removesStand: false,
  at: null,
};

/**
 * Where records lie. `write` brings stage and last reading of every wheel that it touches up to
 * date in the same step. Lists come in no order that may be relied on.
 */
export interface RecordStore {
  stand(): Kept<StandRecord | null>;
  wheels(): Kept<readonly WheelRecord[]>;
  wheel(wheelId: string): Kept<WheelRecord | null>;
  entriesOf(wheelId: string): Kept<readonly LogEntry[]>;
  entry(entryId: string): Kept<LogEntry | null>;
  all(): Kept<PackedContents>;
  /** Whole, or not at all when it is stopped. */
  write(batch: RecordBatch, watch?: WorkWatch): Kept<WriteEnd>;
  /** Stored records that could not be read so far. */
  unreadableCount(): number;
}

export type WriteEnd = 'written' | 'stopped';

export type Kept<T> = Promise<Outcome<T, KeepingTrouble>>;

/** One batch for two, the later one on top. */
export function joinedBatch(first: RecordBatch, second: RecordBatch): RecordBatch {
  const removedLater = new Set(second.removed.map(({ id }) => id));
  const addedLater = new Set(second.entries.map(({ entry }) => entry.id));
  const wheelsLater = new Set([...second.wheels.map(({ id }) => id), ...second.removedWheels]);
  return {
    stand: second.stand ?? (second.removesStand ? null : first.stand),
    removesStand: second.stand === null && (second.removesStand || first.removesStand),
    removedWheels: [
      ...first.removedWheels.filter((id) => !wheelsLater.has(id)),
      ...second.removedWheels,
    ],
    wheels: [...first.wheels.filter(({ id }) => !wheelsLater.has(id)), ...second.wheels],
    entries: [
      ...first.entries.filter(({ entry: { id } }) => !addedLater.has(id) && !removedLater.has(id)),
      ...second.entries,
    ],
    removed: [
      ...first.removed.filter(({ id }) => !addedLater.has(id) && !removedLater.has(id)),
      ...second.removed,
    ],
    at: later(first.at, second.at),
  };
}

export function later(first: string | null, second: string | null): string | null {
  if (first === null || second === null) return first ?? second;
  return first > second ? first : second;
}

/** A batch by the wheels that it touches: each is asked for once, of thousands. */
export interface BatchByWheel {
  /** Wheels whose entries or own values the batch changes, without those that it removes. */
  readonly touched: ReadonlySet<string>;
  changesEntriesOf(wheelId: string): boolean;
  /** A wheel's entries once the batch is made; `stored` are those before, `taken` is how its own are. */
  entriesAfter(
    stored: readonly LogEntry[],
    wheelId: string,
    taken?: (packed: PackedEntry) => LogEntry,
  ): LogEntry[];
}

export function batchByWheel({
  wheels,
  entries,
  removed,
  removedWheels,
}: RecordBatch): BatchByWheel {
  const gone = new Set([...removed.map(({ id }) => id), ...entries.map(({ entry }) => entry.id)]);
  const losing = new Set(removed.map(({ wheelId }) => wheelId));
  const added = new Map<string, PackedEntry[]>();
  for (const packed of entries) {
    const { wheelId } = packed.entry;
    const ofWheel = added.get(wheelId);
    if (ofWheel) ofWheel.push(packed);
    else added.set(wheelId, [packed]);
  }
  const touched = new Set([...wheels.map(({ id }) => id), ...added.keys(), ...losing]);
  for (const id of removedWheels) touched.delete(id);
  return {
    touched,
    changesEntriesOf: (wheelId) => added.has(wheelId) || losing.has(wheelId),
    entriesAfter: (stored, wheelId, taken = unpackedEntry) => [
      ...stored.filter(({ id }) => !gone.has(id)),
      ...(added.get(wheelId) ?? []).map(taken),
    ],
  };
}
