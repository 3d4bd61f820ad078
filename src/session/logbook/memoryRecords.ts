import type { LogEntry, StandRecord, WheelRecord } from '../../contract/logbook.ts';
import { succeeded } from '../../contract/outcome.ts';
import { withStateOf } from '../../job/wheelState.ts';
import { packedContents } from './packedTrace.ts';
import {
  changesEntriesOf,
  later,
  touchedWheelIds,
  type RecordBatch,
  type RecordStore,
} from './recordStore.ts';

/** Records that live as long as the page. */
export function createMemoryRecords(): RecordStore {
  const wheels = new Map<string, WheelRecord>();
  const entries = new Map<string, LogEntry>();
  let stand: StandRecord | null = null;

  const entriesOf = (wheelId: string) =>
    [...entries.values()].filter((entry) => entry.wheelId === wheelId);
  const write = (batch: RecordBatch) => {
    stand = batch.stand ?? stand;
    for (const wheel of batch.wheels) wheels.set(wheel.id, wheel);
    for (const { id } of batch.removed) entries.delete(id);
    for (const entry of batch.entries) entries.set(entry.id, entry);
    for (const wheelId of touchedWheelIds(batch)) {
      const wheel = wheels.get(wheelId);
      if (wheel) wheels.set(wheelId, wheelAfter(wheel, entriesOf(wheelId), batch));
    }
  };

  return {
    stand: async () => succeeded(stand),
    wheels: async () => succeeded([...wheels.values()]),
    wheel: async (wheelId) => succeeded(wheels.get(wheelId) ?? null),
    entriesOf: async (wheelId) => succeeded(entriesOf(wheelId)),
    entry: async (entryId) => succeeded(entries.get(entryId) ?? null),
    all: async () =>
      succeeded({ stand, wheels: [...wheels.values()], entries: [...entries.values()] }),
    packed: async () =>
      succeeded(
        packedContents({ stand, wheels: [...wheels.values()], entries: [...entries.values()] }),
      ),
    async write(batch) {
      write(batch);
      return succeeded(undefined);
    },
    unreadableCount: () => 0,
  };
}

/** A wheel with its stage, last reading and time of change as they are once the batch is made. */
export function wheelAfter(
  wheel: WheelRecord,
  entries: readonly LogEntry[],
  batch: RecordBatch,
): WheelRecord {
  const changedAt = changesEntriesOf(batch, wheel.id)
    ? later(wheel.changedAt, batch.at)!
    : wheel.changedAt;
  return { ...withStateOf(wheel, entries), changedAt };
}
