/**
 * Who records which film, over all tabs: by Web Locks, which the browser lets go when a tab closes
 * or dies, so that a film whose recording broke off is known at once.
 */
const PREFIX = 'tiltsweep.film.';

/** Films begun in this page, for browsers without Web Locks. */
const begunHere = new Set<string>();

/** Resolves when the lock is held; the answer lets it go. */
export async function holdRecordingLock(filmId: string): Promise<() => void> {
  begunHere.add(filmId);
  let letGo: () => void = () => undefined;
  const held = new Promise<void>((resolve) => (letGo = resolve));
  if (typeof navigator !== 'undefined' && navigator.locks) {
    await new Promise<void>((isHeld) => {
      void navigator.locks.request(PREFIX + filmId, () => {
        isHeld();
        return held;
      });
    });
  }
  return () => {
    begunHere.delete(filmId);
    letGo();
  };
}

export async function filmsBeingRecorded(): Promise<ReadonlySet<string>> {
  if (typeof navigator === 'undefined' || !navigator.locks) return new Set(begunHere);
  const { held = [] } = await navigator.locks.query();
  const names = held.flatMap(({ name }) => (name?.startsWith(PREFIX) ? name : []));
  return new Set([...begunHere, ...names.map((name) => name.slice(PREFIX.length))]);
}
