import { readFileSync } from 'node:fs';

import { AxeBuilder } from '@axe-core/playwright';
import { expect, test } from '@playwright/test';

import { en } from '../../src/screens/words/en/index.ts';
import { archiveFile } from '../fakes/archiveFile.ts';
import { bringIn, openWithLogbook, said, timeline, wheels } from './faults/logbookPage.ts';

/** Saved logbooks that are brought in: broken ones bring nothing, whole ones all, and either can be undone. */
test('a broken archive brings nothing in, and says so', async ({ page }) => {
  await page.goto('/#/logbook');
  const bytes = await archiveFile();
  const spoilt = bytes.slice();
  spoilt[Math.floor(bytes.length / 2)]! ^= 255;
  for (const broken of [spoilt, bytes.slice(0, -200), new Uint8Array(0)]) {
    await bringIn(page, broken);
    await expect(said(page)).toHaveAttribute('data-kind', 'refused');
    await expect(said(page)).toContainText(en.logbook.archiveTroubles['archive-unreadable']);
    await expect(wheels(page)).toHaveCount(0);
  }
  // The next file is taken, in the same page.
  await bringIn(page, bytes);
  await expect(wheels(page)).toHaveCount(2);
});

test('saved and brought in on an empty browser it is the same; names with markup stay text', async ({
  page,
  browser,
}, info) => {
  await openWithLogbook(page);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.locator('[data-role="save-with-films"]').click(),
  ]);
  const empty = await browser.newContext({ baseURL: info.project.use.baseURL! });
  const second = await empty.newPage();
  await second.goto('/#/logbook');
  await bringIn(second, readFileSync(await download.path()));
  await expect(wheels(second)).toHaveCount(2);
  expect(await wheels(second).allInnerTexts()).toEqual(await wheels(page).allInnerTexts());
  await expect(second.locator('.logbook-list')).toContainText('<b>minibus</b> rear');
  await expect(second.locator('.logbook-list b')).toHaveCount(0);
  await empty.close();
});

test('a logbook that was brought in is taken out again with "undo", its films too', async ({
  page,
}) => {
  await openWithLogbook(page);
  const films = page.locator('.logbook-storage').getByText('1 film');
  await expect(films).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(said(page)).toHaveAttribute('data-kind', 'undone');
  await expect(wheels(page)).toHaveCount(0);
  await page.reload();
  await expect(page.locator('main')).toContainText('Nothing is in the logbook yet');
  await expect(films).toHaveCount(0);
  // Brought in again it is all there, and what brings nothing new leaves that to be undone.
  await openWithLogbook(page);
  await bringIn(page, await archiveFile());
  await expect(said(page)).toContainText('Records that were here already');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(wheels(page)).toHaveCount(0);
});

test('an entry that was deleted comes back with "undo"', async ({ page }) => {
  await openWithLogbook(page);
  await wheels(page).filter({ hasText: 'front left' }).click();
  const rows = page.locator('[data-role="timeline"] > li');
  await expect(rows).toHaveCount(4);
  await rows.first().getByRole('button', { name: 'Delete' }).click();
  await expect(rows).toHaveCount(3);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(rows).toHaveCount(4);
});

test('axe finds nothing in the logbook, light or dark', async ({ page }) => {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await openWithLogbook(page).catch(() => page.goto('/#/logbook'));
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    await wheels(page).filter({ hasText: 'front left' }).click();
    await expect(timeline(page)).toBeVisible();
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
  }
});
