import type {
  KeepingTrouble,
  LogbookContents,
  LogEntry,
  PackedContents,
  StandRecord,
  WheelRecord,
} from '../../contract/logbook.ts';
import type { Outcome } from '../../contract/outcome.ts';

/** Changes that belong together: all of them are made, or none. */
export interface RecordBatch {
  readonly stand: StandRecord | null;
  readonly wheels: readonly WheelRecord[];
  readonly entries: readonly LogEntry[];
  readonly removed: readonly RemovedEntry[];
  /** Becomes the time of change of every wheel whose entries change, where it is later. */
  readonly at: string | null;
}

export interface RemovedEntry {
  readonly id: string;
  readonly wheelId: string;
}

export const NO_CHANGE: RecordBatch = {
  stand: null,
  wheels: [],
  entries: [],
  removed: [],
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
  all(): Kept<LogbookContents>;
  /** The same with traces as they are kept. */
  packed(): Kept<PackedContents>;
  write(batch: RecordBatch): Kept<void>;
  /** Stored records that could not be read so far. */
  unreadableCount(): number;
}

export type Kept<T> = Promise<Outcome<T, KeepingTrouble>>;

/** One batch for two, the later one on top. */
export function joinedBatch(first: RecordBatch, second: RecordBatch): RecordBatch {
  const removedLater = new Set(second.removed.map(({ id }) => id));
  const addedLater = new Set(second.entries.map(({ id }) => id));
  const wheelsLater = new Set(second.wheels.map(({ id }) => id));
  return {
    stand: second.stand ?? first.stand,
    wheels: [...first.wheels.filter(({ id }) => !wheelsLater.has(id)), ...second.wheels],
    entries: [
      ...first.entries.filter(({ id }) => !addedLater.has(id) && !removedLater.has(id)),
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

/** Wheels whose entries or own values a batch changes. */
export function touchedWheelIds({ wheels, entries, removed }: RecordBatch): Set<string> {
  return new Set([
    ...wheels.map(({ id }) => id),
    ...entries.map(({ wheelId }) => wheelId),
    ...removed.map(({ wheelId }) => wheelId),
  ]);
}

export function changesEntriesOf({ entries, removed }: RecordBatch, wheelId: string): boolean {
  return [...entries, ...removed].some((one) => one.wheelId === wheelId);
}

/** A wheel's entries once the batch is made. */
export function entriesAfter(
  entries: readonly LogEntry[],
  wheelId: string,
  batch: RecordBatch,
): LogEntry[] {
  const gone = new Set([...batch.removed, ...batch.entries].map(({ id }) => id));
  return [
    ...entries.filter(({ id }) => !gone.has(id)),
    ...batch.entries.filter((entry) => entry.wheelId === wheelId),
  ];
}
