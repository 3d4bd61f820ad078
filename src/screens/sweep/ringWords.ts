import type { SweepProgress } from '../../contract/sweep.ts';
import { formatNumber, formatPlusMinus, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';

/** What stands in the ring under the degrees. */
export interface RingWords {
  /** What of the turn is missing. */
  readonly toGo: string | null;
  /** ± of the amount by now. */
  readonly soFar: string | null;
}

export function ringWords(progress: SweepProgress | null, units: Units): RingWords {
  const soFar = progress?.soFar ?? null;
  if (soFar === null) return { toGo: null, soFar: null };
  const leftDeg = Math.ceil(soFar.turnLeftDeg);
  return {
    toGo: leftDeg > 0 ? words.sweep.toGo(`${formatNumber(leftDeg, 0)}°`) : null,
    soFar: formatPlusMinus('weight', soFar.amountG95, units),
  };
}
