import { failed, succeeded, type Outcome } from '../contract/outcome.ts';
import type { SweepSession } from '../contract/session.ts';
import { holdLockWhileSweeping, whileNobodySweeps } from './sweepLock.ts';

/** A new version of the app: whether one is ready, and the way to it. */
export interface AppUpdate {
  /** True once a new version is here in full, or another tab has gone over to one. */
  isWaiting(): boolean;
  /** Calls back when that changes; returns the way to stop. */
  subscribe(onChange: () => void): () => void;
  /**
   * Goes over to the new version and opens the page anew. Refused while a sweep runs, in this tab
   * or in another: it would take the program from under it.
   */
  apply(): Promise<Outcome<void, 'sweeping' | 'no-update' | 'update-failed'>>;
}

/** The parts of the browser that are needed, so that tests can put others in their place. */
export interface UpdateBrowser {
  readonly workers: Pick<
    ServiceWorkerContainer,
    'controller' | 'register' | 'addEventListener' | 'removeEventListener'
  >;
  readonly locks: Pick<LockManager, 'request'>;
  /** Opens the page anew. */
  reload(): void;
  /** Calls back when the app comes into view, and now and then while it stays there. */
  onQuietMoment(look: () => void): void;
}

/** Looking for a new version takes one small request; a shed's tablet may stay on for weeks. */
const LOOK_INTERVAL_MS = 3_600_000;
/** Going over takes some tens of milliseconds; past this the browser has given up on it. */
const TAKE_OVER_LIMIT_MS = 10_000;

/** Keeps the app for use without a network, and looks after new versions of it. */
export function createAppUpdate(
  session: Pick<SweepSession, 'getState' | 'subscribe'>,
  browser: UpdateBrowser | null = thisBrowser(),
): AppUpdate {
  const listeners = new Set<() => void>();
  let waiting = false;
  let registration: ServiceWorkerRegistration | null = null;
  if (browser !== null) {
    holdLockWhileSweeping(session, browser.locks);
    void keepOffline(browser, session, () => {
      waiting = true;
      for (const listener of listeners) listener();
    }).then((made) => (registration = made));
  }
  return {
    isWaiting: () => waiting,
    subscribe(onChange) {
      listeners.add(onChange);
      return () => listeners.delete(onChange);
    },
    async apply() {
      if (browser === null || !waiting) return failed('no-update');
      if (session.getState().phase === 'sweeping') return failed('sweeping');
      const ended = await whileNobodySweeps(browser.locks, async () => {
        const ready = registration?.waiting ?? null;
        // None is left when another tab has gone over already: then the page only opens anew.
        if (ready !== null && !(await takesOver(browser, ready))) return 'update-failed' as const;
        browser.reload();
        return null;
      });
      return ended === null ? succeeded(undefined) : failed(ended);
    },
  };
}

async function keepOffline(
  { workers, onQuietMoment }: UpdateBrowser,
  session: Pick<SweepSession, 'getState'>,
  onWaiting: () => void,
): Promise<ServiceWorkerRegistration | null> {
  let controlled = workers.controller !== null;
  workers.addEventListener('controllerchange', () => {
    // The first to take charge of this page is this very version.
    if (controlled) onWaiting();
    controlled = true;
  });
  // Refused or unreachable: the app works, but only with the network.
  const made = await workers.register('./sw.js', { updateViaCache: 'none' }).catch(() => null);
  // Where workers are forbidden, some browsers resolve to nothing at all.
  if (!made) return null;
  if (made.waiting !== null && controlled) onWaiting();
  made.addEventListener('updatefound', () => {
    const next = made.installing;
    next?.addEventListener('statechange', () => {
      if (next.state === 'installed' && made.active !== null) onWaiting();
    });
  });
  onQuietMoment(() => {
    if (session.getState().phase !== 'sweeping') void made.update().catch(() => undefined);
  });
  return made;
}

async function takesOver({ workers }: UpdateBrowser, ready: ServiceWorker): Promise<boolean> {
  return new Promise((resolve) => {
    const end = (done: boolean) => {
      clearTimeout(timer);
      workers.removeEventListener('controllerchange', taken);
      resolve(done);
    };
    const taken = () => end(true);
    const timer = setTimeout(() => end(false), TAKE_OVER_LIMIT_MS);
    workers.addEventListener('controllerchange', taken);
    // A worker has one origin, its own: there is none to name.
    // oxlint-disable-next-line unicorn/require-post-message-target-origin
    ready.postMessage({ type: 'SKIP_WAITING' });
  });
}

/** Null while developing, and where the browser has no service worker (no HTTPS, private window). */
function thisBrowser(): UpdateBrowser | null {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator) || !('locks' in navigator)) {
    return null;
  }
  const { serviceWorker: workers, locks } = navigator;
  return {
    workers,
    locks,
    reload: () => location.reload(),
    onQuietMoment(look) {
      setInterval(look, LOOK_INTERVAL_MS);
      document.addEventListener('visibilitychange', () => {
        if (document.visibilityState === 'visible') look();
      });
    },
  };
}
