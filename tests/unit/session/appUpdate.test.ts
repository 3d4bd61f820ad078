import { describe, expect, it, vi } from 'vitest';

import type { SessionState } from '../../../src/contract/session.ts';
import { createAppUpdate, type UpdateBrowser } from '../../../src/session/appUpdate.ts';

/** A session of which only its phase is looked at. */
function fakeSession() {
  const listeners = new Set<() => void>();
  let phase: SessionState['phase'] = 'choosing';
  return {
    getState: () => ({ phase }) as SessionState,
    subscribe(onChange: () => void) {
      listeners.add(onChange);
      return () => listeners.delete(onChange);
    },
    goTo(next: SessionState['phase']) {
      phase = next;
      for (const listener of listeners) listener();
    },
  };
}

/** Shared and exclusive locks as the Web Locks API has them, without a queue of exclusive ones. */
function fakeLocks() {
  let held = 0;
  const request = async (
    _name: string,
    options: { mode?: string; ifAvailable?: boolean },
    work: (lock: object | null) => Promise<unknown>,
  ) => {
    if (options.ifAvailable && held > 0) return work(null);
    held += 1;
    return work({}).finally(() => (held -= 1));
  };
  return { request } as unknown as UpdateBrowser['locks'];
}

class FakeWorker extends EventTarget {
  state = 'installing';
  constructor(readonly onMessage: () => void = () => undefined) {
    super();
  }
  postMessage(message: unknown): void {
    if ((message as { type: string }).type === 'SKIP_WAITING') this.onMessage();
  }
  reach(state: string): void {
    this.state = state;
    this.dispatchEvent(new Event('statechange'));
  }
}

class FakeRegistration extends EventTarget {
  active: FakeWorker | null = null;
  waiting: FakeWorker | null = null;
  installing: FakeWorker | null = null;
  update = vi.fn(async () => undefined);
}

function fakeBrowser(locks = fakeLocks()) {
  const registration = new FakeRegistration();
  const workers = Object.assign(new EventTarget(), {
    controller: null as object | null,
    register: async () => registration,
  });
  const takeOver = () => {
    workers.controller = {};
    workers.dispatchEvent(new Event('controllerchange'));
  };
  let look = () => {};
  const reload = vi.fn();
  const browser = {
    workers,
    locks,
    reload,
    onQuietMoment: (callBack: () => void) => (look = callBack),
  } as unknown as UpdateBrowser;
  /** A new version comes in and is whole. */
  const newVersion = () => {
    const next = new FakeWorker(takeOver);
    registration.installing = next;
    registration.dispatchEvent(new Event('updatefound'));
    registration.installing = null;
    registration.waiting = next;
    next.reach('installed');
  };
  return { browser, registration, workers, takeOver, reload, newVersion, lookNow: () => look() };
}

const settled = () => new Promise((resolve) => setTimeout(resolve));

async function installed(locks = fakeLocks()) {
  const fake = fakeBrowser(locks);
  fake.registration.active = new FakeWorker();
  fake.workers.controller = {};
  const session = fakeSession();
  const update = createAppUpdate(session, fake.browser);
  await settled();
  return { ...fake, session, update };
}

describe('update of the app', () => {
  it('says nothing when the first version takes charge of the page', async () => {
    const fake = fakeBrowser();
    const update = createAppUpdate(fakeSession(), fake.browser);
    await settled();
    const first = new FakeWorker();
    fake.registration.installing = first;
    fake.registration.dispatchEvent(new Event('updatefound'));
    first.reach('installed');
    fake.takeOver();
    expect(update.isWaiting()).toBe(false);
    expect(await update.apply()).toMatchObject({ ok: false, failure: { code: 'no-update' } });
  });

  it('tells of a new version, and goes over to it when asked', async () => {
    const { update, newVersion, reload } = await installed();
    const told = vi.fn();
    update.subscribe(told);
    newVersion();
    expect(told).toHaveBeenCalledTimes(1);
    expect(update.isWaiting()).toBe(true);
    expect(reload).not.toHaveBeenCalled();
    expect(await update.apply()).toMatchObject({ ok: true });
    expect(reload).toHaveBeenCalledTimes(1);
  });

  it('tells of a version that waited already when the page was opened', async () => {
    const fake = fakeBrowser();
    fake.workers.controller = {};
    fake.registration.waiting = new FakeWorker();
    const update = createAppUpdate(fakeSession(), fake.browser);
    await settled();
    expect(update.isWaiting()).toBe(true);
  });

  it('is refused while this tab sweeps, and works after', async () => {
    const { update, newVersion, session, reload } = await installed();
    newVersion();
    session.goTo('sweeping');
    expect(await update.apply()).toMatchObject({ ok: false, failure: { code: 'sweeping' } });
    expect(reload).not.toHaveBeenCalled();
    session.goTo('read');
    await settled();
    expect(await update.apply()).toMatchObject({ ok: true });
  });

  it('is refused while another tab sweeps', async () => {
    const locks = fakeLocks();
    const here = await installed(locks);
    const there = await installed(locks);
    there.session.goTo('sweeping');
    here.newVersion();
    expect(await here.update.apply()).toMatchObject({ ok: false, failure: { code: 'sweeping' } });
    expect(here.reload).not.toHaveBeenCalled();
    there.session.goTo('choosing');
    await settled();
    expect(await here.update.apply()).toMatchObject({ ok: true });
  });

  it('in another tab that went over to a new version, this one is offered to open anew', async () => {
    const { update, takeOver, reload } = await installed();
    takeOver();
    expect(update.isWaiting()).toBe(true);
    expect(reload).not.toHaveBeenCalled();
    expect(await update.apply()).toMatchObject({ ok: true });
    expect(reload).toHaveBeenCalledTimes(1);
  });

  it('is not looked for while a sweep runs', async () => {
    const { registration, session, lookNow } = await installed();
    session.goTo('sweeping');
    lookNow();
    expect(registration.update).not.toHaveBeenCalled();
    session.goTo('read');
    lookNow();
    expect(registration.update).toHaveBeenCalledTimes(1);
  });

  it('does nothing where the browser has no service worker', async () => {
    const update = createAppUpdate(fakeSession(), null);
    expect(update.isWaiting()).toBe(false);
    expect(await update.apply()).toMatchObject({ ok: false, failure: { code: 'no-update' } });
  });
});
