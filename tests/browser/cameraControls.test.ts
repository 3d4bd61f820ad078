import { expect, test, type Page } from '@playwright/test';

import { fakeCameraFlags } from '../setup/findChromium.ts';
import { launchWith } from '../setup/launchWith.ts';

/** A made-up camera whose exposure and focus can be set by hand; it has no mode that it would change. */
test.use({ launchOptions: launchWith(fakeCameraFlags()) });

async function openPanel(page: Page): Promise<void> {
  await expect(page.locator('main[data-phase="sighting"]')).toBeVisible();
  await page.locator('[data-role="camera-panel"]').click();
  await expect(page.locator('[data-control="focus"]')).toBeVisible();
}

/** An empty shed, a wheel put into it, its sight, the camera's panel. */
async function openPanelOfNewWheel(page: Page): Promise<void> {
  await page.goto('/');
  await page.locator('[data-role="add-wheel"]').click();
  await page.locator('[name="label"]').waitFor();
  const wheelId = (await page.evaluate(() => location.hash)).split('/')[2]!;
  await page.goto(`/#/wheel/${wheelId}/sight`);
  await openPanel(page);
}

/** What the camera itself says of its focus. */
const focusOf = (page: Page) =>
  page.evaluate(() => {
    const stream = document.querySelector('video')!.srcObject as MediaStream;
    const settings = stream.getVideoTracks()[0]!.getSettings() as Record<string, unknown>;
    return [settings['focusMode'], settings['focusDistance']];
  });

test('focus is set by hand, taken by the camera, and set again when it is next opened', async ({
  page,
}) => {
  await openPanelOfNewWheel(page);
  const [, before] = await focusOf(page);
  await page.getByRole('button', { name: 'Focus: more' }).click();
  await expect.poll(() => focusOf(page)).toEqual(['manual', Number(before) + 5]);
  await page.getByRole('button', { name: 'Focus: more' }).click();
  await expect.poll(() => focusOf(page)).toEqual(['manual', Number(before) + 10]);
  await page.reload();
  await openPanel(page);
  await expect.poll(() => focusOf(page)).toEqual(['manual', Number(before) + 10]);
});

/**
 * Zoom as W3C MediaStream Image Capture has it, on a camera that has none: range in the capabilities,
 * value in the settings, set by `applyConstraints`. The picture itself does not grow.
 */
async function standInForZoom(page: Page): Promise<void> {
  await page.addInitScript(() => {
    type Zoomed = MediaStreamTrack & { zoom?: number };
    const track = MediaStreamTrack.prototype;
    const { getCapabilities, getSettings, applyConstraints } = track;
    track.getCapabilities = function () {
      return { ...getCapabilities.call(this), zoom: { min: 1, max: 4, step: 0.1 } };
    };
    track.getSettings = function (this: Zoomed) {
      return { ...getSettings.call(this), zoom: this.zoom ?? 1 };
    };
    track.applyConstraints = async function (this: Zoomed, wish) {
      const [asked] = (wish?.advanced ?? []) as { zoom?: number }[];
      if (asked?.zoom === undefined) return applyConstraints.call(this, wish);
      this.zoom = asked.zoom;
    };
  });
}

const zoomOf = (page: Page) =>
  page.evaluate(() => {
    const stream = document.querySelector('video')!.srcObject as MediaStream;
    return (stream.getVideoTracks()[0]!.getSettings() as { zoom?: number }).zoom;
  });

test('where a camera zooms it is zoomed at the sight, which then looks anew, and again next time', async ({
  page,
}) => {
  await standInForZoom(page);
  await openPanelOfNewWheel(page);
  const slider = page.getByRole('slider', { name: 'Zoom' });
  await expect(slider).toHaveAttribute('aria-valuetext', '0\u00a0%');
  await expect(page.getByRole('button', { name: 'Zoom: less' })).toBeDisabled();
  await page.getByRole('button', { name: 'Zoom: more' }).click();
  await expect.poll(() => zoomOf(page)).toBeCloseTo(1.2, 9);
  // By keyboard as well: to the far end.
  await slider.focus();
  await page.keyboard.press('End');
  await expect.poll(() => zoomOf(page)).toBe(4);
  await expect(page.getByRole('button', { name: 'Zoom: more' })).toBeDisabled();
  await expect(page.locator('main[data-phase="sighting"]')).toBeVisible();
  await page.reload();
  await openPanel(page);
  await expect.poll(() => zoomOf(page)).toBe(4);
});

test('a camera without zoom offers none', async ({ page }) => {
  await openPanelOfNewWheel(page);
  await expect(page.locator('[data-control="zoom"]')).toHaveCount(0);
});

test('the tilt is entered at the sight and kept with the stand', async ({ page }) => {
  await openPanelOfNewWheel(page);
  const tilt = page.locator('[name="downTiltDeg"]');
  await tilt.fill('41');
  await tilt.press('Enter');
  await expect(page.getByRole('button', { name: /looks down by: entered/ })).toBeVisible();
  // The camera goes on without being opened again.
  await expect(page.locator('main[data-phase="sighting"]')).toBeVisible();
  await page.goto('/#/stand');
  await expect(page.locator('[name="downTiltDeg"]')).toHaveValue('41');
});
