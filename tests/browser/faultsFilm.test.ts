import { readFileSync } from 'node:fs';

import { expect, test, type Page } from '@playwright/test';

import { readInPage } from '../tools/pageSweep.ts';
import { scoreReading } from '../tools/score.ts';
import { madeFilm } from './faults/madeFilm.ts';
import { expectGoesOn, expectRefused, expectSaid } from './faults/said.ts';
import { entriesOfLogbook } from './faults/storedRecords.ts';
import {
  chooseFiles,
  cutFilmFile,
  expectProblem,
  fileOf,
  FRONT_LEFT,
  frontLeftSetupFile,
  main,
  role,
} from './support.ts';

/** Films that break, and films and browsers that are not as usual: read, or refused in words. */
const READ = { timeout: 100_000 };

const sampleFilm = () => readFileSync(FRONT_LEFT.filmPath);

/** Read as far as it went, said with what to do, and kept with its refusal. */
async function expectTooShortATurn(page: Page): Promise<void> {
  await expect(main(page, 'read', 'refused')).toBeVisible(READ);
  await expectRefused(page, 'turn-incomplete');
  await expect.poll(async () => (await entriesOfLogbook(page)).length).toBe(1);
}

/** Takes a part of the engine away from the measuring worker. */
async function workerWithout(page: Page, name: string): Promise<void> {
  await page.route('**/measure.worker-*.js', async (route) => {
    const response = await route.fetch();
    await route.fulfill({ response, body: `delete globalThis.${name};${await response.text()}` });
  });
}

test('a film that breaks off is read as far as it goes, and that is said', async ({ page }) => {
  await page.goto('/');
  await chooseFiles(page, [cutFilmFile(), frontLeftSetupFile()]);
  await expectTooShortATurn(page);
  await expectSaid(role(page, 'notice'), 'film-cut-off');
  await expectGoesOn(page);
});

test('a film that cannot be decoded from its middle on is read up to there', async ({ page }) => {
  const spoilt = sampleFilm();
  const middle = spoilt.length >> 1;
  for (let at = middle; at < middle + 20_000; at++) spoilt[at] = (at * 197 + (at >> 7)) & 255;
  await page.goto('/');
  await chooseFiles(page, [fileOf('spoilt.mp4', spoilt, 'video/mp4'), frontLeftSetupFile()]);
  await expectTooShortATurn(page);
  await expectSaid(role(page, 'notice'), 'film-cut-off');
  await expectGoesOn(page);
});

test('4K is read: of less than a second, refused in words and kept', async ({ page }) => {
  test.setTimeout(240_000);
  const wish = { widthPx: 3840, heightPx: 2160, pictures: 16, times: 1 };
  const film = await madeFilm(page, FRONT_LEFT.filmPath, wish);
  await chooseFiles(page, [fileOf('large.webm', film, 'video/webm'), frontLeftSetupFile()]);
  await expect(main(page, 'read', 'refused')).toBeVisible(READ);
  await expect(role(page, 'notice')).toHaveCount(0);
  await expect.poll(async () => (await entriesOfLogbook(page)).length).toBe(1);
});

test('240 pictures a second are read, sixty of them measured', async ({ page }) => {
  test.setTimeout(240_000);
  const wish = { widthPx: 640, heightPx: 360, pictures: 72, times: 10 };
  const film = await madeFilm(page, FRONT_LEFT.filmPath, wish);
  await chooseFiles(page, [fileOf('fast.webm', film, 'video/webm'), frontLeftSetupFile()]);
  await expectTooShortATurn(page);
  const pictures = await page.evaluate(() => {
    const [read] = performance.getEntriesByName('tiltsweep.film') as PerformanceMeasure[];
    return (read!.detail as { pictures: number }).pictures;
  });
  expect(pictures).toBeGreaterThan(3 * 55);
  expect(pictures).toBeLessThan(3 * 65);
});

test('a browser without a decoder plays the film and measures it as it runs', async ({ page }) => {
  await workerWithout(page, 'VideoDecoder');
  await page.goto('/');
  const { reading } = await readInPage(
    page,
    [FRONT_LEFT.filmPath, FRONT_LEFT.setupPath],
    READ.timeout,
  );
  await expectSaid(role(page, 'notice'), 'film-played');
  const about = {
    weightRadiusMm: FRONT_LEFT.setup.wheel.weightRadiusMm,
    seconds: 1,
    frames: null,
  };
  const score = scoreReading('played', reading, FRONT_LEFT.truth, about);
  console.log(`played: ${JSON.stringify(score)}`);
  expect(score, JSON.stringify(score)).toMatchObject({ status: 'ok', withinBounds: true });
});

test('a browser that can neither decode nor play it says so', async ({ page }) => {
  await workerWithout(page, 'VideoDecoder');
  await page.addInitScript(() => {
    Reflect.deleteProperty(HTMLVideoElement.prototype, 'requestVideoFrameCallback');
  });
  await page.goto('/');
  await chooseFiles(page, [fileOf('sweep.mp4', sampleFilm(), 'video/mp4'), frontLeftSetupFile()]);
  await expectProblem(page, 'film-coding-unknown');
});
