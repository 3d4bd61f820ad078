import { expect, test, type Page } from '@playwright/test';

import { cameraFilmPath, makeCameraFilm } from '../setup/cameraFilm.ts';
import { fakeCameraFlags } from '../setup/findChromium.ts';
import { launchWith } from '../setup/launchWith.ts';
import { filmsOnShelf } from './faults/storedRecords.ts';
import { FRONT_LEFT, main, role, startCamera } from './support.ts';

/** Faults while a sweep is recorded, each caused here: what is on the film shelf afterwards. */
test.use({ launchOptions: launchWith(fakeCameraFlags(cameraFilmPath(FRONT_LEFT.filmPath))) });

test.beforeAll(async ({ browser }, info) => {
  test.setTimeout(180_000);
  await makeCameraFilm(browser, info.project.use.baseURL!, FRONT_LEFT.filmPath);
});

const piecesOnShelf = async (page: Page) => (await filmsOnShelf(page))[0]?.pieceCount ?? 0;

async function sweepForSeconds(page: Page, pieces: number): Promise<void> {
  await page.goto('/');
  await startCamera(page, FRONT_LEFT.setup);
  await expect(main(page, 'sweeping')).toBeVisible();
  await expect.poll(() => piecesOnShelf(page), { timeout: 40_000 }).toBeGreaterThan(pieces);
}

test('a sweep to its reading: the film is kept with it', async ({ page }) => {
  await page.goto('/');
  await startCamera(page, FRONT_LEFT.setup);
  await expect(main(page, 'read', 'ok')).toBeVisible({ timeout: 90_000 });
  const films = await filmsOnShelf(page);
  expect(films).toHaveLength(1);
  expect(films[0]!.entryId).not.toBeNull();
  expect(films[0]!.sizeBytes).toBeGreaterThan(1_000_000);
});

test('the page is reloaded in mid-sweep: what was recorded stays', async ({ page }) => {
  await sweepForSeconds(page, 5);
  await page.reload();
  const [film, ...more] = await filmsOnShelf(page);
  expect(more).toEqual([]);
  expect(film!.entryId).toBeNull();
  expect(film!.pieceCount).toBeGreaterThan(5);
  await page.goto('/#/logbook');
  await page.locator('[data-role="unfinished-sweeps"]').getByRole('button').first().click();
  // Some seconds of a turn: followed, and refused as too short.
  await expect(main(page, 'read', 'refused')).toBeVisible({ timeout: 60_000 });
  await expect.poll(async () => (await filmsOnShelf(page))[0]!.entryId).not.toBeNull();
});

test('the worker dies in mid-sweep: its film stays, and a new one begins', async ({ page }) => {
  await sweepForSeconds(page, 5);
  const [worker] = page.workers();
  await worker!.evaluate(() => {
    setTimeout(() => {
      throw new Error('out of memory');
    });
  });
  await expect(role(page, 'notice')).toHaveAttribute('data-code', 'worker-restarted');
  await expect.poll(async () => (await filmsOnShelf(page)).length).toBe(2);
  const broken = (await filmsOnShelf(page)).filter(({ pieceCount }) => pieceCount > 5);
  expect(broken.length).toBeGreaterThan(0);
});

test('storage fills up in mid-sweep: the sweep is measured to its end', async ({ page }) => {
  await page.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    let pieces = 0;
    IDBObjectStore.prototype.put = function (value: unknown, key?: IDBValidKey) {
      if (this.name === 'filmPieces' && (pieces += 1) > 3) {
        throw new DOMException('mock: the disk is full', 'QuotaExceededError');
      }
      return put.call(this, value, key);
    };
  });
  await page.goto('/');
  await startCamera(page, FRONT_LEFT.setup);
  await expect(main(page, 'read', 'ok')).toBeVisible({ timeout: 90_000 });
  const [film] = await filmsOnShelf(page);
  expect(film).toMatchObject({ pieceCount: 3 });
  expect(film!.entryId).not.toBeNull();
});

test('a browser that cannot record: the reading is kept without a film, and that is said', async ({
  page,
}) => {
  await page.route('**/measure.worker-*.js', async (route) => {
    const response = await route.fetch();
    const script = await response.text();
    // With the server's own headers: an isolated page starts only workers that are isolated too.
    await route.fulfill({ response, body: `delete globalThis.VideoEncoder;${script}` });
  });
  await page.goto('/');
  await startCamera(page, FRONT_LEFT.setup);
  await expect(main(page, 'read', 'ok')).toBeVisible({ timeout: 90_000 });
  await expect(role(page, 'notice')).toHaveAttribute('data-code', 'film-not-kept');
  expect(await filmsOnShelf(page)).toEqual([]);
});
