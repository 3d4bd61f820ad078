import { expect, test, type Page } from '@playwright/test';

import { fakeCameraFlags } from '../setup/findChromium.ts';
import { launchWith } from '../setup/launchWith.ts';
import { aim } from './faults/aimedSight.ts';
import { relayCamera } from './faults/cameraRelay.ts';
import { FRONT_LEFT, main, startCamera } from './support.ts';

/** The camera's light is on only while there is a reason for it: whoever leaves turns it off. */
test.use({ launchOptions: launchWith(fakeCameraFlags()) });

const leave = (page: Page, hash: string) => page.evaluate((hash) => (location.hash = hash), hash);

test('off when the sight is left, on when it is come back to, off by "back"', async ({ page }) => {
  const relay = await aim(page);
  expect(await relay.openCameras()).toBe(1);
  await leave(page, '#/logbook');
  await expect.poll(() => relay.openCameras()).toBe(0);
  await page.goBack();
  await expect.poll(() => relay.openCameras()).toBe(1);
  await page.goBack();
  await expect.poll(() => relay.openCameras()).toBe(0);
});

test('off when a sweep is left in its middle', async ({ page }) => {
  const relay = await relayCamera(page);
  await page.goto('/');
  await startCamera(page, FRONT_LEFT.setup);
  await expect(main(page, 'sweeping')).toBeVisible();
  await expect.poll(() => relay.openCameras()).toBe(1);
  await leave(page, '#/settings');
  await expect.poll(() => relay.openCameras()).toBe(0);
});

test('off at once when it opens after the person has gone', async ({ page }) => {
  const relay = await relayCamera(page);
  await page.addInitScript(() => {
    const devices = navigator.mediaDevices;
    const ask = devices.getUserMedia.bind(devices);
    const asked = { waiting: 0, answered: 0 };
    let answer: () => void = () => undefined;
    const mayOpen = new Promise<void>((resolve) => (answer = resolve));
    devices.getUserMedia = async (constraints) => {
      asked.waiting += 1;
      await mayOpen;
      const stream = await ask(constraints);
      asked.answered += 1;
      return stream;
    };
    Object.assign(globalThis, { asked, answer });
  });
  const asked = () =>
    page.evaluate(
      () => (globalThis as unknown as { asked: Record<'waiting' | 'answered', number> }).asked,
    );
  await page.goto('/');
  await startCamera(page, FRONT_LEFT.setup);
  await expect.poll(async () => (await asked()).waiting).toBe(1);
  await leave(page, '#/logbook');
  await expect(page.locator('[data-role="bring-in"]')).toBeAttached();
  await page.evaluate(() => (globalThis as unknown as { answer(): void }).answer());
  await expect.poll(async () => (await asked()).answered).toBe(1);
  await expect.poll(() => relay.openCameras()).toBe(0);
});
