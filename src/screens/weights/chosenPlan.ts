import type { StandRecord, WheelRecord } from '../../contract/logbook.ts';
import type { Outcome } from '../../contract/outcome.ts';
import type { AcceptedReading } from '../../contract/reading.ts';
import {
  proposedPlan,
  simplestWishes,
  weightPlan,
  type PlanTrouble,
  type PlanWishes,
  type WeightPlan,
} from '../../job/weightPlan.ts';
import { storedValue, storeValue } from '../state/preference.ts';

/**
 * What the person wished for a reading's weights: the same on every screen, and after a reload. The
 * plan is worked out from it anew, so that it also follows the stock and the blocked stretches.
 */
const KEY = 'weight-wishes';
/** A day's wheels and more; older wishes are forgotten and the simplest plan is proposed again. */
const MOST_KEPT = 24;

interface KeptWishes extends PlanWishes {
  readonly entryId: string;
}

/** A sweep with figures, and what its weights depend on. */
export interface PlanParts {
  readonly sweep: { readonly id: string; readonly reading: AcceptedReading };
  readonly wheel: WheelRecord;
  readonly stand: StandRecord;
}

export function keepWishes(entryId: string, wishes: PlanWishes): void {
  const others = keptWishes().filter((kept) => kept.entryId !== entryId);
  storeValue(KEY, [...others.slice(1 - MOST_KEPT), { ...wishes, entryId }]);
}

/** As the person wished it; before that the simplest way that leaves little enough. */
export function chosenWishes(parts: PlanParts): PlanWishes {
  const { sweep, wheel, stand } = parts;
  return wishesFor(parts) ?? simplestWishes(sweep.reading, wheel, stand);
}

/** The one plan for a reading, whichever screen asks. */
export function chosenPlan(parts: PlanParts): Outcome<WeightPlan, PlanTrouble> {
  const { sweep, wheel, stand } = parts;
  const wishes = wishesFor(parts);
  return wishes === null
    ? proposedPlan(sweep.reading, wheel, stand)
    : weightPlan(sweep.reading, wheel, stand, wishes);
}

/** Null where the person wished for nothing, or for a ring that was taken from the wheel since. */
function wishesFor({ sweep, wheel }: PlanParts): PlanWishes | null {
  const kept = keptWishes().find(({ entryId }) => entryId === sweep.id);
  if (kept === undefined || (kept.ring ?? 0) >= wheel.rings.length) return null;
  return { places: kept.places, ring: kept.ring };
}

function keptWishes(): readonly KeptWishes[] {
  const stored = storedValue(KEY);
  return Array.isArray(stored) ? stored.filter(isKeptWishes) : [];
}

function isKeptWishes(one: unknown): one is KeptWishes {
  if (typeof one !== 'object' || one === null) return false;
  const { entryId, places, ring } = one as Partial<Record<keyof KeptWishes, unknown>>;
  const isRing = ring === null || (typeof ring === 'number' && Number.isInteger(ring) && ring >= 0);
  return typeof entryId === 'string' && (places === 1 || places === 2) && isRing;
}
