import type { LogEntry, StandRecord, WheelRecord } from '../../contract/logbook.ts';
import { failed, succeeded } from '../../contract/outcome.ts';
import { isAcceptedSweep, type AcceptedSweep } from '../../job/wheelState.ts';
import { useEntries, useLogbookAnswer, useStand, useWheel, type Fetched } from './useLogbook.ts';

/** Everything that a screen about one good reading builds on. */
export interface SweepParts {
  readonly wheel: WheelRecord;
  readonly stand: StandRecord;
  readonly entries: readonly LogEntry[];
  readonly sweep: AcceptedSweep;
}

/** Null while it is fetched; `not-found` also where the entry is no sweep with figures. */
export function useAcceptedSweep(wheelId: string, entryId: string): Fetched<SweepParts> {
  const wheel = useWheel(wheelId);
  const stand = useStand();
  const entries = useEntries(wheelId);
  const entry = useLogbookAnswer(`entry ${entryId}`, (logbook) => logbook.entry(entryId));
  if (!wheel || !stand || !entries || !entry) return null;
  if (!wheel.ok) return wheel;
  if (!stand.ok) return stand;
  if (!entries.ok) return entries;
  if (!entry.ok) return entry;
  const sweep = entry.value;
  if (!isAcceptedSweep(sweep)) return failed('not-found', { entryId });
  return succeeded({ wheel: wheel.value, stand: stand.value, entries: entries.value, sweep });
}
