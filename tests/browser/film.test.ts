import { readFileSync, writeFileSync } from 'node:fs';

import { expect, test } from '@playwright/test';

import type { Reading } from '../../src/contract/reading.ts';
import { readInPage } from '../tools/pageSweep.ts';
import { scoreReading, type SweepTruth } from '../tools/score.ts';
import {
  chooseFiles,
  cutFilmFile,
  foreignRequests,
  FRONT_LEFT,
  frontLeftSetupFile,
  main,
  role,
  sampleSweep,
} from './support.ts';

const LIMIT_MS = 100_000;

function expectWithinBounds(reading: Reading, truth: SweepTruth, weightRadiusMm: number): void {
  const score = scoreReading('sweep', reading, truth, { weightRadiusMm, seconds: 1, frames: null });
  expect(score, JSON.stringify(score)).toMatchObject({ status: 'ok', withinBounds: true });
}

test('the built-in sweep is read at one click, and nothing is asked of other places', async ({
  page,
}) => {
  const foreign = foreignRequests(page);
  await page.goto('/');
  await role(page, 'read-sample').click();
  await expect(main(page, 'sweeping')).toBeVisible();
  await expect(main(page, 'read', 'ok')).toBeVisible({ timeout: LIMIT_MS });
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    role(page, 'download-reading').click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.json$/);
  const reading = JSON.parse(readFileSync(await download.path(), 'utf8')) as Reading;
  expectWithinBounds(reading, FRONT_LEFT.truth, FRONT_LEFT.setup.wheel.weightRadiusMm);
  await expect(role(page, 'notice')).toHaveCount(0);
  expect(foreign).toEqual([]);
});

test('a check sweep after a trial weight is read with the measured response', async ({
  page,
}, info) => {
  test.setTimeout(2 * LIMIT_MS);
  const before = sampleSweep('shed-rear-right');
  const trial = sampleSweep('shed-rear-right-trial');
  await page.goto('/');
  const first = await readInPage(page, [before.filmPath, before.setupPath], LIMIT_MS);
  expectWithinBounds(first.reading, before.truth, before.setup.wheel.weightRadiusMm);
  const earlierPath = info.outputPath('before.reading.json');
  writeFileSync(earlierPath, JSON.stringify(first.reading));

  await page.goto('/');
  const check = await readInPage(page, [trial.filmPath, trial.setupPath, earlierPath], LIMIT_MS);
  expect(check.reading).toMatchObject({ status: 'ok', response: { source: 'trial' } });
  expectWithinBounds(check.reading, trial.truth, trial.setup.wheel.weightRadiusMm);
});

test('a sweep that is being read can be stopped, and another read after it', async ({ page }) => {
  await page.goto('/');
  await role(page, 'read-sample').click();
  await expect(main(page, 'sweeping')).toBeVisible();
  await role(page, 'stop').click();
  await expect(main(page, 'choosing')).toBeVisible();
  await chooseFiles(page, [cutFilmFile(), frontLeftSetupFile()]);
  await expect(main(page, 'read', 'refused')).toBeVisible({ timeout: LIMIT_MS });
});
