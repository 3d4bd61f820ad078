import { readFileSync } from 'node:fs';

import { AxeBuilder } from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';

import { archiveFile } from '../fakes/archiveFile.ts';
import { fileOf } from './support.ts';

/** Faults of storage, each caused here: what the person sees, and what is kept. */
const notice = (page: Page) => page.locator('[data-role="storage-notice"]');
const said = (page: Page) => page.locator('[data-role="archive-said"]');
const wheels = (page: Page) => page.locator('.logbook-line');

async function bringIn(page: Page, bytes: Uint8Array): Promise<void> {
  await page
    .locator('[data-role="bring-in"]')
    .setInputFiles(fileOf('logbook.zip', Buffer.from(bytes), 'application/zip'));
}

async function openWithLogbook(page: Page): Promise<void> {
  await page.goto('/#/logbook');
  await bringIn(page, await archiveFile());
  await expect(said(page)).toHaveAttribute('data-kind', 'merged');
  await expect(wheels(page)).toHaveCount(2);
}

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
  await expect(notice(page)).toHaveAttribute('data-code', 'storage-failed');
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
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('mock: full', 'QuotaExceededError');
    };
  });
  await page.locator('textarea').fill('rim is bent');
  await page.locator('[data-role="add-note"]').click();
  await expect(notice(page)).toHaveAttribute('data-code', 'storage-full');
  await expect(notice(page)).toContainText('Delete films');
  await expect(page.locator('[data-role="timeline"]')).toContainText('rim is bent');
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
  await expect(notice(page)).toHaveAttribute('data-code', 'storage-blocked');
  await bringIn(page, await archiveFile({ withFilm: false }));
  await expect(wheels(page)).toHaveCount(2);
});

test('storage is nearly full: said before it is', async ({ page }) => {
  await page.addInitScript(() => {
    navigator.storage.estimate = async () => ({ usage: 9.9e9, quota: 10e9 });
  });
  await page.goto('/#/logbook');
  await expect(notice(page)).toHaveAttribute('data-code', 'storage-low');
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
const timeline = (page: Page) => page.locator('[data-role="timeline"]');

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
  await expect(notice(page)).toHaveAttribute('data-code', 'storage-low');
  await expect(notice(page)).toContainText('Delete films');
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
  await expect(notice(page)).toHaveAttribute('data-code', 'storage-low');
  await expect(page.locator('.logbook-storage')).not.toContainText('reserve');
  await page.reload();
  await expect(wheels(page)).toHaveCount(2);
});

test('films take nearly what one saved file holds: said while they still fit', async ({ page }) => {
  await page.addInitScript(() => {
    navigator.storage.estimate = async () => ({ usage: 3.6e9, quota: 13.6e9 });
  });
  await page.goto('/#/logbook');
  await expect(notice(page)).toHaveAttribute('data-code', 'storage-large');
  await expect(notice(page)).toContainText('Save the logbook with its films');
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
  await expect(notice(page)).toHaveAttribute('data-code', 'storage-wiped');
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

test('a broken archive brings nothing in, and says so', async ({ page }) => {
  await page.goto('/#/logbook');
  const bytes = await archiveFile();
  const spoilt = bytes.slice();
  spoilt[Math.floor(bytes.length / 2)]! ^= 255;
  for (const broken of [spoilt, bytes.slice(0, -200), new Uint8Array(0)]) {
    await bringIn(page, broken);
    await expect(said(page)).toHaveAttribute('data-kind', 'refused');
    await expect(wheels(page)).toHaveCount(0);
  }
});

test('saved and brought in on an empty browser it is the same; names with markup stay text', async ({
  page,
  browser,
}, info) => {
  await openWithLogbook(page);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.locator('[data-role="save-with-films"]').click(),
  ]);
  const empty = await browser.newContext({ baseURL: info.project.use.baseURL! });
  const second = await empty.newPage();
  await second.goto('/#/logbook');
  await bringIn(second, readFileSync(await download.path()));
  await expect(wheels(second)).toHaveCount(2);
  expect(await wheels(second).allInnerTexts()).toEqual(await wheels(page).allInnerTexts());
  await expect(second.locator('.logbook-list')).toContainText('<b>minibus</b> rear');
  await expect(second.locator('.logbook-list b')).toHaveCount(0);
  await empty.close();
});

test('a logbook that was brought in is taken out again with "undo", its films too', async ({
  page,
}) => {
  await openWithLogbook(page);
  const films = page.locator('.logbook-storage').getByText('1 film');
  await expect(films).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(said(page)).toHaveAttribute('data-kind', 'undone');
  await expect(wheels(page)).toHaveCount(0);
  await page.reload();
  await expect(page.locator('main')).toContainText('Nothing is in the logbook yet');
  await expect(films).toHaveCount(0);
  // Brought in again it is all there, and what brings nothing new leaves that to be undone.
  await openWithLogbook(page);
  await bringIn(page, await archiveFile());
  await expect(said(page)).toContainText('Records that were here already');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(wheels(page)).toHaveCount(0);
});

test('an entry that was deleted comes back with "undo"', async ({ page }) => {
  await openWithLogbook(page);
  await wheels(page).filter({ hasText: 'front left' }).click();
  const rows = page.locator('[data-role="timeline"] > li');
  await expect(rows).toHaveCount(4);
  await rows.first().getByRole('button', { name: 'Delete' }).click();
  await expect(rows).toHaveCount(3);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(rows).toHaveCount(4);
});

test('axe finds nothing in the logbook, light or dark', async ({ page }) => {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await openWithLogbook(page).catch(() => page.goto('/#/logbook'));
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    await wheels(page).filter({ hasText: 'front left' }).click();
    await expect(page.locator('[data-role="timeline"]')).toBeVisible();
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
  }
});
