import { expect, type Page } from '@playwright/test';

import { archiveFile } from '../../fakes/archiveFile.ts';
import { fileOf } from '../support.ts';
import { relayCamera, type CameraRelay } from './cameraRelay.ts';
import { entriesOfLogbook } from './storedRecords.ts';

export const sighting = (page: Page) => page.locator('main[data-phase="sighting"]');

/** The camera aimed at a wheel of the logbook, `address` is where the app is. */
export async function aim(page: Page, address = '/'): Promise<CameraRelay> {
  const relay = await relayCamera(page);
  await page.goto(`${address}#/logbook`);
  await page
    .locator('[data-role="bring-in"]')
    .setInputFiles(fileOf('logbook.zip', Buffer.from(await archiveFile()), 'application/zip'));
  await expect.poll(async () => (await entriesOfLogbook(page)).length).toBe(6);
  await page.goto(`${address}#/wheel/w1/sight`);
  await expect(sighting(page)).toBeVisible();
  await page.waitForTimeout(2000);
  return relay;
}
