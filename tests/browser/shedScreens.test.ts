import { AxeBuilder } from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';

import { GALLERY_PLACES } from './gallery/galleryPlaces.ts';
import { prefer, SIZES } from './gallery/galleryPage.ts';
import { serveGallery, type ServedGallery } from './gallery/serveGallery.ts';
import { tooSmallToTouch } from './gallery/tooSmallToTouch.ts';

/** The screens that show the logbook, with the shed's four wheels in it. */
let gallery: ServedGallery;

test.beforeAll(async () => {
  gallery = await serveGallery();
});

test.afterAll(() => gallery.close());

async function open(page: Page, place: string): Promise<void> {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.goto(`${gallery.address}?place=${place}`);
  // A wheel's sheet for printing is there too, unseen.
  await expect(page.locator('main h1:visible')).toBeVisible();
}

test('axe finds nothing on any of them, light, dark or with stronger contrast', async ({
  page,
}) => {
  test.setTimeout(480_000);
  for (const [theme, contrast] of [
    ['light', 'system'],
    ['dark', 'system'],
    ['light', 'more'],
    ['dark', 'more'],
  ] as const) {
    await prefer(page, 'theme', theme);
    await prefer(page, 'contrast', contrast);
    for (const place of Object.keys(GALLERY_PLACES)) {
      await open(page, place);
      const axe = new AxeBuilder({ page });
      // Only the colours differ from the light screen.
      if (theme === 'dark' || contrast === 'more') axe.withRules(['color-contrast']);
      expect((await axe.analyze()).violations, `${place}, ${theme}, ${contrast}`).toEqual([]);
    }
  }
});

for (const [size, viewport] of Object.entries(SIZES)) {
  for (const language of ['en', 'de']) {
    test(`nothing is cut off, all that is touched is large enough: ${size}, ${language}`, async ({
      page,
    }) => {
      test.setTimeout(120_000);
      await page.setViewportSize(viewport);
      await prefer(page, 'language', language);
      for (const place of Object.keys(GALLERY_PLACES)) {
        await open(page, place);
        await expect(page.locator('html')).toHaveAttribute('lang', language);
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        expect(wide, place).toBeLessThanOrEqual(0);
        expect(await tooSmallToTouch(page), place).toEqual([]);
      }
    });
  }
}

test('every card says where its wheel stands and what comes next', async ({ page }) => {
  await open(page, 'shed');
  const cards = page.locator('.card');
  await expect(cards).toHaveCount(4);
  const said = await cards.evaluateAll((all) =>
    all.map((card) => [
      card.querySelector('.card-stage')!.textContent,
      card.querySelector('[data-role="next-step"]')!.childNodes[0]!.textContent,
    ]),
  );
  expect(said).toEqual([
    ['proved', 'Look at the proof'],
    ['weights on', 'Sweep to prove it'],
    ['read', 'Stick weights on'],
    ['not read yet', 'Measure the wheel'],
  ]);
});

test('a wheel taken out of the shed comes back by one touch', async ({ page }) => {
  await open(page, 'shed');
  await page.getByRole('button', { name: 'Take out of the shed: Minibus 3' }).click();
  await expect(page.locator('.card')).toHaveCount(3);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.locator('.card')).toHaveCount(4);
  await expect(page.locator('.card').nth(2)).toContainText('Minibus 3');
});

test('a new wheel takes the measures of the last one over, and asks to be weighed', async ({
  page,
}) => {
  await open(page, 'shed');
  await page.locator('[data-role="add-wheel"]').click();
  await expect(page.locator('h1')).toHaveText('Wheel 5');
  await expect(page.locator('[name="tyre"]')).toHaveValue('195/75 R16 C');
  await expect(page.getByRole('button', { name: /^Mass with tyre: assumed/ })).toBeVisible();
});

test('measures are kept as they are typed, with comma or point, by plus and minus', async ({
  page,
}) => {
  await open(page, 'bench-new');
  const mass = page.locator('[name="massKg"]');
  await mass.fill('17,5');
  await mass.press('Enter');
  await expect(mass).toHaveValue('17.5');
  await expect(page.getByRole('button', { name: /^Mass with tyre: entered/ })).toBeVisible();
  await page.getByRole('button', { name: 'Mass with tyre: more' }).click();
  await expect(mass).toHaveValue('17.6');
  await mass.fill('800');
  await mass.press('Tab');
  await expect(page.getByText('Must be 80 kg or less.')).toBeVisible();
  // What cannot be right stays in the field and out of the logbook.
  await page.getByRole('link', { name: 'Wheel', exact: true }).click();
  await expect(page.locator('.wheel-head')).toBeVisible();
  await page.goBack();
  await expect(mass).toHaveValue('17.6');
});

