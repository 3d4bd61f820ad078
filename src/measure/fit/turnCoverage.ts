import type { SweepObservations } from '../../contract/observations.ts';
import type { FrameBins } from './frameBins.ts';

/** How much of a turn the usable frames span, and the widest stretch none of them saw. */
export interface TurnCoverage {
  readonly coveredDeg: number;
  readonly widestGapDeg: number;
}

export function measureTurnCoverage(
  observations: SweepObservations,
  bins: FrameBins,
): TurnCoverage {
  const turns = observations.turnDeg.filter((_, f) => bins.binOfFrame[f] >= 0);
  if (turns.length === 0) return { coveredDeg: 0, widestGapDeg: 360 };
  const sorted = turns.map((t) => ((t % 360) + 360) % 360).sort();
  let widestGapDeg = sorted[0] + 360 - sorted[sorted.length - 1];
  let lowest = Infinity;
  let highest = -Infinity;
  for (let i = 0; i < sorted.length; i++) {
    if (i > 0) widestGapDeg = Math.max(widestGapDeg, sorted[i] - sorted[i - 1]);
    lowest = Math.min(lowest, turns[i]);
    highest = Math.max(highest, turns[i]);
  }
  return { coveredDeg: highest - lowest, widestGapDeg };
}
