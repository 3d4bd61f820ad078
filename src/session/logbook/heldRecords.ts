import type {
  LogEntry,
  PackedContents,
  StandRecord,
  WheelRecord,
  WorkWatch,
} from '../../contract/logbook.ts';
import type { KeepingTrouble } from '../../contract/storageState.ts';
import type { Outcome } from '../../contract/outcome.ts';
import { wheelWith } from './memoryRecords.ts';
import { unpackedEntry } from './packedTrace.ts';
import {
  batchByWheel,
  joinedBatch,
  NO_CHANGE,
  type RecordBatch,
  type RecordStore,
} from './recordStore.ts';

/**
 * Records that are always there: what the store does not take is held here, laid over what it
 * gives, and stored with the next change that it takes.
 */
export interface HeldRecords {
  stand(): Promise<StandRecord | null>;
  wheels(): Promise<readonly WheelRecord[]>;
  wheel(wheelId: string): Promise<WheelRecord | null>;
  entriesOf(wheelId: string): Promise<readonly LogEntry[]>;
  entry(entryId: string): Promise<LogEntry | null>;
  all(): Promise<PackedContents>;
  /** What was stopped is neither stored nor held. */
  write(batch: RecordBatch, watch?: WorkWatch): Promise<'stored' | 'held' | 'stopped'>;
  trouble(): KeepingTrouble | null;
  heldCount(): number;
  unreadableCount(): number;
}

export function createHeldRecords(store: RecordStore, onTrouble: () => void): HeldRecords {
  let held = NO_CHANGE;
  let heldByWheel = batchByWheel(held);
  const hold = (batch: RecordBatch) => {
    held = batch;
    heldByWheel = batchByWheel(batch);
  };
  let trouble: KeepingTrouble | null = null;
  const setTrouble = (next: KeepingTrouble | null) => {
    if (next === trouble) return;
    trouble = next;
    onTrouble();
  };

  /** What the store says, or `instead` where it says nothing: then that is the trouble. */
  async function asked<T>(answer: Promise<Outcome<T, KeepingTrouble>>, instead: T): Promise<T> {
    const outcome = await answer;
    if (outcome.ok) {
      // It can be read again and nothing waits to be written.
      if (held === NO_CHANGE) setTrouble(null);
      return outcome.value;
    }
    setTrouble(outcome.failure.code);
    return instead;
  }

  const standOver = (stored: StandRecord | null) =>
    held.stand ?? (held.removesStand ? null : stored);
  const heldWheel = (wheelId: string) => held.wheels.find(({ id }) => id === wheelId) ?? null;
  const entriesOf = async (wheelId: string) =>
    heldByWheel.entriesAfter(await asked(store.entriesOf(wheelId), []), wheelId);
  const wheel = async (wheelId: string) => {
    const stored = await asked(store.wheel(wheelId), null);
    if (held.removedWheels.includes(wheelId)) return null;
    const latest = heldWheel(wheelId) ?? stored;
    if (latest === null || !heldByWheel.touched.has(wheelId)) return latest;
    const at = heldByWheel.changesEntriesOf(wheelId) ? held.at : null;
    return wheelWith(latest, await entriesOf(wheelId), at);
  };
  const withHeld = async (stored: readonly WheelRecord[]) => {
    const { touched } = heldByWheel;
    const gone = new Set([...touched, ...held.removedWheels]);
    const anew = await Promise.all([...touched].map(wheel));
    return [
      ...stored.filter(({ id }) => !gone.has(id)),
      ...anew.filter((one): one is WheelRecord => one !== null),
    ];
  };

  return {
    async stand() {
      return standOver(await asked(store.stand(), null));
    },
    wheels: async () => withHeld(await asked(store.wheels(), [])),
    wheel,
    entriesOf,
    async entry(entryId) {
      const stored = await asked(store.entry(entryId), null);
      if (held.removed.some(({ id }) => id === entryId)) return null;
      const ofPage = held.entries.find(({ entry }) => entry.id === entryId);
      return ofPage ? unpackedEntry(ofPage) : stored;
    },
    async all() {
      const stored = await asked<PackedContents>(store.all(), EMPTY);
      const gone = new Set([
        ...held.removed.map(({ id }) => id),
        ...held.entries.map(({ entry }) => entry.id),
      ]);
      return {
        stand: standOver(stored.stand),
        wheels: await withHeld(stored.wheels),
        entries: [...stored.entries.filter(({ entry }) => !gone.has(entry.id)), ...held.entries],
      };
    },
    async write(batch, watch) {
      const together = joinedBatch(held, batch);
      const written = await store.write(together, watch);
      if (written.ok && written.value === 'stopped') return 'stopped';
      hold(written.ok || isEmpty(together) ? NO_CHANGE : together);
      setTrouble(written.ok ? null : written.failure.code);
      return written.ok ? 'stored' : 'held';
    },
    trouble: () => trouble,
    heldCount: () =>
      held.wheels.length +
      held.entries.length +
      held.removed.length +
      held.removedWheels.length +
      (held.stand === null && !held.removesStand ? 0 : 1),
    unreadableCount: () => store.unreadableCount(),
  };
}

const EMPTY: PackedContents = { stand: null, wheels: [], entries: [] };

function isEmpty(batch: RecordBatch): boolean {
  const { stand, wheels, entries, removed, removedWheels, removesStand } = batch;
  const records = wheels.length + entries.length + removed.length + removedWheels.length;
  return stand === null && !removesStand && records === 0;
}
