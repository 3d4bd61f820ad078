import type { SweepSetup, TurnSense } from '../../contract/setup.ts';
import type { SweepReaderOptions } from '../../contract/sweep.ts';

/**
 * The way the picture must show the wheel turning; null where either is taken as it is seen. A
 * camera that may mirror is held to what the screens asked for: seen the other way round, a mirror
 * is likelier than a hand that did the opposite, until a trial has shown that it does not mirror.
 */
export function dueSense(
  { turnSense, sight }: SweepSetup,
  { mayMirror, askedSense }: Pick<SweepReaderOptions, 'mayMirror' | 'askedSense'>,
): TurnSense | null {
  if (turnSense !== undefined) return turnSense;
  return mayMirror && sight.tested?.turn === undefined ? (askedSense ?? null) : null;
}
