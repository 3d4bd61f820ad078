import { readFileSync } from 'node:fs';

import { AxeBuilder } from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';

import { serveGallery, type ServedGallery } from './gallery/serveGallery.ts';
import { GALLERY_STATES } from './gallery/states.ts';
import { tooSmallToTouch } from './gallery/tooSmallToTouch.ts';

/**
 * The screens alone, in each state, without a session behind them: what a person sees and can
 * reach. Screens that show the logbook are in `shedScreens.test.ts`.
 */
const TABLET = { width: 1280, height: 800 };
const UPRIGHT = { width: 820, height: 1180 };
const PHONE = { width: 390, height: 844 };

let gallery: ServedGallery;

test.beforeAll(async () => {
  gallery = await serveGallery();
});

test.afterAll(() => gallery.close());

async function open(page: Page, state: string): Promise<void> {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.goto(`${gallery.address}?state=${state}`);
  await expect(page.locator('main')).toBeVisible();
}

const asked = (page: Page) => page.evaluate(() => window.asked);

test('axe finds nothing on any screen, light or dark', async ({ page }) => {
  test.setTimeout(240_000);
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    for (const state of Object.keys(GALLERY_STATES)) {
      await open(page, state);
      const axe = new AxeBuilder({ page });
      // Only the colours differ on the dark screen.
      if (colorScheme === 'dark') axe.withRules(['color-contrast']);
      expect((await axe.analyze()).violations, `${state}, ${colorScheme}`).toEqual([]);
    }
    await open(page, 'choosing');
    await page.click('[data-role="open-camera"]');
    await page.fill('[name="wheel.massKg"]', '800');
    await page.click('[data-role="start-sweep"]');
    const found = await new AxeBuilder({ page }).analyze();
    expect(found.violations, `setup form, ${colorScheme}`).toEqual([]);
  }
});

for (const [name, viewport] of Object.entries({ TABLET, UPRIGHT, PHONE })) {
  test(`nothing is cut off sideways and all that is touched is large enough: ${name}`, async ({
    page,
  }) => {
    test.setTimeout(120_000);
    await page.setViewportSize(viewport);
    for (const state of Object.keys(GALLERY_STATES)) {
      await open(page, state);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(wide, state).toBeLessThanOrEqual(0);
      expect(await tooSmallToTouch(page), state).toEqual([]);
    }
  });
}

test('on a tablet the figure, the place and the next step are seen without scrolling, in large letters', async ({
  page,
}) => {
  for (const viewport of [TABLET, UPRIGHT]) {
    await page.setViewportSize(viewport);
    for (const state of ['read-usual', 'read-balanced', 'read-large']) {
      await open(page, state);
      for (const [part, leastPx] of [
        ['.figure', 96],
        ['.answer-where', 34],
        ['.instruction', 34],
        ['.spots dd', 22],
      ] as const) {
        const place = page.locator(part).first();
        const box = await place.boundingBox();
        expect(box!.y + box!.height, `${state} ${part}`).toBeLessThanOrEqual(viewport.height);
        const sizePx = await place.evaluate((one) =>
          Number.parseFloat(getComputedStyle(one).fontSize),
        );
        expect(sizePx, `${state} ${part}`).toBeGreaterThanOrEqual(leastPx);
      }
      const wheel = await page.locator('.wheel-drawing').boundingBox();
      expect(wheel!.y + wheel!.height, state).toBeLessThanOrEqual(viewport.height);
    }
  }
});

test('on a tablet a sweep fits the screen: picture, ring and buttons', async ({ page }) => {
  for (const viewport of [TABLET, UPRIGHT]) {
    await page.setViewportSize(viewport);
    for (const state of [
      'sweeping-following',
      'sweeping-lost',
      'sweeping-enough',
      'sweeping-film',
    ]) {
      await open(page, state);
      for (const part of ['.picture-frame', '.turn-ring', '[data-role="stop"]', '.instruction']) {
        const box = await page.locator(part).boundingBox();
        expect(box!.y + box!.height, `${state} ${part}`).toBeLessThanOrEqual(viewport.height);
      }
    }
  }
});

test('a refused sweep shows no figure of the wheel, and says what to do', async ({ page }) => {
  for (const state of ['refused', 'refused-film']) {
    await open(page, state);
    await expect(page.locator('main[data-phase="read"][data-status="refused"]')).toBeVisible();
    const text = await page.locator('main').innerText();
    expect(text).not.toMatch(/\d\s*(g|oz)\b/);
    expect(text).not.toMatch(/\d:\d\d/);
    await expect(page.getByRole('button', { name: 'Sweep again' })).toBeVisible();
  }
});

test('a reading changes to ounces and back, and the choice is remembered', async ({ page }) => {
  await open(page, 'read-usual');
  await expect(page.locator('h1')).toContainText('28.1 g');
  await page.getByRole('link', { name: 'Settings' }).click();
  await page.getByRole('radio', { name: /inch and pound/ }).check({ force: true });
  await page.goBack();
  await expect(page.locator('h1')).toHaveText('0.99 oz ± 0.03', { useInnerText: false });
  await page.reload();
  await expect(page.locator('h1')).toContainText('0.99 oz');
  await expect(page.locator('main')).not.toContainText(/\d\s?g\b/);
});

