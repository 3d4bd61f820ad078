import type {
  Logbook,
  LogbookTrouble,
  LogEntry,
  StandRecord,
  WheelRecord,
} from '../../contract/logbook.ts';
import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import { proposedStand } from '../../job/proposals.ts';
import { withStateOf } from '../../job/wheelState.ts';

/**
 * A logbook that lives as long as the page: for tests, and for a browser that forbids storage, in
 * which case the person is told.
 */
export function createMemoryLogbook(): Logbook {
  const wheels = new Map<string, WheelRecord>();
  const entries = new Map<string, LogEntry>();
  const listeners = new Set<() => void>();
  let stand = proposedStand();

  const changed = () => {
    for (const listener of listeners) listener();
    return succeeded(undefined);
  };
  const entriesOf = (wheelId: string) =>
    [...entries.values()]
      .filter((entry) => entry.wheelId === wheelId)
      .sort((a, b) => a.at.localeCompare(b.at));
  const bringUpToDate = (wheelId: string, at: string) => {
    const wheel = wheels.get(wheelId);
    if (wheel) {
      wheels.set(wheelId, { ...withStateOf(wheel, entriesOf(wheelId)), changedAt: at });
    }
  };

  return {
    stand: async () => succeeded(stand),
    async saveStand(next: StandRecord) {
      stand = next;
      return changed();
    },
    wheels: async () =>
      succeeded([...wheels.values()].sort((a, b) => b.changedAt.localeCompare(a.changedAt))),
    wheel: async (wheelId) => found(wheels.get(wheelId)),
    async saveWheel(wheel) {
      wheels.set(wheel.id, withStateOf(wheel, entriesOf(wheel.id)));
      return changed();
    },
    entriesOf: async (wheelId) => succeeded(entriesOf(wheelId)),
    entry: async (entryId) => found(entries.get(entryId)),
    async addEntry(entry) {
      if (!wheels.has(entry.wheelId)) return failed('not-found', { wheelId: entry.wheelId });
      entries.set(entry.id, entry);
      bringUpToDate(entry.wheelId, entry.at);
      return changed();
    },
    async removeEntry(entryId) {
      const entry = entries.get(entryId);
      if (!entry) return failed('not-found', { entryId });
      entries.delete(entryId);
      bringUpToDate(entry.wheelId, new Date().toISOString());
      return changed();
    },
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

function found<T>(value: T | undefined): Outcome<T, LogbookTrouble> {
  return value === undefined ? failed('not-found') : succeeded(value);
}
