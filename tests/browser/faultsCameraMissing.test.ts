import { test } from '@playwright/test';

import { launchWith } from '../setup/launchWith.ts';
import { expectRecordsStand, openWithRecords } from './faults/standingRecords.ts';
import { expectProblem, FRONT_LEFT, startCamera } from './support.ts';

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
  await expectProblem(page, 'camera-missing', /No camera was found.*Plug a camera in/s);
  await expectRecordsStand(page);
});
