import { expect, test, type Page } from '@playwright/test';

import { GALLERY_PLACES } from './gallery/galleryPlaces.ts';
import { serveGallery, type ServedGallery } from './gallery/serveGallery.ts';

/** From the weights' screen to the hand that is led: one plan, on every screen and after a reload. */

let gallery: ServedGallery;

test.beforeAll(async () => {
  gallery = await serveGallery();
});

test.afterAll(() => gallery.close());

/** Without a camera the lead says the place in words. */
const byHand = (page: Page) => page.locator('[data-lead="by-hand"]');
const planned = (page: Page) => page.locator('.weights-places li');

async function open(page: Page, place: string): Promise<void> {
  await page.goto(`${gallery.address}?place=${place}`);
  await expect(page.locator('main h1, main .instruction').first()).toBeAttached();
}

test('the hand is led to the plan that was wished for, and the wish is still there on the way back', async ({
  page,
}) => {
  await open(page, 'weights');
  // The proposal lies where the reading's own weight would go: that is blocked now.
  await page.getByLabel('From, °').fill('225');
  await page.getByLabel('clockwise to, °').fill('285');
  await page.getByRole('button', { name: 'Add by number' }).click();
  await page.getByLabel('Split where that leaves less').check();
  await expect(planned(page)).toHaveCount(2);
  const first = (await planned(page).first().locator('strong').textContent())!;
  await page.locator('[data-role="lead"]').click();
  await expect(byHand(page)).toContainText(first);
  await page.goBack();
  await expect(page.getByLabel('Split where that leaves less')).toBeChecked();
  await page.goForward();
  await expect(page.getByText('Weight 1 of 2')).toBeVisible();
});

test('a weight that is on stays on when the page is loaded anew', async ({ page }) => {
  await open(page, 'weights');
  await page.getByLabel('Split where that leaves less').check();
  await expect(planned(page)).toHaveCount(2);
  await page.locator('[data-role="lead"]').click();
  await expect(page.getByText('Weight 1 of 2')).toBeVisible();
  await page.locator('[data-role="weight-done"]').click();
  const second = (await byHand(page).textContent())!;
  await page.reload();
  await expect(page.getByText('Weight 2 of 2')).toBeVisible();
  await expect(byHand(page)).toHaveText(second);
  await page.locator('[data-role="weight-done"]').click();
  await expect(page.locator('[data-role="prove"]')).toBeVisible();
});

test('without a word from the person the lead follows what the weights’ screen proposes', async ({
  page,
}) => {
  await open(page, 'weights');
  const proposed = await planned(page).first().locator('strong').textContent();
  await page.evaluate((hash) => (location.hash = hash), GALLERY_PLACES['lead']!);
  await page.reload();
  await expect(byHand(page)).toContainText(proposed!);
});

test('before a camera the reading leads to the spot with one touch', async ({ page }) => {
  await open(page, 'reading');
  const stuck = page.locator('.spot', { hasText: 'Weights to stick on' }).locator('dd');
  await expect(stuck).toHaveText(/15\sg\s·\s8:30\s·\s255°/);
  await page.locator('[data-role="lead"]').click();
  await expect(byHand(page)).toHaveText(/Stick 15\sg at 8:30\s·\s255°/);
});
