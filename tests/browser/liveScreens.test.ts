import { AxeBuilder } from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';

import { places } from '../../src/screens/shell/places.ts';
import { prefer, SIZES } from './gallery/galleryPage.ts';
import { serveGallery, type ServedGallery } from './gallery/serveGallery.ts';
import { GALLERY_LIVE } from './gallery/states.ts';
import { tooSmallToTouch } from './gallery/tooSmallToTouch.ts';

/** Sight and leading, as they look while a camera runs, in each state. */
let gallery: ServedGallery;

test.beforeAll(async () => {
  gallery = await serveGallery();
});

test.afterAll(() => gallery.close());

async function open(page: Page, name: string): Promise<void> {
  const { place, state } = GALLERY_LIVE[name]!;
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.goto(`${gallery.address}?place=${place}&state=${state}`);
  await expect(page.locator('.live')).toBeVisible();
}

test('axe finds nothing, light or dark', async ({ page }) => {
  test.setTimeout(180_000);
  for (const theme of ['light', 'dark']) {
    await prefer(page, 'theme', theme);
    for (const name of Object.keys(GALLERY_LIVE)) {
      await open(page, name);
      const axe = new AxeBuilder({ page });
      if (theme === 'dark') axe.withRules(['color-contrast']);
      expect((await axe.analyze()).violations, `${name}, ${theme}`).toEqual([]);
    }
  }
  await open(page, 'sight-ready');
  await page.locator('[data-role="camera-panel"]').click();
  await expect(page.locator('[name="downTiltDeg"]')).toBeVisible();
  expect((await new AxeBuilder({ page }).analyze()).violations, 'camera panel').toEqual([]);
});

for (const [size, viewport] of Object.entries(SIZES)) {
  for (const language of ['en', 'de']) {
    test(`nothing is cut off sideways, all that is touched is large enough: ${size}, ${language}`, async ({
      page,
    }) => {
      test.setTimeout(120_000);
      await page.setViewportSize(viewport);
      await prefer(page, 'language', language);
      for (const name of Object.keys(GALLERY_LIVE)) {
        await open(page, name);
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        expect(wide, name).toBeLessThanOrEqual(0);
        expect(await tooSmallToTouch(page), name).toEqual([]);
      }
    });
  }
}

test('on a tablet the way to the spot is read from a metre, and all of it fits the screen', async ({
  page,
}) => {
  for (const viewport of [SIZES.tablet, SIZES.upright]) {
    await page.setViewportSize(viewport);
    for (const name of ['lead-turn', 'lead-far', 'lead-here']) {
      await open(page, name);
      for (const part of ['.instruction', '.live-main', '.picture-frame', '.live-end button']) {
        const box = await page.locator(part).first().boundingBox();
        expect(box!.y + box!.height, `${name} ${part}`).toBeLessThanOrEqual(viewport.height);
      }
    }
    await open(page, 'lead-far');
    const figure = page.locator('.lead-arrow text');
    await expect(figure).toHaveText('145°');
    // Letters are drawn in the arrow's own units.
    const heightPx = await figure.evaluate(
      (one: SVGTextElement) =>
        Number.parseFloat(getComputedStyle(one).fontSize) * one.getScreenCTM()!.a,
    );
    expect(heightPx).toBeGreaterThanOrEqual(96);
  }
});

test('the spot and its way are drawn in the picture, an arrow while it is round the wheel', async ({
  page,
}) => {
  await open(page, 'lead-turn');
  await expect(page.locator('.instruction')).toHaveText('Turn 37° clockwise');
  await expect(page.locator('.spot-way .shape-weight')).toBeVisible();
  const [spot, sight] = await Promise.all([
    page.locator('.spot-way .shape-weight').boundingBox(),
    page.locator('.picture-frame').boundingBox(),
  ]);
  // Clockwise from above the near side goes to the left: the spot comes from the right.
  expect(spot!.x).toBeGreaterThan(sight!.x + sight!.width / 2);
  await open(page, 'lead-far');
  await expect(page.locator('.spot-way .shape-weight')).toHaveCount(0);
  await expect(page.locator('.spot-way .spot-arrow')).toBeVisible();
});

test('the sight by keyboard alone: another edge, the press test, the sweep', async ({ page }) => {
  await open(page, 'sight-ready');
  const asked = () => page.evaluate(() => window.asked);
  await page.locator('.edge-picker').focus();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  expect((await asked()).at(-1)).toContain('changeSight edge {"valveMark"');
  await page.keyboard.press('Tab');
  await expect(page.locator('[data-role="camera-panel"]')).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page.locator('.instruction')).toHaveText('Let the wheel come to rest');
  await page.keyboard.press('Enter');
  await expect(page.locator('.instruction')).toHaveText('All is seen: start the sweep');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  expect((await asked()).at(-1)).toBe('beginSweep');
});

test('what was tried by hand at the sight is kept with the stand', async ({ page }) => {
  await page.goto(`${gallery.address}?place=sight&state=sighting-ready`);
  await expect(page.locator('[data-check="up"]')).toHaveAttribute('data-state', 'not-tried');
  await page.evaluate(() => window.showSight('sighting-tried'));
  await expect(page.locator('[data-check="up"]')).toHaveAttribute('data-state', 'good');
  await page.evaluate((hash) => (location.hash = hash), places.stand);
  await expect(page.locator('[data-role="tried"]')).toHaveText(
    'Tried by hand: right way up, not mirrored.',
  );
});
