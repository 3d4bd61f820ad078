import { expect, test, type Locator, type Page } from '@playwright/test';

import { main, role, sampleSweep } from './support.ts';
import { nextStep } from './wholeJob/steps.ts';

const READING_LIMIT_MS = 100_000;
const BEFORE = sampleSweep('shed-rear-right');
const CORRECTED = sampleSweep('shed-rear-right-corrected');
/** More stops than any screen has: past this the place cannot be reached by keys. */
const MOST_STOPS = 80;

/** Walks with the Tab key until the place has the focus, and sees to it that this can be seen. */
async function tabTo(page: Page, place: Locator): Promise<void> {
  await expect(place).toBeAttached();
  for (let stop = 0; stop < MOST_STOPS; stop++) {
    if (await place.evaluate((one) => one === document.activeElement)) {
      // The mark is round the place itself, or round what wraps a hidden input.
      const marked = await place.evaluate((one) => {
        const round = [one, one.parentElement!, one.nextElementSibling ?? one];
        return round.some((part) => Number.parseFloat(getComputedStyle(part).outlineWidth) >= 3);
      });
      expect(marked, `focus is seen at ${place}`).toBe(true);
      return;
    }
    await page.keyboard.press('Tab');
  }
  throw new Error(`not reached by the Tab key: ${place}`);
}

async function press(page: Page, place: Locator): Promise<void> {
  await tabTo(page, place);
  await page.keyboard.press('Enter');
}

async function type(page: Page, name: string, value: number | string): Promise<void> {
  await tabTo(page, page.locator(`[name="${name}"]`));
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(String(value));
  await page.keyboard.press('Tab');
}

async function openFilm(page: Page, filmPath: string): Promise<void> {
  await tabTo(page, role(page, 'wheel-film'));
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.keyboard.press('Space'),
  ]);
  await chooser.setFiles(filmPath);
  // The reading before stands until the film has begun.
  await expect(main(page, 'read')).toBeHidden();
  await expect(main(page, 'read', 'ok')).toBeVisible({ timeout: READING_LIMIT_MS });
}

/** From the empty shed to the proof and the saved logbook, without a pointer. */
test('the main job by keyboard alone', async ({ page }) => {
  test.setTimeout(4 * READING_LIMIT_MS);
  // Listened for from the start: a chooser that opens before that is not told of.
  page.on('filechooser', () => undefined);
  const { wheel, stand } = BEFORE.setup;
  await page.goto('/');
  await press(page, page.getByRole('button', { name: 'Understood' }));
  await press(page, page.locator('[data-role="add-wheel"]'));
  await type(page, 'label', 'Rear right');
  await type(page, 'massKg', wheel.massKg);
  await type(page, 'edgeRadiusMm', wheel.edgeRadiusMm);
  await type(page, 'boreDiameterMm', wheel.boreDiameterMm!);
  await type(page, 'pendulumDepthMm', stand.pendulumDepthMm);
  await press(page, page.getByRole('button', { name: 'Middle to weights: assumed' }));
  await press(page, page.locator('.way-up'));
  await expect(nextStep(page)).toHaveText('Sweep');
  // The heading has the focus on a new screen, so that its name is read out first.
  await expect(page.locator('main h1')).toBeFocused();

  await openFilm(page, BEFORE.filmPath);
  await press(page, nextStep(page));

  // The other number of places, by the arrows of the group, and back; then it is stuck on.
  const counts = page.locator('[name="weight-places"]');
  await expect(counts).toHaveCount(2);
  const chosen = () =>
    counts.evaluateAll((all) => all.findIndex((one) => (one as HTMLInputElement).checked));
  const first = await chosen();
  await tabTo(page, counts.nth(first));
  await page.keyboard.press('ArrowRight');
  await expect.poll(chosen).toBe(1 - first);
  await page.keyboard.press('ArrowLeft');
  await expect.poll(chosen).toBe(first);
  await press(page, page.locator('[data-role="stuck-on"]'));
  await expect(nextStep(page)).toHaveText('Sweep to prove it');

  await openFilm(page, CORRECTED.filmPath);
  await press(page, nextStep(page));
  await expect(page.locator('.proof')).toBeVisible();

  // Home again by the way up alone, and from there to the logbook's file.
  await press(page, page.locator('.way-up'));
  await expect(page.locator('.wheel-head')).toBeVisible();
  await press(page, page.locator('.way-up'));
  await press(page, page.locator('main').getByRole('link', { name: /Logbook/ }));
  await tabTo(page, page.locator('[data-role="save-logbook"]'));
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.keyboard.press('Enter'),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.zip$/);
});
