import type { LogEntry } from '../contract/logbook.ts';
import type { AddedWeight } from '../contract/setup.ts';
import { isAcceptedSweep, type AcceptedSweep } from './wheelState.ts';

/** A sweep with the one before it, and what was stuck on between the two. */
export interface SweepPair {
  readonly before: AcceptedSweep | null;
  readonly after: AcceptedSweep;
  readonly added: readonly AddedWeight[];
  /** Times that weights were put on before `after`, from the wheel's first reading on. */
  readonly trims: number;
}

/**
 * `before` is the sweep that the setup names; without one, the good sweep just before in time.
 * Entries in any order.
 */
export function sweepPair(after: AcceptedSweep, entries: readonly LogEntry[]): SweepPair {
  const earlier = entries
    .filter((entry) => entry.at < after.at)
    .sort((a, b) => a.at.localeCompare(b.at));
  const sweeps = earlier.filter(isAcceptedSweep);
  const named = after.setup.after?.sweep;
  const before =
    sweeps.find(
      ({ id, setup }) => named !== undefined && (id === named || setup.label === named),
    ) ??
    sweeps.at(-1) ??
    null;
  const since = earlier.filter((entry) => before === null || entry.at > before.at);
  const logged = since.flatMap((entry) => (entry.kind === 'weights' ? entry.added : []));
  return {
    before,
    after,
    added: after.setup.after?.added ?? logged,
    trims: earlier.filter((entry) => entry.kind === 'weights').length,
  };
}
