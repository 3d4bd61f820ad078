import { expect, test, type Page } from '@playwright/test';

import { cameraFilmPath, makeCameraFilm } from '../setup/cameraFilm.ts';
import { fakeCameraFlags } from '../setup/findChromium.ts';
import { launchWith } from '../setup/launchWith.ts';
import { relayCamera, type CameraRelay } from './faults/cameraRelay.ts';
import { hidePage, showPage } from './faults/hiddenPage.ts';
import { sleepFor } from './faults/sleepingMachine.ts';
import { entriesOfLogbook, filmsOnShelf } from './faults/storedRecords.ts';
import { expectProblem, FRONT_LEFT, main, role, startCamera } from './support.ts';

/**
 * Faults of the camera in mid-sweep, each caused here in the camera's own stream: what the person
 * is told, that what was recorded is read and kept, and that the page goes on without a reload.
 */
test.use({ launchOptions: launchWith(fakeCameraFlags(cameraFilmPath(FRONT_LEFT.filmPath))) });

test.beforeAll(async ({ browser }, info) => {
  test.setTimeout(180_000);
  await makeCameraFilm(browser, info.project.use.baseURL!, FRONT_LEFT.filmPath);
});

/** Pieces of film, one a second: by then line and edge are found and some of the turn is followed. */
const SOME_PIECES = 6;
/** Until a dead camera is found out, and what there is has been read. */
const FOUND_OUT = { timeout: 30_000 };
const READING = { timeout: 90_000 };

async function sweepBy(page: Page): Promise<CameraRelay> {
  const relay = await relayCamera(page);
  await page.goto('/');
  await startCamera(page, FRONT_LEFT.setup);
  await expect(main(page, 'sweeping')).toBeVisible();
  const pieces = async () => (await filmsOnShelf(page))[0]?.pieceCount ?? 0;
  await expect.poll(pieces, { timeout: 40_000 }).toBeGreaterThanOrEqual(SOME_PIECES);
  return relay;
}

/** The sweep has ended: said why and what to do, read, kept, and the camera is let go. */
async function expectReadAfter(page: Page, relay: CameraRelay, code: string): Promise<void> {
  await expect(main(page, 'read', 'refused')).toBeVisible(FOUND_OUT);
  const notice = role(page, 'notice');
  await expect(notice).toHaveAttribute('data-code', code);
  await expect(notice.locator('.notice-cause')).not.toBeEmpty();
  await expect(notice.locator('.notice-remedy')).not.toBeEmpty();
  // That much of a turn was followed says that what was recorded has been read.
  await expect(page.locator('[data-code="turn-incomplete"]')).toBeVisible();
  await expect.poll(async () => (await entriesOfLogbook(page)).length).toBe(1);
  const [entry] = await entriesOfLogbook(page);
  expect(entry).toMatchObject({ kind: 'sweep', source: 'camera' });
  expect(entry!.filmId).not.toBeNull();
  expect(await relay.openCameras()).toBe(0);
}

/** Without a reload the same page sweeps again. */
async function expectSweepsAgain(page: Page, relay: CameraRelay): Promise<void> {
  await page.evaluate(() => (location.hash = '#/'));
  await startCamera(page, FRONT_LEFT.setup);
  await expect(main(page, 'sweeping')).toBeVisible();
  expect(await relay.openCameras()).toBe(1);
  await role(page, 'stop').click();
  await expect(main(page, 'choosing')).toBeVisible();
  await expect.poll(() => relay.openCameras()).toBe(0);
}

test('unplugged: what was recorded is read, and the next sweep needs no reload', async ({
  page,
}) => {
  const relay = await sweepBy(page);
  await relay.unplug();
  await expectReadAfter(page, relay, 'camera-unplugged');
  await expectSweepsAgain(page, relay);
});

test('silent: found out after some seconds, and read', async ({ page }) => {
  const relay = await sweepBy(page);
  await relay.silence();
  await expectReadAfter(page, relay, 'camera-silent');
  await relay.flow();
  await expectSweepsAgain(page, relay);
});

