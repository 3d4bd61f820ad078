import { expect, test, type Page } from '@playwright/test';

import { en } from '../../src/screens/words/en/index.ts';
import { fakeCameraFlags } from '../setup/findChromium.ts';
import { launchWith } from '../setup/launchWith.ts';
import { relayCamera } from './faults/cameraRelay.ts';
import { openWithLogbook } from './faults/logbookPage.ts';

/** Whoever is asked for the camera has been told what for: before the browser asks, and only then. */
test.use({ launchOptions: launchWith(fakeCameraFlags()) });

/** The made-up camera is allowed without asking; a browser as people have it says that it will ask. */
async function browserThatAsks(page: Page, state: PermissionState | 'untold'): Promise<void> {
  await page.addInitScript((state) => {
    Permissions.prototype.query = async () => {
      if (state === 'untold') throw new TypeError('made up: no such permission');
      return { state } as PermissionStatus;
    };
  }, state);
}

const explained = (page: Page) => page.locator('[data-role="camera-explained"]');
const sighting = (page: Page) => page.locator('main[data-phase="sighting"]');
const SIGHT = '/#/wheel/w1/sight';

for (const state of ['prompt', 'untold'] as const) {
  test(`at the sight it is told first, and not again (${state})`, async ({ page }) => {
    const relay = await relayCamera(page);
    await browserThatAsks(page, state);
    await openWithLogbook(page);
    await page.goto(SIGHT);
    await expect(explained(page)).toContainText(en.sight.cameraWhy);
    await expect(explained(page)).toContainText(en.sight.cameraAsk);
    expect(await relay.openCameras()).toBe(0);
    await explained(page).getByRole('button', { name: en.sight.startCamera }).click();
    await expect(sighting(page)).toBeVisible();
    expect(await relay.openCameras()).toBe(1);
    await page.reload();
    await expect(sighting(page)).toBeVisible();
    await expect(explained(page)).toHaveCount(0);
  });
}

test('a camera that is allowed already is opened at once', async ({ page }) => {
  await browserThatAsks(page, 'granted');
  await openWithLogbook(page);
  await page.goto(SIGHT);
  await expect(sighting(page)).toBeVisible();
});

test('the form of a sweep by hand says it above its button', async ({ page }) => {
  await browserThatAsks(page, 'prompt');
  await page.goto('/');
  await page.locator('[data-role="open-camera"]').click();
  await expect(page.locator('[data-role="camera-why"]')).toHaveText(
    `${en.sight.cameraWhy} ${en.sight.cameraAsk}`,
  );
});
