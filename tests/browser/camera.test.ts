import { readFileSync } from 'node:fs';

import { expect, test } from '@playwright/test';

import type { Reading } from '../../src/contract/reading.ts';
import { cameraFilmPath, makeCameraFilm } from '../setup/cameraFilm.ts';
import { fakeCameraFlags } from '../setup/findChromium.ts';
import { launchWith } from '../setup/launchWith.ts';
import { scoreReading } from '../tools/score.ts';
import { foreignRequests, FRONT_LEFT, main, role, startCamera } from './support.ts';

/** A made-up camera that plays the built-in sweep from its beginning. */
test.use({ launchOptions: launchWith(fakeCameraFlags(cameraFilmPath(FRONT_LEFT.filmPath))) });

test.beforeAll(async ({ browser }, info) => {
  test.setTimeout(180_000);
  const baseUrl = info.project.use.baseURL;
  if (!baseUrl) throw new Error('no base address');
  await makeCameraFilm(browser, baseUrl, FRONT_LEFT.filmPath);
});

/** Without the tap: a person before a live picture has made none, the program finds the edge. */
const SETUP = FRONT_LEFT.setup;

test('a live sweep ends by itself in a reading within the bounds', async ({ page }) => {
  const foreign = foreignRequests(page);
  await page.goto('/');
  await startCamera(page, SETUP);
  await expect(main(page, 'sweeping')).toBeVisible();
  // Half a minute of film, and the fit.
  await expect(main(page, 'read', 'ok')).toBeVisible({ timeout: 90_000 });
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    role(page, 'download-reading').click(),
  ]);
  const reading = JSON.parse(readFileSync(await download.path(), 'utf8')) as Reading;
  const run = { weightRadiusMm: SETUP.wheel.weightRadiusMm, seconds: 1, frames: null };
  const score = scoreReading('live', reading, FRONT_LEFT.truth, run);
  console.log(`live: ${JSON.stringify(score)}`);
  expect(score, JSON.stringify(score)).toMatchObject({ status: 'ok', withinBounds: true });
  expect(foreign).toEqual([]);
});

for (const [path, missing] of [
  ['pictures of a playing video', ['MediaStreamTrackProcessor']],
  ['bitmaps of a playing video', ['MediaStreamTrackProcessor', 'VideoFrame']],
] as const) {
  test(`a browser with only ${path} measures too`, async ({ page }) => {
    await page.addInitScript((names: readonly string[]) => {
      for (const name of names) Reflect.deleteProperty(globalThis, name);
    }, missing);
    await page.goto('/');
    await startCamera(page, SETUP);
    await expect(main(page, 'sweeping')).toBeVisible();
    // Some 200° of turn; by bitmaps only a few pictures a second come through.
    await page.waitForTimeout(12_000);
    await role(page, 'finish-sweep').click();
    await expect(main(page, 'read', 'refused')).toBeVisible({ timeout: 30_000 });
    // That much of a turn was followed says that pictures came through and were understood.
    await expect(page.locator('[data-code="turn-incomplete"]')).toBeVisible();
  });
}