test('frozen: the same picture over and over is no wheel that stands still', async ({ page }) => {
  const relay = await sweepBy(page);
  await relay.freeze();
  await expectReadAfter(page, relay, 'camera-frozen');
  await relay.flow();
  await expectSweepsAgain(page, relay);
});

test('another size, as of a turned tablet: the sweep is read up to there', async ({ page }) => {
  const relay = await sweepBy(page);
  await relay.resize(720, 1280);
  await expectReadAfter(page, relay, 'picture-changed');
});

test('another lens after a sleep: the sweep is read up to there', async ({ page }) => {
  const relay = await sweepBy(page);
  await relay.silence();
  await hidePage(page);
  // Longer than a camera that is seen may be silent.
  await page.waitForTimeout(4000);
  await expect(main(page, 'sweeping')).toBeVisible();
  await relay.setLens({ deviceId: 'the wide one' });
  await showPage(page);
  await relay.flow();
  await expectReadAfter(page, relay, 'lens-changed');
});

test('the page is hidden and comes back: waited for, said, and the sweep goes on', async ({
  page,
}) => {
  const relay = await sweepBy(page);
  await relay.silence();
  await hidePage(page);
  await page.waitForTimeout(6000);
  await expect(main(page, 'sweeping')).toBeVisible();
  await showPage(page);
  await relay.flow();
  await expect(role(page, 'notice')).toHaveAttribute('data-code', 'page-was-hidden');
  await expect(main(page, 'sweeping')).toBeVisible();
  await page.waitForTimeout(2000);
  await role(page, 'finish-sweep').click();
  await expect(main(page, 'read')).toBeVisible(FOUND_OUT);
  await expect.poll(async () => (await entriesOfLogbook(page)).length).toBe(1);
});

test('the machine sleeps in mid-sweep: said, and the sweep goes on', async ({ page, browser }) => {
  await sweepBy(page);
  await sleepFor(browser, 6000);
  await expect(role(page, 'notice')).toHaveAttribute('data-code', 'page-was-hidden');
  await expect(main(page, 'sweeping')).toBeVisible();
  await role(page, 'finish-sweep').click();
  await expect(main(page, 'read')).toBeVisible(FOUND_OUT);
  await expect.poll(async () => (await entriesOfLogbook(page)).length).toBe(1);
});

test('a third of the pictures from mid-sweep on, as in low light: read as always', async ({
  page,
}) => {
  const relay = await sweepBy(page);
  await relay.thinOut(3);
  await expect(main(page, 'read', 'ok')).toBeVisible(READING);
  await expect(role(page, 'notice')).toHaveCount(0);
});

test('its clock is set, forth and back: read as always', async ({ page }) => {
  const relay = await sweepBy(page);
  await relay.setClock(3600);
  await page.waitForTimeout(4000);
  await relay.setClock(-7200);
  await expect(main(page, 'read', 'ok')).toBeVisible(READING);
  await expect(role(page, 'notice')).toHaveCount(0);
});

test('held by another program: said, and once it is free the same page sweeps', async ({
  page,
}) => {
  const relay = await relayCamera(page);
  await page.addInitScript(() => {
    const devices = navigator.mediaDevices;
    const ask = devices.getUserMedia.bind(devices);
    let isBusy = true;
    devices.getUserMedia = async (constraints) => {
      if (isBusy) throw new DOMException('Could not start video source', 'NotReadableError');
      return ask(constraints);
    };
    Object.assign(globalThis, { freeCamera: () => (isBusy = false) });
  });
  await page.goto('/');
  await startCamera(page, FRONT_LEFT.setup);
  await expectProblem(page, 'camera-busy', /in use/);
  await page.evaluate(() => (globalThis as unknown as { freeCamera(): void }).freeCamera());
  await expectSweepsAgain(page, relay);
});
