import { expect, test, type Page } from '@playwright/test';

import { cameraFilmPath, makeCameraFilm } from '../setup/cameraFilm.ts';
import { fakeCameraFlags } from '../setup/findChromium.ts';
import { launchWith } from '../setup/launchWith.ts';
import { en } from '../../src/screens/words/en/index.ts';
import { crashTab } from './faults/crashTab.ts';
import { expectRefused, expectSaid } from './faults/said.ts';
import { entriesOfLogbook, filmsOnShelf, piecesOfNotes } from './faults/storedRecords.ts';
import { inEmptyBrowser, savedLogbook } from './wholeJob/steps.ts';
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

async function withoutEncoder(page: Page): Promise<void> {
  await page.route('**/measure.worker-*.js', async (route) => {
    const response = await route.fetch();
    const script = await response.text();
    // With the server's own headers: an isolated page starts only workers that are isolated too.
    await route.fulfill({ response, body: `delete globalThis.VideoEncoder;${script}` });
  });
}

const notedDeg = async (page: Page) =>
  (await filmsOnShelf(page)).find(({ notes }) => notes)?.notes?.coveredDeg ?? 0;

/** A sweep without an encoder that has been measured so far, and then its tab is gone. */
async function tabDiesAt(tab: Page, coveredDeg: number): Promise<void> {
  await withoutEncoder(tab);
  await tab.goto('/');
  await startCamera(tab, FRONT_LEFT.setup);
  await expect(main(tab, 'sweeping')).toBeVisible();
  await expect.poll(() => notedDeg(tab), { timeout: 90_000 }).toBeGreaterThan(coveredDeg);
  await crashTab(tab);
}

/** The first screen says it, the logbook has it: read by its notes. */
async function takeUp(page: Page): Promise<void> {
  await page.goto('/');
  const said = page.locator('[data-role="broken-off"]');
  await expect(said.locator('.notice-cause')).toHaveText(en.shed.brokenOff);
  await said.getByRole('link', { name: en.logbook.toLogbook }).click();
  const left = page.locator('[data-role="unfinished-sweeps"]');
  await expect(left).toContainText(/\d+° of the turn measured, no film/);
  await left.getByRole('button').first().click();
}

test('the tab dies in mid-sweep without an encoder: what was measured is read in the next one', async ({
  page,
  context,
}) => {
  await tabDiesAt(page, 200);
  const next = await context.newPage();
  await takeUp(next);
  await expect(main(next, 'read', 'refused')).toBeVisible({ timeout: 30_000 });
  await expectSaid(role(next, 'notice'), 'sweep-taken-up');
  await expectRefused(next, 'turn-incomplete');
  await expect.poll(async () => (await entriesOfLogbook(next)).length).toBe(1);
  const [entry] = await entriesOfLogbook(next);
  expect(entry).toMatchObject({ kind: 'sweep', source: 'camera', filmId: null });
  expect(entry!.reading!.turn!.coveredDeg).toBeGreaterThan(200);
  await expect.poll(() => piecesOfNotes(next)).toBe(0);
  expect(await filmsOnShelf(next)).toEqual([]);
});

test('the reading could not be stored, and the tab dies: it is read again from the notes', async ({
  page,
  context,
}) => {
  await withoutEncoder(page);
  await page.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (value: unknown, key?: IDBValidKey) {
      if (this.name !== 'entries') return put.call(this, value, key);
      throw new DOMException('mock: the disk is full', 'QuotaExceededError');
    };
  });
  await page.goto('/');
  await startCamera(page, FRONT_LEFT.setup);
  await expect(main(page, 'read', 'ok')).toBeVisible({ timeout: 90_000 });
  await expectSaid(page.locator('[data-role="storage-notice"]'), 'storage-full');
  await crashTab(page);

  const next = await context.newPage();
  await takeUp(next);
  await expect(main(next, 'read', 'ok')).toBeVisible({ timeout: 30_000 });
  await expectSaid(role(next, 'notice'), 'sweep-taken-up');
  await expect.poll(async () => (await entriesOfLogbook(next)).length).toBe(1);
  const { amountGmm, heavySpotDeg } = (await entriesOfLogbook(next))[0]!.reading!.unbalance!;
  const { truth, setup } = FRONT_LEFT;
  // As from the camera itself: within what is asked of a film, 2 g at the weight radius and 5°.
  const offG = (amountGmm - truth.unbalance.amountGmm) / setup.wheel.weightRadiusMm;
  expect(Math.abs(offG)).toBeLessThan(2);
  expect(Math.abs(heavySpotDeg - truth.unbalance.heavySpotDeg)).toBeLessThan(5);
  await expect.poll(() => piecesOfNotes(next)).toBe(0);
});

