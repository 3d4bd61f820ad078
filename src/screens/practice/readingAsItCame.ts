import type { AcceptedReading } from '../../contract/reading.ts';
import type { PracticeState } from '../../session/practice/practiceRoom.ts';

/** The first reading of the wheel without weights; later sweeps read what these have left. */
export function readingAsItCame({ sweeps }: PracticeState): AcceptedReading | null {
  for (const { result, withWeights } of sweeps) {
    if (withWeights.length === 0 && result.reading.status === 'ok') return result.reading;
  }
  return null;
}
