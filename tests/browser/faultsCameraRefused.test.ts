import { expect, test } from '@playwright/test';

import { launchWith } from '../setup/launchWith.ts';
import { expectGoesOn } from './faults/said.ts';
import { expectRecordsStand, openWithRecords } from './faults/standingRecords.ts';
import { expectProblem, FRONT_LEFT, main, role, startCamera } from './support.ts';

// There is a camera, and a headless browser says no for the person.
test.use({ launchOptions: launchWith(['--use-fake-device-for-media-stream']) });

test('a camera that the person refuses', async ({ page, context }) => {
  await openWithRecords(page);
  await page.goto('/');
  await startCamera(page, FRONT_LEFT.setup);
  await expectProblem(page, 'camera-refused');
  // Once more: the advice is another.
  await role(page, 'start-camera').click();
  await expectProblem(page, 'camera-refused', undefined, { again: true });
  await expectRecordsStand(page);
  // Allowed then, the same page sweeps.
  await context.grantPermissions(['camera']);
  await expectGoesOn(page);
  await startCamera(page, FRONT_LEFT.setup);
  await expect(main(page, 'sweeping')).toBeVisible();
});
