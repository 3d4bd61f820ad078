import { test } from '@playwright/test';

import { launchWith } from '../setup/launchWith.ts';
import { expectRecordsStand, openWithRecords } from './faults/standingRecords.ts';
import { expectProblem, FRONT_LEFT, startCamera } from './support.ts';

// There is a camera, and a headless browser says no for the person.
test.use({ launchOptions: launchWith(['--use-fake-device-for-media-stream']) });

test('a camera that the person refuses', async ({ page }) => {
  await openWithRecords(page);
  await page.goto('/');
  await startCamera(page, FRONT_LEFT.setup);
  await expectProblem(page, 'camera-refused', /not allowed to use the camera.*Allow the camera/s);
  await expectRecordsStand(page);
});
