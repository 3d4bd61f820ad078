import { AxeBuilder } from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';

import { openConnectPage } from './gallery/connectPages.ts';
import { serveGallery, type ServedGallery } from './gallery/serveGallery.ts';
import { GALLERY_LIVE } from './gallery/states.ts';
import { tooSmallToTouch } from './gallery/tooSmallToTouch.ts';

/**
 * What neither `screens.test.ts` nor `shedScreens.test.ts` comes past: the screens that follow a
 * camera, a new version that is offered, and the page that leads a tablet here.
 */
let gallery: ServedGallery;

test.beforeAll(async () => {
  gallery = await serveGallery();
});

test.afterAll(() => gallery.close());

const expectNothingFound = async (page: Page, where: string) =>
  expect((await new AxeBuilder({ page }).analyze()).violations, where).toEqual([]);

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing before a camera: ${colorScheme}`, async ({ page }) => {
    test.setTimeout(240_000);
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    for (const [name, { place, state }] of Object.entries(GALLERY_LIVE)) {
      await page.goto(`${gallery.address}?place=${place}&state=${state}`);
      await expect(page.locator('main h1')).toBeAttached();
      await expectNothingFound(page, name);
      expect(await tooSmallToTouch(page), name).toEqual([]);
    }
  });

  test(`axe finds nothing where a new version is offered: ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    await page.goto(`${gallery.address}?place=shed&update`);
    const offer = page.locator('[data-role="update-offer"]');
    await expect(offer).toBeVisible();
    await expectNothingFound(page, 'offered');
    await page.locator('[data-role="use-update"]').click();
    await expect(offer).toContainText('sweep');
    await expectNothingFound(page, 'refused while another tab sweeps');
    expect(await tooSmallToTouch(page)).toEqual([]);
  });

  test(`axe finds nothing on the page that leads a tablet here: ${colorScheme}`, async ({
    page,
  }) => {
    await page.emulateMedia({ colorScheme });
    for (const language of ['en', 'de'] as const) {
      for (const hasNetwork of [true, false]) {
        await openConnectPage(page, language, hasNetwork);
        await expectNothingFound(page, `${language}, network: ${hasNetwork}`);
        await page.unrouteAll();
      }
    }
  });
}
