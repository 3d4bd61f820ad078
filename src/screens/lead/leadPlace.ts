import type { Weight } from '../../contract/reading.ts';
import { storedValue, storeValue } from '../state/preference.ts';

/**
 * How many of a reading's weights are on the wheel already while the hand is led: whoever goes back
 * or loads the page anew between two weights goes on with the second.
 */
const KEY = 'lead-place';

interface LeadPlace {
  readonly entryId: string;
  /** The weights themselves: another plan begins anew. */
  readonly weights: string;
  readonly at: number;
}

export function leadPlace(entryId: string, weights: readonly Weight[]): number {
  const kept = storedValue(KEY) as Partial<LeadPlace> | null;
  const isThisOne = kept?.entryId === entryId && kept.weights === JSON.stringify(weights);
  return isThisOne && typeof kept.at === 'number' && kept.at < weights.length ? kept.at : 0;
}

export function keepLeadPlace(entryId: string, weights: readonly Weight[], at: number): void {
  storeValue(KEY, { entryId, weights: JSON.stringify(weights), at } satisfies LeadPlace);
}
