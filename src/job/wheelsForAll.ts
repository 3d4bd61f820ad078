import type { LogEntry, WheelRecord } from '../contract/logbook.ts';
import { proposedWheel, wheelOfSetup } from './proposals.ts';

/**
 * The wheels, and one more for each whose record is not there (it could not be read) while entries
 * of it are: made from the setup of one of its sweeps, as far as there is one. A saved logbook in
 * which entries belong to no wheel would be refused when it is brought in.
 */
export function wheelsForAll(
  wheels: readonly WheelRecord[],
  entries: readonly LogEntry[],
): WheelRecord[] {
  const known = new Set(wheels.map(({ id }) => id));
  const made = new Map<string, WheelRecord>();
  for (const entry of entries) {
    const { wheelId, at } = entry;
    if (known.has(wheelId)) continue;
    if (entry.kind === 'sweep') made.set(wheelId, wheelOfSetup(wheelId, entry.setup, at));
    else if (!made.has(wheelId)) made.set(wheelId, proposedWheel(wheelId, '', at));
  }
  return [...wheels, ...made.values()];
}
