import { expect, test, type Page } from '@playwright/test';

import { main, role } from './support.ts';

/**
 * The loop closed in the app: a hidden unbalance, followed by nothing but what the screen says, with
 * the stand as camera and its own hand to turn the wheel. On a machine without a graphics unit the
 * stand draws fewer and smaller pictures; its truth is the same.
 */
const SEEDS = [1, 2, 3];
/** Sweeps before the last look: two, and a trim after the second. */
const SWEEPS = 2;
const MOST_LEFT_G = 2;
/** A turn of 400° by the stand's hand, slow as on a busy machine without a graphics unit. */
const SWEEP_MS = 240_000;

test.describe.configure({ mode: 'serial' });

test('the stand is seen through a stream of its own', async ({ page }) => {
  await page.goto('#/practice');
  const picture = page.locator('.practice-picture video');
  await expect(picture).toBeVisible({ timeout: 60_000 });
  await expect
    .poll(() => picture.evaluate((v: HTMLVideoElement) => v.videoWidth), { timeout: 30_000 })
    .toBeGreaterThanOrEqual(640);
});

for (const seed of SEEDS) {
  // Red as last run: the practice sweep's own tape is not noticed live, so that no sweep ends by itself.
  test.fixme(`seed ${seed}: balanced to ${MOST_LEFT_G} g by following the screen`, async ({
    page,
  }) => {
    test.setTimeout(2 * SWEEP_MS + 120_000);
    await page.goto('#/practice');
    await expect(page.locator('[data-role="practice-choice"]')).toBeVisible({ timeout: 60_000 });
    for (let next = 1; next < seed; next++) {
      await page.locator('[data-role="another-wheel"]').click();
      await expect(page.locator('[data-role="practice-choice"]')).toHaveAttribute(
        'data-seed',
        String(next + 1),
        { timeout: 60_000 },
      );
    }
    for (let sweep = 0; sweep < SWEEPS; sweep++) {
      await readOnce(page);
      // What the screen advises: stick it on, or nothing more.
      const stick = page.locator('[data-role="stick-on"]');
      if ((await stick.count()) === 0) break;
      await stick.click();
    }
    await page.locator('[data-role="show-truth"]').click();
    const left = page.locator('[data-left-g]');
    expect(Number(await left.getAttribute('data-left-g'))).toBeLessThanOrEqual(MOST_LEFT_G);
  });
}

async function readOnce(page: Page): Promise<void> {
  await page.locator('[data-role="practice-read"]').click();
  await expect(main(page, 'sweeping')).toBeVisible();
  await page.locator('[data-role="turn-for-me"]').click();
  await expect(role(page, 'finish-sweep')).toBeVisible();
  await expect(page.locator('[data-role="practice-reading"]')).toBeVisible({ timeout: SWEEP_MS });
}
