import { expect, test } from '@playwright/test';

import { launchWith } from '../setup/launchWith.ts';
import { expectGoesOn } from './faults/said.ts';
import { expectRecordsStand, openWithRecords } from './faults/standingRecords.ts';
import {
  chooseFiles,
  cutFilmFile,
  expectProblem,
  FRONT_LEFT,
  frontLeftSetupFile,
  main,
  startCamera,
} from './support.ts';

// Granted without asking, but the made-up device has no cameras at all.
test.use({
  launchOptions: launchWith([
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream=device-count=0',
  ]),
});

test('a machine without a camera', async ({ page }) => {
  await openWithRecords(page);
  await page.goto('/');
  await startCamera(page, FRONT_LEFT.setup);
  await expectProblem(page, 'camera-missing');
  await expectRecordsStand(page);
  // A recorded film is read without one, in the same page.
  await expectGoesOn(page);
  await chooseFiles(page, [cutFilmFile(), frontLeftSetupFile()]);
  await expect(main(page, 'sweeping')).toBeVisible();
});
