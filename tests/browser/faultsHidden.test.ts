import { expect, type Page } from '@playwright/test';

import { cameraFilmPath, makeCameraFilm } from '../setup/cameraFilm.ts';
import { fakeCameraFlags } from '../setup/findChromium.ts';
import { aim, sighting } from './faults/aimedSight.ts';
import { expectReadAfter, expectSweepsAgain, FOUND_OUT, sweepBy } from './faults/cameraSweep.ts';
import { hideableTest, hidePage } from './faults/hideablePage.ts';
import { expectGoesOn, expectRefused, expectSaid } from './faults/said.ts';
import { entriesOfLogbook, filmsOnShelf } from './faults/storedRecords.ts';
import { chooseFiles, cutFilmFile, FRONT_LEFT, frontLeftSetupFile, main, role } from './support.ts';

/**
 * Another tab before the page, truly: a computer's camera goes on meanwhile, a tablet's stops, which
 * is the test's own part. After it nothing needs a reload.
 */
const test = hideableTest(fakeCameraFlags(cameraFilmPath(FRONT_LEFT.filmPath)));

test.beforeAll(async ({ browser }, info) => {
  test.setTimeout(180_000);
  await makeCameraFilm(browser, info.project.use.baseURL!, FRONT_LEFT.filmPath);
});

/** Longer than a camera that is seen may be silent. */
const AWAY_MS = 5000;
const BACK = { timeout: 20_000 };

const piecesOnShelf = async (page: Page) => (await filmsOnShelf(page))[0]?.pieceCount ?? 0;

async function expectReadWhenEnded(page: Page): Promise<void> {
  await role(page, 'finish-sweep').click();
  await expect(main(page, 'read')).toBeVisible(FOUND_OUT);
  await expect.poll(async () => (await entriesOfLogbook(page)).length).toBe(1);
}

test('a camera that goes on: what nobody sees is measured and recorded as well', async ({
  page,
  baseURL,
}) => {
  await sweepBy(page, baseURL);
  const show = await hidePage(page);
  const before = await piecesOnShelf(page);
  await expect.poll(() => piecesOnShelf(page), BACK).toBeGreaterThan(before + 2);
  await show();
  await expect(main(page, 'sweeping')).toBeVisible();
  await expect(role(page, 'notice')).toHaveCount(0);
  await expectReadWhenEnded(page);
});

test('a camera that stops: waited for, said, and the sweep goes on', async ({ page, baseURL }) => {
  const relay = await sweepBy(page, baseURL);
  await relay.silence();
  const show = await hidePage(page);
  await page.waitForTimeout(AWAY_MS);
  await show();
  await relay.flow();
  await expectSaid(role(page, 'notice'), 'page-was-hidden', BACK);
  await expect(main(page, 'sweeping')).toBeVisible();
  await expectReadWhenEnded(page);
});

test('another lens after that: the sweep is read up to there', async ({ page, baseURL }) => {
  const relay = await sweepBy(page, baseURL);
  await relay.silence();
  const show = await hidePage(page);
  await page.waitForTimeout(AWAY_MS);
  await expect(main(page, 'sweeping')).toBeAttached();
  await relay.setLens({ deviceId: 'the wide one' });
  await show();
  await relay.flow();
  await expectReadAfter(page, relay, 'lens-changed');
  await expectSweepsAgain(page, relay);
});

test('before the sweep: waited for, and goes on by itself', async ({ page, baseURL }) => {
  const relay = await aim(page, baseURL);
  await relay.silence();
  const show = await hidePage(page);
  await page.waitForTimeout(AWAY_MS);
  await show();
  await relay.flow();
  await expectSaid(role(page, 'notice'), 'page-was-hidden', BACK);
  await expect(sighting(page)).toBeVisible();
  expect(await entriesOfLogbook(page)).toHaveLength(6);
});

/** A worker without a decoder: the page plays the film instead. */
async function withoutDecoder(page: Page): Promise<void> {
  await page.route('**/measure.worker-*.js', async (route) => {
    const response = await route.fetch();
    const body = `delete globalThis.VideoDecoder;${await response.text()}`;
    await route.fulfill({ response, body });
  });
}

test('a film that is played waits until it is seen again, and goes on', async ({
  page,
  baseURL,
}) => {
  await withoutDecoder(page);
  await page.goto(baseURL!);
  // Whole, half a minute long: a slow machine takes seconds to put a tab before it.
  await chooseFiles(page, [FRONT_LEFT.filmPath, FRONT_LEFT.setupPath]);
  const bar = page.locator('.progress-line progress');
  const share = () => bar.evaluate((element) => (element as HTMLProgressElement).value);
  await expect.poll(share, FOUND_OUT).toBeGreaterThan(0);
  const show = await hidePage(page);
  // The picture that was on its way is still measured.
  await page.waitForTimeout(AWAY_MS);
  const settled = await share();
  await page.waitForTimeout(AWAY_MS);
  expect(await share()).toBe(settled);
  await show();
  await expect.poll(share, FOUND_OUT).toBeGreaterThan(settled);
});

test('a film that is played and breaks off is read up to there', async ({ page, baseURL }) => {
  await withoutDecoder(page);
  await page.goto(baseURL!);
  await chooseFiles(page, [cutFilmFile(), frontLeftSetupFile()]);
  await expect(main(page, 'read', 'refused')).toBeVisible({ timeout: 60_000 });
  await expectRefused(page, 'turn-incomplete');
  await expectSaid(role(page, 'notice'), 'film-cut-off');
  await expect.poll(async () => (await entriesOfLogbook(page)).length).toBe(1);
  await expectGoesOn(page);
});
