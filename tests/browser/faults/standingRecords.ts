import { expect, type Page } from '@playwright/test';

import { archiveFile } from '../../fakes/archiveFile.ts';
import { fileOf } from '../support.ts';
import { entriesOfLogbook } from './storedRecords.ts';

let before: unknown[] = [];

/** A logbook with a wheel's sweeps, for a fault that must not touch it. */
export async function openWithRecords(page: Page): Promise<void> {
  await page.goto('/#/logbook');
  const file = fileOf('logbook.zip', Buffer.from(await archiveFile()), 'application/zip');
  await page.locator('[data-role="bring-in"]').setInputFiles(file);
  await expect(page.locator('[data-role="archive-said"]')).toHaveAttribute('data-kind', 'merged');
  before = await entriesOfLogbook(page);
  expect(before.length).toBeGreaterThan(1);
}

/**
 * All of its entries are as they were, and so many more beside them; the page that had the fault shows
 * them, without having been loaded anew.
 */
export async function expectRecordsStand(page: Page, more = 0): Promise<void> {
  await expect.poll(async () => (await entriesOfLogbook(page)).length).toBe(before.length + more);
  expect(await entriesOfLogbook(page)).toEqual(expect.arrayContaining(before));
  await page.evaluate(() => (location.hash = '#/logbook'));
  await expect(
    page.locator('.logbook-line').filter({ hasText: 'minibus front left' }),
  ).toBeVisible();
}
