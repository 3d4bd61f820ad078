import { readFileSync } from 'node:fs';

import { expect, type Browser, type Page } from '@playwright/test';
import { unzipSync } from 'fflate';

import type { SweepSetup } from '../../../src/contract/setup.ts';

/** The steps of one wheel's job as a person takes them, from the empty shed to the saved logbook. */

/** Types into a field of bench or stand and leaves it: then it counts. */
async function enter(page: Page, name: string, value: number | string): Promise<void> {
  const field = page.locator(`[name="${name}"]`);
  await field.clear();
  await field.fill(String(value));
  await field.press('Tab');
}

/** "Shed" or "wheel": the way up that every screen has. */
export async function goUp(page: Page): Promise<void> {
  await page.locator('.way-up').click();
}

export const nextStep = (page: Page) => page.locator('main [data-role="next-step"]');

/** Shed → stand: what the setup says of laser and camera. */
export async function describeStand(page: Page, setup: SweepSetup): Promise<void> {
  await page
    .locator('main')
    .getByRole('link', { name: /The stand/ })
    .click();
  await enter(page, 'lineAbovePlateMm', setup.stand.lineAbovePlateMm!);
  await enter(page, 'downTiltDeg', setup.camera.downTiltDeg);
  await enter(page, 'horizontalFovDeg', setup.camera.horizontalFovDeg!);
  await goUp(page);
}

/** Shed → a new wheel → its bench, with the measures that a setup file would name. */
export async function measureNewWheel(page: Page, label: string, setup: SweepSetup): Promise<void> {
  await page.locator('[data-role="add-wheel"]').click();
  await enter(page, 'label', label);
  await enter(page, 'massKg', setup.wheel.massKg);
  await enter(page, 'edgeRadiusMm', setup.wheel.edgeRadiusMm);
  await enter(page, 'ring0', setup.wheel.weightRadiusMm);
  await enter(page, 'boreDiameterMm', setup.wheel.boreDiameterMm!);
  await enter(page, 'ballDiameterMm', setup.stand.ballDiameterMm);
  await enter(page, 'pendulumDepthMm', setup.stand.pendulumDepthMm);
  await expect(page.locator('main')).not.toContainText('Must be');
}

/** The reading on the screen: grams and the light spot's angle. */
export async function shownReading(page: Page): Promise<{ amountG: number; lightDeg: number }> {
  const figure = await page.locator('.answer-figure .figure').textContent();
  const light = await page.locator('.spot', { hasText: 'Light spot' }).locator('dd').textContent();
  return { amountG: Number(figure), lightDeg: Number(/·\s(\d+)°/.exec(light!)![1]) };
}

/** On the wheel's screen: writes down a weight that was stuck on without being led. */
export async function noteHandWeight(page: Page, massG: number, angleDeg: number): Promise<void> {
  const drawer = page.locator('details', { hasText: 'Weights put on by hand' }).first();
  if ((await drawer.getAttribute('open')) === null) await drawer.locator('summary').click();
  await enter(page, 'handMass', massG);
  await enter(page, 'handAngle', angleDeg);
  await drawer.locator('[data-role="add-hand-weight"]').click();
  await expect(page.locator('.history-row').first()).toContainText(`${massG}`);
}

/** Shed → logbook → the file with everything. */
export async function savedLogbook(page: Page, role: 'save-logbook' | 'save-with-films') {
  await page.goto('/#/logbook');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.locator(`[data-role="${role}"]`).click(),
  ]);
  return readFileSync(await download.path());
}

/**
 * What a saved logbook holds, films and all. Two things may differ: the moment of saving, and into
 * how many pieces a browser's storage has cut a film.
 */
export function contentsOf(archive: Buffer): Record<string, unknown> {
  const files = unzipSync(new Uint8Array(archive));
  const logbook = JSON.parse(new TextDecoder().decode(files['logbook.json'])) as {
    madeAt?: string;
    films: { pieceCount?: number }[];
  };
  delete logbook.madeAt;
  for (const film of logbook.films) delete film.pieceCount;
  const others = Object.entries(files)
    .filter(([name]) => name !== 'logbook.json')
    .map(([name, bytes]) => [name, Buffer.from(bytes).toString('base64')] as const);
  return { ...Object.fromEntries(others), logbook };
}

/** Brings a saved logbook into a browser that has never seen the app, and shows one place of it. */
export async function inEmptyBrowser(
  browser: Browser,
  archive: Buffer,
  look: (page: Page) => Promise<void>,
): Promise<void> {
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.goto('/#/logbook');
  await expect(page.locator('[data-role="bring-in"]')).toBeAttached();
  await page.locator('[data-role="bring-in"]').setInputFiles({
    name: 'logbook.zip',
    mimeType: 'application/zip',
    buffer: archive,
  });
  await expect(page.locator('[data-role="archive-said"]')).toHaveAttribute('data-kind', 'merged');
  await look(page);
  await context.close();
}