test('what was measured of a broken sweep goes along in a saved logbook and is read from it elsewhere', async ({
  page,
  context,
  browser,
}) => {
  await tabDiesAt(page, 60);
  const next = await context.newPage();
  const archive = await savedLogbook(next, 'save-with-films');
  await inEmptyBrowser(browser, archive, async (elsewhere) => {
    await takeUp(elsewhere);
    await expect(main(elsewhere, 'read', 'refused')).toBeVisible({ timeout: 30_000 });
    await expect.poll(async () => (await entriesOfLogbook(elsewhere)).length).toBe(1);
    const [entry] = await entriesOfLogbook(elsewhere);
    expect(entry!.reading!.turn!.coveredDeg).toBeGreaterThan(60);
  });
});

test('a sweep to its reading: the film is kept with it', async ({ page }) => {
  await page.goto('/');
  await startCamera(page, FRONT_LEFT.setup);
  await expect(main(page, 'read', 'ok')).toBeVisible({ timeout: 90_000 });
  // Linked once the reading lies in storage, a moment after it is shown; its notes go in that step.
  await expect.poll(async () => (await filmsOnShelf(page))[0]?.entryId ?? null).not.toBeNull();
  const films = await filmsOnShelf(page);
  expect(films).toHaveLength(1);
  expect(films[0]!.sizeBytes).toBeGreaterThan(1_000_000);
  expect(await piecesOfNotes(page)).toBe(0);
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

test('a sweep stopped on purpose: what was recorded stays, and nobody is told that it broke off', async ({
  page,
}) => {
  await sweepForSeconds(page, 3);
  await role(page, 'stop').click();
  await expect.poll(async () => (await filmsOnShelf(page))[0]?.stoppedAt).toBeDefined();
  await page.goto('/#/');
  await expect(main(page, 'choosing')).toBeVisible();
  await expect(page.locator('[data-role="broken-off"]')).toHaveCount(0);
  await page.goto('/#/logbook');
  await expect(page.locator('[data-role="unfinished-sweeps"] li')).toHaveCount(1);
});

test('the worker dies in mid-sweep: its film stays, and a new one begins', async ({ page }) => {
  await sweepForSeconds(page, 5);
  const [worker] = page.workers();
  await worker!.evaluate(() => {
    setTimeout(() => {
      throw new Error('out of memory');
    });
  });
  await expectSaid(role(page, 'notice'), 'worker-restarted');
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
  await expect.poll(async () => (await filmsOnShelf(page))[0]?.entryId ?? null).not.toBeNull();
  const [film] = await filmsOnShelf(page);
  expect(film).toMatchObject({ pieceCount: 3 });
});

test('a browser that cannot record: the reading is kept without a film, and that is said', async ({
  page,
}) => {
  await withoutEncoder(page);
  await page.goto('/');
  await startCamera(page, FRONT_LEFT.setup);
  await expect(main(page, 'read', 'ok')).toBeVisible({ timeout: 90_000 });
  await expectSaid(role(page, 'notice'), 'film-not-kept');
  // What was noted of it while it ran has gone, now that its reading is kept.
  await expect.poll(() => filmsOnShelf(page)).toEqual([]);
  expect(await piecesOfNotes(page)).toBe(0);
});
