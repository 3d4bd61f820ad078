import { expect, test, type Page } from '@playwright/test';

import { archiveFile } from '../fakes/archiveFile.ts';
import { bringIn, notice, openWithLogbook, timeline, wheels } from './faults/logbookPage.ts';
import { expectSaid } from './faults/said.ts';

/** Faults of storage, each caused here: what the person sees, and what is kept. */
test('storage throws on write: the note stays in the page, is said, and is stored later', async ({
  page,
}) => {
  await openWithLogbook(page);
  await wheels(page).filter({ hasText: 'front left' }).click();
  await page.evaluate(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('mock: cannot write', 'UnknownError');
    };
    Object.assign(globalThis, { mend: () => (IDBObjectStore.prototype.put = put) });
  });
  await page.locator('textarea').fill('rim is bent');
  await page.locator('[data-role="add-note"]').click();
  await expect(page.locator('[data-role="timeline"]')).toContainText('rim is bent');
  await expectSaid(notice(page), 'storage-failed');
  await page.evaluate(() => (globalThis as unknown as { mend(): void }).mend());
  await notice(page).getByRole('button').click();
  await expect(notice(page)).toHaveCount(0);
  await page.reload();
  await expect(page.locator('[data-role="timeline"]')).toContainText('rim is bent');
});

test('the disk is full: said with what to delete, and nothing is lost while the page is open', async ({
  page,
}) => {
  await openWithLogbook(page);
  await wheels(page).filter({ hasText: 'front left' }).click();
  await page.evaluate(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('mock: full', 'QuotaExceededError');
    };
    Object.assign(globalThis, { mend: () => (IDBObjectStore.prototype.put = put) });
  });
  await page.locator('textarea').fill('rim is bent');
  await page.locator('[data-role="add-note"]').click();
  await expectSaid(notice(page), 'storage-full');
  await expect(timeline(page)).toContainText('rim is bent');
  // Tried again in vain, the other advice; with room again it is stored.
  await notice(page).getByRole('button').click();
  await expectSaid(notice(page), 'storage-full', { again: true });
  await page.evaluate(() => (globalThis as unknown as { mend(): void }).mend());
  await notice(page).getByRole('button').click();
  await expect(notice(page)).toHaveCount(0);
  await page.reload();
  await expect(timeline(page)).toContainText('rim is bent');
});

test('a browser that forbids storage: the app goes on with a logbook of this page, and says so', async ({
  page,
}) => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('mock: forbidden', 'SecurityError');
    };
  });
  await page.goto('/#/logbook');
  await expectSaid(notice(page), 'storage-blocked');
  await bringIn(page, await archiveFile({ withFilm: false }));
  await expect(wheels(page)).toHaveCount(2);
});

test('storage is nearly full: said before it is', async ({ page }) => {
  await page.addInitScript(() => {
    navigator.storage.estimate = async () => ({ usage: 9.9e9, quota: 10e9 });
  });
  await openWithLogbook(page);
  await expectSaid(notice(page), 'storage-low');
});

/**
 * A browser that stores no more than so much, as one does on a full tablet, though it names ten
 * gigabytes; for before its first write.
 */
async function quotaOf(page: Page, baseURL: string, quotaSize: number): Promise<void> {
  const devTools = await page.context().newCDPSession(page);
  const { origin } = new URL(baseURL);
  await devTools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize });
}

/** Another database of this origin takes all room that is left. */
async function fillUp(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const opening = indexedDB.open('other', 1);
    opening.addEventListener('upgradeneeded', () => opening.result.createObjectStore('blobs'));
    await new Promise((resolve) => opening.addEventListener('success', resolve));
    const store = (bytes: number) =>
      new Promise<boolean>((resolve) => {
        const noise = new Uint8Array(bytes);
        for (let at = 0; at < bytes; at += 65_536) {
          crypto.getRandomValues(noise.subarray(at, at + 65_536));
        }
        const writing = opening.result.transaction('blobs', 'readwrite');
        writing.objectStore('blobs').put(noise, crypto.randomUUID());
        writing.addEventListener('complete', () => resolve(true));
        writing.addEventListener('abort', () => resolve(false));
      });
    for (const bytes of [1e6, 1e5, 1e4, 1e3]) while (await store(bytes));
    opening.result.close();
  });
}

