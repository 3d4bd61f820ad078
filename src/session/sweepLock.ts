import type { SweepSession } from '../contract/session.ts';

/** Held, shared, by every tab in which a sweep runs (Web Locks API); a crash lets go of it too. */
const SWEEP_LOCK = 'tiltsweep.sweeping';

type Locks = Pick<LockManager, 'request'>;

/** Holds the lock for as long as the session sweeps, each time that it does. */
export function holdLockWhileSweeping(
  session: Pick<SweepSession, 'getState' | 'subscribe'>,
  locks: Locks,
): void {
  let letGo: (() => void) | null = null;
  const follow = () => {
    const sweeping = session.getState().phase === 'sweeping';
    if (sweeping && letGo === null) {
      const over = new Promise<void>((resolve) => (letGo = resolve));
      void locks.request(SWEEP_LOCK, { mode: 'shared' }, () => over);
    } else if (!sweeping && letGo !== null) {
      letGo();
      letGo = null;
    }
  };
  session.subscribe(follow);
  follow();
}

/** Runs `work` while no tab sweeps; answers `sweeping`, without running it, when one does. */
export async function whileNobodySweeps<T>(
  locks: Locks,
  work: () => Promise<T>,
): Promise<T | 'sweeping'> {
  return locks.request(SWEEP_LOCK, { ifAvailable: true }, async (lock) =>
    lock === null ? ('sweeping' as const) : work(),
  );
}
