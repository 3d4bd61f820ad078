import type { SweepProgress, SweepSoFar } from '../../contract/sweep.ts';
import { formatNumber, formatPlusMinus, type Units } from '../words/numbers.ts';
import { words } from '../words/words.ts';

const WHOLE_TURN_DEG = 360;

/** What stands in the ring under the degrees. */
export interface RingWords {
  /** What of the turn is missing: with the degrees above it the whole of it. */
  readonly toGo: string | null;
  /** ± of the amount by now. */
  readonly soFar: string | null;
}

export function ringWords(progress: SweepProgress | null, units: Units): RingWords {
  const soFar = progress?.soFar ?? null;
  if (!progress || !soFar) return { toGo: null, soFar: null };
  const leftDeg = WHOLE_TURN_DEG - Math.min(Math.floor(progress.coveredDeg), WHOLE_TURN_DEG);
  return {
    toGo: leftDeg > 0 ? words.sweep.toGo(`${formatNumber(leftDeg, 0)}°`) : closing(soFar),
    soFar: formatPlusMinus('weight', soFar.amountG95, units),
  };
}

/** The turn closes where the tread comes by again: a little more than the whole. */
function closing({ turnLeftDeg }: SweepSoFar): string | null {
  return turnLeftDeg > 0 ? words.sweep.littleMore : null;
}
