import { failed, succeeded, type Outcome } from '../contract/outcome.ts';
import type { AcceptedReading, Reading } from '../contract/reading.ts';
import type { SweepSetup } from '../contract/setup.ts';

/** The reading that a check sweep builds on; null where the setup names none. */
export function earlierReadingFor(
  setup: SweepSetup,
  earlier: Reading | null,
): Outcome<AcceptedReading | null, 'earlier-sweep-missing'> {
  if (!setup.after) return succeeded(null);
  if (earlier?.status === 'ok') return succeeded(earlier);
  const had = earlier ? 'was refused' : 'not among the files';
  return failed('earlier-sweep-missing', { sweep: setup.after.sweep, reading: had });
}
