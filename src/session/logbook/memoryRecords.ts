import type { PackedEntry, LogEntry, StandRecord, WheelRecord } from '../../contract/logbook.ts';
import { succeeded } from '../../contract/outcome.ts';
import { withStateOf } from '../../job/wheelState.ts';
import { unpackedEntry } from './packedTrace.ts';
import { batchByWheel, later, type RecordBatch, type RecordStore } from './recordStore.ts';

/** Records that live as long as the page. */
export function createMemoryRecords(): RecordStore {
  const wheels = new Map<string, WheelRecord>();
  const entries = new Map<string, PackedEntry>();
  let stand: StandRecord | null = null;

  const entriesOf = (wheelId: string) =>
    [...entries.values()].filter(({ entry }) => entry.wheelId === wheelId).map(unpackedEntry);
  const write = (batch: RecordBatch) => {
    stand = batch.stand ?? (batch.removesStand ? null : stand);
    for (const wheel of batch.wheels) wheels.set(wheel.id, wheel);
    for (const id of batch.removedWheels) wheels.delete(id);
    for (const { id } of batch.removed) entries.delete(id);
    for (const packed of batch.entries) entries.set(packed.entry.id, packed);
    const { touched, changesEntriesOf } = batchByWheel(batch);
    for (const wheelId of touched) {
      const wheel = wheels.get(wheelId);
      const at = changesEntriesOf(wheelId) ? batch.at : null;
      if (wheel) wheels.set(wheelId, wheelWith(wheel, entriesOf(wheelId), at));
    }
  };

  return {
    stand: async () => succeeded(stand),
    wheels: async () => succeeded([...wheels.values()]),
    wheel: async (wheelId) => succeeded(wheels.get(wheelId) ?? null),
    entriesOf: async (wheelId) => succeeded(entriesOf(wheelId)),
    async entry(entryId) {
      const packed = entries.get(entryId);
      return succeeded(packed ? unpackedEntry(packed) : null);
    },
    all: async () =>
      succeeded({ stand, wheels: [...wheels.values()], entries: [...entries.values()] }),
    async write(batch) {
      write(batch);
      return succeeded('written');
    },
    unreadableCount: () => 0,
  };
}

/**
 * A wheel with its stage and last reading as they follow from its entries; `changedAt` is when these
 * were changed, null when only the wheel itself was.
 */
export function wheelWith(
  wheel: WheelRecord,
  entries: readonly LogEntry[],
  changedAt: string | null,
): WheelRecord {
  return { ...withStateOf(wheel, entries), changedAt: later(wheel.changedAt, changedAt)! };
}