test('a ball on which the wheel would tip over is refused, with the reason', async ({ page }) => {
  await open(page, 'bench');
  const ball = page.locator('[name="ballDiameterMm"]');
  await ball.fill('80');
  await ball.press('Enter');
  await expect(page.getByRole('alert')).toContainText('would not stand');
  await expect(ball).toHaveValue('63.5');
  await ball.fill('60');
  await ball.press('Enter');
  // Depth follows the seat: 8.2 + 16.7052 − 13.0767.
  await expect(page.locator('[name="pendulumDepthMm"]')).toHaveValue('11.83');
});

test('the next step after the bench is the sight', async ({ page }) => {
  await open(page, 'bench-new');
  for (const name of ['Mass with tyre', 'Middle to tread edge', 'Middle to weights']) {
    await page.getByRole('button', { name: `${name}: assumed` }).click();
  }
  await page.getByRole('link', { name: 'Wheel', exact: true }).click();
  await expect(page.locator('[data-role="next-step"]')).toHaveText('Sweep');
  await expect(page.locator('.path li[data-progress="now"]')).toContainText('Sight');
});

test('a weight put on by hand asks for the proof, and can be taken back', async ({ page }) => {
  await open(page, 'wheel-read');
  await page.getByText('Weights put on by hand').first().click();
  await page.locator('[data-role="add-hand-weight"]').click();
  const next = page.locator('[data-role="next-step"]');
  await expect(next).toHaveText('Sweep to prove it');
  await page.getByRole('button', { name: /^Take back: Put on/ }).click();
  await expect(next).toHaveText('Stick weights on');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(next).toHaveText('Sweep to prove it');
});

test('a reading by eye is undone where it was entered, and stands there to be mended', async ({
  page,
}) => {
  await open(page, 'by-eye');
  const values = page.locator('.eye-value output');
  const again = page.getByRole('button', { name: 'Another reading by eye' });
  await page.getByRole('button', { name: 'Weight: more' }).click();
  await expect(values).toHaveText(['6:00\u00a0· 180°', '15\u00a0g']);
  await page.locator('[data-role="keep-eye"]').click();
  await expect(again).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(values).toHaveText(['6:00\u00a0· 180°', '15\u00a0g']);
  await expect(page.getByRole('button', { name: 'Undo' })).toHaveCount(0);
  await page.getByRole('button', { name: 'Weight: less' }).click();
  await page.locator('[data-role="keep-eye"]').click();
  await expect(again).toBeVisible();
  // Only the mended one was kept.
  await page.getByRole('link', { name: 'Wheel', exact: true }).click();
  const history = page.locator('.history li');
  await expect(history).toHaveCount(1);
  await expect(history).toContainText('10\u00a0g');
});

test('units change everywhere at once', async ({ page }) => {
  await open(page, 'bench');
  await page.getByRole('link', { name: 'Settings' }).click();
  await page.getByRole('radio', { name: /inch and pound/ }).check({ force: true });
  await page.goBack();
  await expect(page.locator('[name="massKg"]')).toHaveValue('36.4');
  await expect(page.locator('[name="edgeRadiusMm"]')).toHaveValue('12.165');
  await expect(page.locator('main')).not.toContainText(/\d\s(g|kg|mm)\b/);
});

test('German all through, with a decimal comma', async ({ page }) => {
  await open(page, 'settings');
  // A click: the new language draws the tile anew while a check would still watch the old one.
  await page.getByRole('radio', { name: 'Deutsch' }).click({ force: true });
  await expect(page.locator('h1')).toHaveText('Einstellungen');
  await page.getByRole('link', { name: 'Werkstatt' }).click();
  await expect(page.locator('.card').first()).toContainText('1,9 g');
});

test('help lies over the screen, and leaves it as it was', async ({ page }) => {
  await open(page, 'bench');
  await page.locator('[data-role="help"]').click();
  const dialog = page.getByRole('dialog', { name: 'The bench' });
  await expect(dialog.getByRole('listitem')).toHaveCount(3);
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(dialog).toHaveCount(0);
  await expect(page.locator('[data-role="help"]')).toBeFocused();
});
