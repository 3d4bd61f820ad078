import { expect, test } from '@playwright/test';

import { cameraFilmPath, makeCameraFilm } from '../setup/cameraFilm.ts';
import { fakeCameraFlags } from '../setup/findChromium.ts';
import { launchWith } from '../setup/launchWith.ts';
import { relayCamera } from './faults/cameraRelay.ts';
import { expectReadAfter, expectSweepsAgain, FOUND_OUT, sweepBy } from './faults/cameraSweep.ts';
import { expectSaid } from './faults/said.ts';
import { sleepFor } from './faults/sleepingMachine.ts';
import { entriesOfLogbook } from './faults/storedRecords.ts';
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

const READING = { timeout: 90_000 };

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
  await expectSweepsAgain(page, relay);
});

test('the machine sleeps in mid-sweep: said, and the sweep goes on', async ({ page, browser }) => {
  await sweepBy(page);
  await sleepFor(browser, 6000);
  await expectSaid(role(page, 'notice'), 'page-was-hidden');
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
  await expectProblem(page, 'camera-busy');
  await page.evaluate(() => (globalThis as unknown as { freeCamera(): void }).freeCamera());
  await expectSweepsAgain(page, relay);
});
