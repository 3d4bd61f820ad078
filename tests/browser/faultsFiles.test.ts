import { readFileSync } from 'node:fs';

import { expect, test, type Page } from '@playwright/test';

import { en } from '../../src/screens/words/en/index.ts';
import { expectGoesOn } from './faults/said.ts';
import { expectRecordsStand, openWithRecords } from './faults/standingRecords.ts';
import {
  chooseFiles,
  expectProblem,
  fileOf,
  FRONT_LEFT,
  frontLeftSetupFile,
  main,
  role,
  sampleSweep,
} from './support.ts';

const film = () => fileOf('sweep.mp4', readFileSync(FRONT_LEFT.filmPath), 'video/mp4');
const setupText = readFileSync(FRONT_LEFT.setupPath, 'utf8');

test.beforeEach(async ({ page }) => {
  await openWithRecords(page);
  await page.goto('/');
});

/** Nothing of what was wrong is in the logbook, what was there stands, and the next choice is taken. */
async function expectNothingTaken(page: Page): Promise<void> {
  await expectRecordsStand(page);
  await expectGoesOn(page);
}

test('a file that is no video', async ({ page }) => {
  await chooseFiles(page, [
    fileOf('sweep.mp4', 'A letter, not a film. '.repeat(100), 'video/mp4'),
    frontLeftSetupFile(),
  ]);
  await expectProblem(page, 'file-unreadable');
  await expectNothingTaken(page);
});

test('an empty file', async ({ page }) => {
  await chooseFiles(page, [fileOf('sweep.mp4', '', 'video/mp4'), frontLeftSetupFile()]);
  await expectProblem(page, 'film-empty');
  await expectNothingTaken(page);
});

test('a film cut off before its first picture', async ({ page }) => {
  const start = readFileSync(FRONT_LEFT.filmPath).subarray(0, 4000);
  await chooseFiles(page, [fileOf('sweep.mp4', start, 'video/mp4'), frontLeftSetupFile()]);
  await expectProblem(page, 'film-cut-off');
  await expectNothingTaken(page);
});

test('a setup with a value that cannot be right names that value', async ({ page }) => {
  const absurd = setupText.replace('"massKg": 16.5', '"massKg": 16500');
  await chooseFiles(page, [film(), fileOf('sweep.setup.json', absurd, 'application/json')]);
  await expectProblem(page, 'setup-invalid', /massKg|[Mm]ass/);
  await expectNothingTaken(page);
});

test('a setup that is not JSON', async ({ page }) => {
  await chooseFiles(page, [
    film(),
    fileOf('sweep.setup.json', setupText.slice(0, 50), 'application/json'),
  ]);
  await expectProblem(page, 'setup-invalid', /not JSON/);
  await expectNothingTaken(page);
});

test('a JSON file that is something else', async ({ page }) => {
  await chooseFiles(page, [film(), fileOf('shopping.json', '["tape"]', 'application/json')]);
  await expectProblem(page, 'setup-unreadable');
  await expectNothingTaken(page);
});

test('a setup without a film', async ({ page }) => {
  await chooseFiles(page, [frontLeftSetupFile()]);
  await expectProblem(page, 'film-missing');
  await expectNothingTaken(page);
});

test('a check sweep without the sweep before it', async ({ page }) => {
  const trial = sampleSweep('shed-rear-right-trial');
  await chooseFiles(page, [trial.filmPath, trial.setupPath]);
  await expectProblem(page, 'earlier-sweep-missing', /shed-rear-right/);
  await expectNothingTaken(page);
});

test('the advice changes when the same thing goes wrong again, and a good choice clears it', async ({
  page,
}) => {
  await chooseFiles(page, [frontLeftSetupFile()]);
  await expectProblem(page, 'film-missing');
  await chooseFiles(page, [frontLeftSetupFile()]);
  await expectProblem(page, 'film-missing', undefined, { again: true });
  await chooseFiles(page, [film(), frontLeftSetupFile()]);
  await expect(main(page, 'sweeping')).toBeVisible();
  await expect(role(page, 'problem')).toHaveCount(0);
});

test('a video of something else is refused, without a figure', async ({ page }) => {
  await chooseFiles(page, [
    fileOf('clouds.webm', await cloudsFilm(page), 'video/webm'),
    frontLeftSetupFile(),
  ]);
  await expect(main(page, 'read', 'refused')).toBeVisible({ timeout: 60_000 });
  const refused = page.locator('.refused');
  const code = (await refused.getAttribute('data-code')) as keyof typeof en.notices;
  await expect(refused).toContainText(en.notices[code].cause);
  await expect(refused).toContainText(en.notices[code].remedy);
  const text = await page.locator('main').innerText();
  expect(text).not.toMatch(/\d\s*g\b/);
  // The refusal is a record of its own; nothing else has changed.
  await expectRecordsStand(page, 1);
});

/** Three seconds of drifting colours, made by the browser's own recorder. */
async function cloudsFilm(page: Page): Promise<Buffer> {
  const base64 = await page.evaluate(async () => {
    const canvas = document.createElement('canvas');
    canvas.width = 640;
    canvas.height = 360;
    const context = canvas.getContext('2d')!;
    const draw = (timeMs: number) => {
      const sky = context.createLinearGradient(0, 0, 640, 360);
      sky.addColorStop(0, `hsl(${timeMs / 40}deg 40% 60%)`);
      sky.addColorStop(1, `hsl(${timeMs / 40 + 90}deg 40% 30%)`);
      context.fillStyle = sky;
      context.fillRect(0, 0, 640, 360);
      requestAnimationFrame(draw);
    };
    requestAnimationFrame(draw);
    const recorder = new MediaRecorder(canvas.captureStream(30), {
      mimeType: 'video/webm;codecs=vp8',
    });
    const parts: Blob[] = [];
    recorder.addEventListener('dataavailable', (event) => parts.push(event.data));
    recorder.start();
    await new Promise((resolve) => setTimeout(resolve, 3000));
    await new Promise((resolve) => {
      recorder.addEventListener('stop', resolve);
      recorder.stop();
    });
    const bytes = new Uint8Array(await new Blob(parts).arrayBuffer());
    return btoa(bytes.reduce((text, byte) => text + String.fromCharCode(byte), ''));
  });
  return Buffer.from(base64, 'base64');
}
