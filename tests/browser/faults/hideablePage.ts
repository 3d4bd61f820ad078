import { createServer, type AddressInfo } from 'node:net';

import { chromium, test as base, type Page } from '@playwright/test';

import { launchWith } from '../../setup/launchWith.ts';

/** With these a browser keeps pages awake that nobody sees. */
const KEPT_AWAKE = [
  '--disable-background-timer-throttling',
  '--disable-backgrounding-occluded-windows',
  '--disable-renderer-backgrounding',
];

/**
 * Tests whose page can be put out of sight: the browser itself hides it, draws it no more and slows
 * its timers. A page as tests have it is told that it is seen whatever is before it; this one is
 * opened without that.
 */
export function hideableTest(flags: readonly string[]) {
  return base.extend({
    // oxlint-disable-next-line no-empty-pattern -- the form that fixtures have
    page: async ({}, use) => {
      const port = await freePort();
      const launch = launchWith([
        ...flags,
        `--remote-debugging-port=${port}`,
        '--window-size=1280,900',
      ]);
      const launched = await chromium.launch({ ...launch, ignoreDefaultArgs: KEPT_AWAKE });
      try {
        const address = `http://127.0.0.1:${port}`;
        const browser = await chromium.connectOverCDP(address, { noDefaults: true });
        const page = await browser.contexts()[0]!.newPage();
        await page.addInitScript(withoutServiceWorker);
        await use(page);
      } finally {
        await launched.close();
      }
    },
  });
}

/** As all other tests have it: files out of a service worker's store pass by the routes of a test. */
function withoutServiceWorker(): void {
  navigator.serviceWorker.register = () => Promise.reject(new Error('blocked by the test'));
}

/** Puts another tab before the page; what is given back puts the page in front again. */
export async function hidePage(page: Page): Promise<() => Promise<void>> {
  const other = await page.context().newPage();
  await other.bringToFront();
  await base.expect.poll(() => page.evaluate(() => document.visibilityState)).toBe('hidden');
  return async () => {
    await page.bringToFront();
    await base.expect.poll(() => page.evaluate(() => document.visibilityState)).toBe('visible');
    await other.close();
  };
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.on('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as AddressInfo;
      server.close(() => resolve(port));
    });
  });
}
