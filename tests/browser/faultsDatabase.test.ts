import { expect, test, type Page } from '@playwright/test';

import { archiveFile } from '../fakes/archiveFile.ts';
import { expectSaid } from './faults/said.ts';
import { entriesOfLogbook } from './faults/storedRecords.ts';
import { fileOf } from './support.ts';

/** Faults of the browser's database under an open page: taken away, held by another tab, not promised. */
const notice = (page: Page) => page.locator('[data-role="storage-notice"]');
const wheels = (page: Page) => page.locator('.logbook-line');

async function bringIn(page: Page, { withFilm = true } = {}): Promise<void> {
  const bytes = Buffer.from(await archiveFile({ withFilm }));
  await page
    .locator('[data-role="bring-in"]')
    .setInputFiles(fileOf('logbook.zip', bytes, 'application/zip'));
  await expect(page.locator('[data-role="archive-said"]')).toHaveAttribute('data-kind', 'merged');
}

test('the browser is asked to keep the logbook as soon as there is something in it', async ({
  page,
}) => {
  await page.addInitScript(() => {
    let asked = 0;
    StorageManager.prototype.persist = async () => (asked += 1) > 0;
    Object.assign(globalThis, { timesAsked: () => asked });
  });
  const timesAsked = () =>
    page.evaluate(() => (globalThis as unknown as { timesAsked(): number }).timesAsked());
  await page.goto('/#/logbook');
  await expect(page.locator('[data-role="bring-in"]')).toBeAttached();
  // With nothing to keep there is nothing to ask for.
  expect(await timesAsked()).toBe(0);
  await bringIn(page);
  await expect.poll(timesAsked).toBeGreaterThan(0);
});

test('the database is cleared under an open page: said, and what is made from then on is kept', async ({
  page,
  context,
  baseURL,
}) => {
  await page.goto('/#/logbook');
  await bringIn(page);
  await expect(wheels(page)).toHaveCount(2);
  const session = await context.newCDPSession(page);
  await session.send('Storage.clearDataForOrigin', {
    origin: new URL(baseURL!).origin,
    storageTypes: 'indexeddb',
  });
  // The next look at the logbook finds it gone.
  await page.evaluate(() => (location.hash = '#/'));
  await page.evaluate(() => (location.hash = '#/logbook'));
  await expectSaid(notice(page), 'storage-wiped');
  await bringIn(page);
  await expect(wheels(page)).toHaveCount(2);
  expect(await entriesOfLogbook(page)).toHaveLength(6);
});

test('another tab holds an older database open: said, and stored once it lets go', async ({
  page,
  context,
}) => {
  const other = await context.newPage();
  await other.goto('/robots.txt');
  await other.evaluate(holdOlderOpen);
  await page.goto('/#/logbook');
  // A database that does not open within eight seconds is taken as one that will not.
  await expectSaid(notice(page), 'storage-blocked', { timeout: 20_000 });
  // Films are not held in the page: a file without them.
  await bringIn(page, { withFilm: false });
  await expect(wheels(page)).toHaveCount(2);
  await other.close();
  await notice(page).getByRole('button').click();
  await expect(notice(page)).toHaveCount(0, { timeout: 20_000 });
  await page.reload();
  await expect(wheels(page)).toHaveCount(2);
});

test('a database of a newer program: said, left as it is, and what is made is kept in the page', async ({
  page,
}) => {
  await page.goto('/robots.txt');
  await page.evaluate(writeNewer);
  await page.goto('/#/logbook');
  await expectSaid(notice(page), 'storage-newer');
  await bringIn(page, { withFilm: false });
  await expect(wheels(page)).toHaveCount(2);
  expect(await page.evaluate(whatIsNewer)).toEqual({ version: 99, kept: 'of a newer program' });
});

/** Run in the page: a database of a version that this program does not know. */
function writeNewer(): Promise<void> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open('tiltsweep', 99);
    opening.addEventListener('upgradeneeded', () => {
      opening.result.createObjectStore('later').put('of a newer program', 'kept');
    });
    opening.addEventListener('error', () => reject(opening.error));
    opening.addEventListener('success', () => {
      opening.result.close();
      resolve();
    });
  });
}

function whatIsNewer(): Promise<{ version: number; kept: unknown }> {
  return new Promise((resolve) => {
    const opening = indexedDB.open('tiltsweep');
    opening.addEventListener('success', () => {
      const { version } = opening.result;
      const asked = opening.result.transaction('later').objectStore('later').get('kept');
      asked.addEventListener('success', () => {
        opening.result.close();
        resolve({ version, kept: asked.result });
      });
    });
  });
}

/** Runs in the page: version 1 of the database, which is never closed. */
function holdOlderOpen(): Promise<void> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open('tiltsweep', 1);
    opening.addEventListener('upgradeneeded', () => {
      const { result } = opening;
      result.createObjectStore('stand');
      result.createObjectStore('wheels', { keyPath: 'id' });
      const entries = result.createObjectStore('entries', { keyPath: 'id' });
      entries.createIndex('byWheelAndTime', ['wheelId', 'at']);
      result.createObjectStore('traces');
    });
    opening.addEventListener('error', () => reject(opening.error));
    opening.addEventListener('success', () => {
      Object.assign(globalThis, { held: opening.result });
      resolve();
    });
  });
}