const usedBytes = (page: Page) =>
  page.evaluate(async () => (await navigator.storage.estimate()).usage ?? 0);

test('a browser that does not tell its quota runs full: said while all is still stored', async ({
  page,
  baseURL,
}) => {
  await quotaOf(page, baseURL!, 40e6);
  await openWithLogbook(page);
  // The reserve is laid by with the first change.
  await expect.poll(() => usedBytes(page)).toBeGreaterThan(24e6);
  expect((await page.evaluate(() => navigator.storage.estimate())).quota).toBeGreaterThan(1e9);
  await expect(notice(page)).toHaveCount(0);
  await expect(page.locator('.logbook-storage')).toContainText('24 MB more are kept in reserve');
  await fillUp(page);
  await wheels(page).filter({ hasText: 'front left' }).click();
  await page.locator('textarea').fill('rim is bent. '.repeat(300));
  await page.locator('[data-role="add-note"]').click();
  await expectSaid(notice(page), 'storage-low');
  // In storage, not only in the page.
  await page.reload();
  await expect(timeline(page)).toContainText('rim is bent');
  // Room again: with the next change the reserve is laid by anew.
  await page.evaluate(() => indexedDB.deleteDatabase('other'));
  await page.locator('textarea').fill('straightened');
  await page.locator('[data-role="add-note"]').click();
  await expect(timeline(page)).toContainText('straightened');
  await expect.poll(() => usedBytes(page)).toBeGreaterThan(24e6);
  await expect(notice(page)).toHaveCount(0);
});

test('a tablet with less room than the reserve takes: said at once, and all is stored', async ({
  page,
  baseURL,
}) => {
  await quotaOf(page, baseURL!, 20e6);
  await openWithLogbook(page);
  await expectSaid(notice(page), 'storage-low');
  await expect(page.locator('.logbook-storage')).not.toContainText('reserve');
  await page.reload();
  await expect(wheels(page)).toHaveCount(2);
});

test('films take nearly what one saved file holds: said while they still fit', async ({ page }) => {
  await page.addInitScript(() => {
    navigator.storage.estimate = async () => ({ usage: 3.6e9, quota: 13.6e9 });
  });
  await openWithLogbook(page);
  await expectSaid(notice(page), 'storage-large');
});

test('the database is cleared between two visits: said, and the app goes on', async ({ page }) => {
  await openWithLogbook(page);
  await page.goto('about:blank');
  await page.goto('/robots.txt');
  await page.evaluate(
    () =>
      new Promise((resolve) => {
        indexedDB.deleteDatabase('tiltsweep').addEventListener('success', resolve);
      }),
  );
  await page.goto('/#/logbook');
  await expectSaid(notice(page), 'storage-wiped');
  await bringIn(page, await archiveFile());
  await expect(wheels(page)).toHaveCount(2);
});

test('two tabs on one logbook: each sees what the other writes, and neither loses an entry', async ({
  page,
  context,
}) => {
  await openWithLogbook(page);
  const other = await context.newPage();
  await other.goto('/#/logbook');
  for (const tab of [page, other]) {
    await wheels(tab).filter({ hasText: 'front left' }).click();
    await expect(tab.locator('textarea')).toBeVisible();
  }
  await Promise.all(
    [page, other].map(async (tab, i) => {
      await tab.locator('textarea').fill(`note of tab ${i}`);
      await tab.locator('[data-role="add-note"]').click();
    }),
  );
  for (const tab of [page, other]) {
    const timeline = tab.locator('[data-role="timeline"]');
    await expect(timeline).toContainText('note of tab 0');
    await expect(timeline).toContainText('note of tab 1');
  }
});
