import type { EntryName, PackedContents, TakenOut, WheelRecord } from '../contract/logbook.ts';
import { isSameWheel, type Merge } from './mergedContents.ts';

/** What a merge put in, as far as it takes to undo it: no traces are held on to. */
export interface BroughtIn {
  readonly wheels: readonly WheelRecord[];
  /** Those of `wheels` that were there before, as they were. */
  readonly earlierWheels: readonly WheelRecord[];
  readonly entries: readonly EntryName[];
  readonly stand: PackedContents['stand'];
}

export function broughtIn(here: PackedContents, { contents }: Merge): BroughtIn {
  const brought = new Set(contents.wheels.map(({ id }) => id));
  return {
    wheels: contents.wheels,
    earlierWheels: here.wheels.filter(({ id }) => brought.has(id)),
    entries: contents.entries.map(({ entry: { id, wheelId } }) => ({ id, wheelId })),
    stand: contents.stand,
  };
}

/**
 * What makes a logbook again what it was before a merge. Nothing done since is lost: a wheel that
 * came with it and has got entries of its own stays, and values changed since stay as well.
 */
export function undoneMerge(now: PackedContents, brought: BroughtIn): TakenOut {
  const { wheels, earlierWheels, entries, stand } = brought;
  const gone = new Set(entries.map(({ id }) => id));
  const inUse = new Set(
    now.entries.flatMap(({ entry }) => (gone.has(entry.id) ? [] : [entry.wheelId])),
  );
  const wheelsNow = new Map(now.wheels.map((wheel) => [wheel.id, wheel]));
  const unchanged = wheels.filter((wheel) => {
    const present = wheelsNow.get(wheel.id);
    return present !== undefined && isSameWheel(present, wheel);
  });
  const mayGo = new Set(unchanged.map(({ id }) => id));
  const earlier = new Set(earlierWheels.map(({ id }) => id));
  return {
    wheels: earlierWheels.filter(({ id }) => mayGo.has(id)),
    removedWheels: [...mayGo].filter((id) => !earlier.has(id) && !inUse.has(id)),
    removed: entries,
    removesStand: stand !== null && JSON.stringify(now.stand) === JSON.stringify(stand),
  };
}
