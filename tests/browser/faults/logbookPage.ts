import { expect, type Locator, type Page } from '@playwright/test';

import { archiveFile } from '../../fakes/archiveFile.ts';
import { fileOf } from '../support.ts';

/** What of the logbook's screen the tests of storage look at. */
export const notice = (page: Page): Locator => page.locator('[data-role="storage-notice"]');
export const said = (page: Page): Locator => page.locator('[data-role="archive-said"]');
export const wheels = (page: Page): Locator => page.locator('.logbook-line');
export const timeline = (page: Page): Locator => page.locator('[data-role="timeline"]');

export async function bringIn(page: Page, bytes: Uint8Array): Promise<void> {
  await page
    .locator('[data-role="bring-in"]')
    .setInputFiles(fileOf('logbook.zip', Buffer.from(bytes), 'application/zip'));
}

/** A logbook of two wheels. */
export async function openWithLogbook(page: Page): Promise<void> {
  await page.goto('/#/logbook');
  await bringIn(page, await archiveFile());
  await expect(said(page)).toHaveAttribute('data-kind', 'merged');
  await expect(wheels(page)).toHaveCount(2);
}
