import type { EyeEntry, LogEntry } from '../contract/logbook.ts';
import { compareByEye, type EyeComparison } from '../balance/byEye.ts';
import { vectorFromPolar } from '../quantities/vector.ts';
import { isAcceptedSweep, type AcceptedSweep } from './wheelState.ts';

/** A reading by eye and the sweep that measured the same state of the wheel. */
export interface EyePair {
  readonly eye: EyeEntry;
  readonly sweep: AcceptedSweep;
  readonly comparison: EyeComparison;
}

/**
 * Pairs each reading by eye with a good sweep made with the same weights on: the first one after
 * it, else the last one before it. Readings that no sweep has measured yet are left out.
 */
export function eyePairs(entries: readonly LogEntry[]): readonly EyePair[] {
  const inOrder = [...entries].sort((a, b) => a.at.localeCompare(b.at));
  return inOrder.flatMap((entry, index) => {
    if (entry.kind !== 'by-eye') return [];
    const sweep = sweepOfSameState(inOrder, index);
    if (sweep === null) return [];
    const { amountGmm, heavySpotDeg } = sweep.reading.unbalance;
    const comparison = compareByEye(
      vectorFromPolar(amountGmm, heavySpotDeg),
      { lightSpotDeg: entry.lightSpotDeg, massG: entry.massG },
      entry.radiusMm,
    );
    return comparison.ok ? [{ eye: entry, sweep, comparison: comparison.value }] : [];
  });
}

function sweepOfSameState(inOrder: readonly LogEntry[], index: number): AcceptedSweep | null {
  const isWeights = (entry: LogEntry) => entry.kind === 'weights';
  const after = inOrder.slice(index + 1);
  const end = after.findIndex(isWeights);
  const next = after.slice(0, end < 0 ? undefined : end).find(isAcceptedSweep);
  if (next) return next;
  const start = inOrder.slice(0, index).findLastIndex(isWeights);
  return inOrder.slice(start + 1, index).findLast(isAcceptedSweep) ?? null;
}
