import type { LogEntry } from '../../contract/logbook.ts';
import { amountOf, type SweepAmount } from './amountOf.ts';

/** One reading of a wheel, as it stands beside the others over the seasons. */
export interface SeasonReading extends SweepAmount {
  readonly id: string;
  readonly at: string;
  /** True for a check sweep: what its weights have left, not how the wheel came. */
  readonly isCheck: boolean;
  /** From the left, in widths of a column. */
  readonly place: number;
}

/** Dials of more readings would cover each other: the latest are drawn. */
const MOST_DRAWN = 14;
/** A check stands by the reading that it belongs to, closer than the next season does. */
const CHECK_STEP = 0.6;

/**
 * The readings of a wheel, oldest first: each first reading begins a column of its own, and its
 * checks follow it closely. Sweeps without a reading are left out.
 */
export function seasonReadings(entries: readonly LogEntry[]): readonly SeasonReading[] {
  let place = -1;
  return entries
    .flatMap((entry) => {
      const amount = entry.kind === 'sweep' ? amountOf(entry) : null;
      return entry.kind === 'sweep' && amount !== null ? [{ ...amount, entry }] : [];
    })
    .slice(-MOST_DRAWN)
    .map(({ entry: { id, at, setup }, ...amount }) => {
      const isCheck = setup.after !== undefined;
      place = place < 0 ? 0 : place + (isCheck ? CHECK_STEP : 1);
      return { ...amount, id, at, isCheck, place };
    });
}