test('the reading is saved under the wheel’s name, unchanged', async ({ page }) => {
  await open(page, 'read-usual');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.click('[data-role="download-reading"]'),
  ]);
  expect(download.suggestedFilename()).toBe('minibus-front-left.reading.json');
  const saved: unknown = JSON.parse(readFileSync(await download.path(), 'utf8'));
  const shown = GALLERY_STATES['read-usual']!;
  expect(saved).toEqual(shown.phase === 'read' && shown.result.reading);
});

test('the whole start is done by keyboard alone', async ({ page }) => {
  await open(page, 'choosing');
  const focused = () =>
    page.evaluate(
      () =>
        document.activeElement?.getAttribute('data-role') ?? document.activeElement?.textContent,
    );
  const order: unknown[] = [];
  for (let i = 0; i < 11; i++) {
    await page.keyboard.press('Tab');
    order.push(await focused());
  }
  // Sound, help and settings of the header come first.
  expect(order.slice(3)).toEqual([
    'add-wheel',
    expect.stringContaining('Practise'),
    'read-sample',
    'sweep-files',
    'open-camera',
    expect.stringContaining('The stand'),
    expect.stringContaining('Logbook'),
    'Understood',
  ]);
  await page.keyboard.press('Enter');
  await expect(page.getByText('Before you start')).toHaveCount(0);
  await page.locator('[data-role="read-sample"]').focus();
  await page.keyboard.press('Space');
  expect(await asked(page)).toEqual(['readSample']);
});

test('the camera form: wrong values are named, right ones start, both are remembered', async ({
  page,
}) => {
  await open(page, 'choosing');
  await page.click('[data-role="open-camera"]');
  await page.fill('[name="wheel.massKg"]', '800');
  await page.fill('[name="stand.pendulumDepthMm"]', '');
  await page.click('[data-role="start-sweep"]');
  await expect(page.getByText('Must be 80 kg or less.')).toBeVisible();
  await expect(page.locator('[name="wheel.massKg"]')).toBeFocused();
  expect(await asked(page)).toEqual([]);
  await page.fill('[name="wheel.massKg"]', '17,5');
  await page.fill('[name="stand.pendulumDepthMm"]', '8.4');
  await page.click('[data-role="start-sweep"]');
  const [started] = await asked(page);
  const setup: unknown = JSON.parse(started!.replace('startCamera ', ''));
  expect(setup).toMatchObject({ wheel: { massKg: 17.5 }, stand: { pendulumDepthMm: 8.4 } });
  await page.reload();
  await expect(page.locator('[name="wheel.massKg"]')).toHaveValue('17,5');
  await expect(page.getByRole('button', { name: /^Mass: known/ })).toBeVisible();
  await expect(page.getByRole('button', { name: /^Centre to tread edge: assumed/ })).toBeVisible();
});

test('a film without a setup file asks for the setup, then goes to be read with it', async ({
  page,
}) => {
  await open(page, 'choosing');
  const film = Buffer.concat([Buffer.from([0, 0, 0, 32]), Buffer.from('ftypisom')]);
  await page
    .locator('input[type=file][multiple][data-role="sweep-files"]')
    .setInputFiles([{ name: 'rear.mp4', mimeType: 'video/mp4', buffer: film }]);
  await expect(page.locator('[data-form="film"]')).toContainText('rear.mp4');
  await page.getByRole('button', { name: 'Read the film' }).click();
  await expect.poll(() => asked(page)).toEqual(['readFiles rear.mp4 rear.setup.json']);
});

test('what was assumed is said with the reading', async ({ page }) => {
  await open(page, 'choosing');
  await page.click('[data-role="open-camera"]');
  await page.getByRole('button', { name: /^Mass: assumed/ }).click();
  await page.click('[data-role="start-sweep"]');
  await page.evaluate(() => window.showState('read-usual'));
  const warnings = page.locator('.warnings');
  await expect(warnings).toContainText('depth of the mass');
  await expect(warnings).not.toContainText('Assumed, not measured: mass,');
});

test('advice changes when the same thing is refused again', async ({ page }) => {
  await open(page, 'sweeping-following');
  await page.evaluate(() => window.showState('refused'));
  const advice = page.locator('.instruction');
  await expect(advice).toHaveText(/Sweep again: turn the wheel slowly/);
  await page.evaluate(() => window.showState('sweeping-following'));
  await page.evaluate(() => window.showState('refused'));
  await expect(advice).toHaveText(/Start with the tape just before the sight/);
});

test('events are shown as words, and the sound goes off by one touch', async ({ page }) => {
  await open(page, 'sweeping-looking');
  await expect(page.getByRole('status')).toHaveText('Too dark: turn on a lamp');
  await page.evaluate(() => window.showState('sweeping-following'));
  await expect(page.locator('.sweep-event')).toHaveText('Line and edge found');
  await page.evaluate(() => window.showState('sweeping-lost'));
  await expect(page.locator('.sweep-event')).toHaveText('Out of sight');
  await page.getByRole('button', { name: 'Sound on' }).click();
  await expect(page.getByRole('button', { name: 'Sound off' })).toBeVisible();
});
