import { expect, test, type Page } from '@playwright/test';

import { en } from '../../src/screens/words/en/index.ts';
import { hidePage, showPage } from './faults/hiddenPage.ts';
import { GALLERY_PLACES } from './gallery/galleryPlaces.ts';
import { serveGallery, type ServedGallery } from './gallery/serveGallery.ts';

/** The screen stays on while a hand is at the wheel, also after another app was in front. */

let gallery: ServedGallery;

test.beforeAll(async () => {
  gallery = await serveGallery();
});

test.afterAll(() => gallery.close());

/**
 * Screen Wake Lock, W3C: a hidden page loses its locks, and gets none while it is hidden. A browser
 * without a window hides nothing, so what it would do stands here.
 */
async function standInForLocks(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const held = new Set<{ released: boolean; release(): Promise<void> }>();
    Object.defineProperty(window, 'heldLocks', { get: () => held.size });
    Object.defineProperty(navigator, 'wakeLock', {
      value: {
        async request() {
          if (document.hidden) throw new DOMException('hidden', 'NotAllowedError');
          const lock = {
            released: false,
            async release() {
              lock.released = true;
              held.delete(lock);
            },
          };
          held.add(lock);
          return lock;
        },
      },
    });
    document.addEventListener('visibilitychange', () => {
      if (document.hidden) for (const lock of held) void lock.release();
    });
  });
}

const held = (page: Page) =>
  page.evaluate(() => (window as unknown as { heldLocks: number }).heldLocks);

for (const [what, query] of [
  ['the sight', 'place=sight&state=sighting-ready'],
  ['the hand that is led', 'place=lead&state=lead-turn'],
  ['a sweep', 'state=sweeping-following'],
] as const) {
  test(`${what} keeps the screen on, takes it up again, and lets it go`, async ({ page }) => {
    await standInForLocks(page);
    await page.goto(`${gallery.address}?${query}`);
    await expect(page.locator('.live')).toBeVisible();
    await expect.poll(() => held(page)).toBe(1);
    await hidePage(page);
    await expect.poll(() => held(page)).toBe(0);
    await showPage(page);
    await expect.poll(() => held(page)).toBe(1);
    // Told twice that it is seen, it still holds one.
    await showPage(page);
    await expect.poll(() => held(page)).toBe(1);
    await page.evaluate((hash) => (location.hash = hash), GALLERY_PLACES['settings']!);
    await expect(page.locator('h1', { hasText: 'Settings' })).toBeVisible();
    await expect.poll(() => held(page)).toBe(0);
  });
}

test('a browser that cannot keep the screen on, or record, says so among the settings', async ({
  page,
}) => {
  await page.addInitScript(() => {
    Reflect.deleteProperty(Navigator.prototype, 'wakeLock');
    Reflect.deleteProperty(globalThis, 'VideoEncoder');
  });
  await page.goto(`${gallery.address}?place=settings`);
  const lacks = page.locator('[data-role="browser-lacks"]');
  await expect(lacks.locator('[data-part]')).toHaveCount(2);
  await expect(lacks).toContainText('Keep the screen on');
  await expect(lacks).toContainText('Record films');
});

/** Screen Wake Lock, W3C, section 6: on a low battery the browser may refuse. */
async function refuseLocks(page: Page): Promise<void> {
  await page.addInitScript(() => {
    Object.defineProperty(navigator, 'wakeLock', {
      value: { request: () => Promise.reject(new DOMException('low battery', 'NotAllowedError')) },
    });
  });
}

for (const [what, prepare] of [
  [
    'lacks the lock',
    (page: Page) =>
      page.addInitScript(() => void Reflect.deleteProperty(Navigator.prototype, 'wakeLock')),
  ],
  ['refuses it', refuseLocks],
] as const) {
  test(`a screen that may go dark is told once at the sight: a browser that ${what}`, async ({
    page,
  }) => {
    await prepare(page);
    const sight = `${gallery.address}?place=sight&state=sighting-ready`;
    await page.goto(sight);
    const told = page.locator('[data-role="screen-may-go-dark"]');
    await expect(told).toContainText(en.sight.mayGoDark);
    await told.getByRole('button', { name: en.start.cautionsUnderstood }).click();
    await expect(told).toHaveCount(0);
    await page.goto(sight);
    await expect(page.locator('.sight-list')).toBeVisible();
    await expect(told).toHaveCount(0);
  });
}

test('a screen that is kept on is no matter at the sight', async ({ page }) => {
  await standInForLocks(page);
  await page.goto(`${gallery.address}?place=sight&state=sighting-ready`);
  await expect.poll(() => held(page)).toBe(1);
  await expect(page.locator('[data-role="screen-may-go-dark"]')).toHaveCount(0);
});

test('a browser that lacks nothing says nothing of it', async ({ page }) => {
  await page.goto(`${gallery.address}?place=settings`);
  await expect(page.locator('h1', { hasText: 'Settings' })).toBeVisible();
  await expect(page.locator('[data-role="browser-lacks"]')).toHaveCount(0);
});
