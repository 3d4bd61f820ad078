import { AxeBuilder } from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';

import { serveGallery, type ServedGallery } from './gallery/serveGallery.ts';
import { tooSmallToTouch } from './gallery/tooSmallToTouch.ts';
import { fileOf } from './support.ts';

/** A film of a check sweep that came alone: its weights and the reading before it by hand. */

let gallery: ServedGallery;

test.beforeAll(async () => {
  gallery = await serveGallery();
});

test.afterAll(() => gallery.close());

/** What tells a film: the first box of an MP4. */
const FILM = fileOf('after.mp4', '\0\0\0\x20ftypisom', 'video/mp4');
const READING = fileOf('before.reading.json', '{"format":"tiltsweep.reading/1"}');

const asked = async (page: Page) =>
  (await page.evaluate(() => window.asked)).filter((one) => one.startsWith('readFiles'));

async function openForm(page: Page): Promise<void> {
  await page.goto(`${gallery.address}?place=shed`);
  await page.locator('[data-role="sweep-files"]').setInputFiles(FILM);
  await expect(page.locator('form[data-form="film"]')).toBeVisible();
  await page.getByText('Weights since an earlier sweep').click();
}

test('weights are entered, the reading before is asked for, then the film is read', async ({
  page,
}) => {
  await openForm(page);
  await page.locator('[name="handMass"]').fill('20');
  await page.locator('[name="handMass"]').press('Enter');
  await page.locator('[name="handAngle"]').fill('75');
  await page.locator('[name="handAngle"]').press('Tab');
  await page.locator('[data-role="add-hand-weight"]').click();
  await expect(page.locator('.after-list li')).toHaveText(/Put on: 20\sg\s·\s2:30\s·\s75°/);
  await page.locator('[data-role="start-sweep"]').click();
  await expect(page.getByText('Choose the earlier sweep’s reading')).toBeVisible();
  expect(await asked(page)).toEqual([]);
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
  expect(await tooSmallToTouch(page)).toEqual([]);
  await page.locator('[data-role="earlier-reading"]').setInputFiles(READING);
  await expect(page.getByText('Earlier sweep: before.reading.json')).toBeVisible();
  await page.locator('[data-role="start-sweep"]').click();
  await expect
    .poll(() => asked(page))
    .toEqual(['readFiles after.mp4 after.setup.json before.reading.json']);
});

test('a weight that was left out again asks for nothing', async ({ page }) => {
  await openForm(page);
  await page.locator('[data-role="add-hand-weight"]').click();
  await page.getByRole('button', { name: /^Leave out: Put on/ }).click();
  await page.locator('[data-role="start-sweep"]').click();
  await expect.poll(() => asked(page)).toEqual(['readFiles after.mp4 after.setup.json']);
});
