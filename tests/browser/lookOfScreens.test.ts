import { expect, test, type Page } from '@playwright/test';

import { openConnectPage } from './gallery/connectPages.ts';
import { serveGallery, type ServedGallery } from './gallery/serveGallery.ts';
import { GALLERY_LIVE } from './gallery/states.ts';

/**
 * Every screen as it is meant to look, at the two tablet sizes, light and dark: the pictures beside
 * this file are the reference. Data and clock stand still; what a camera draws is masked. Made anew by `npm run look`, then looked at.
 */
const SIZES = {
  landscape: { width: 1280, height: 800 },
  portrait: { width: 820, height: 1180 },
} as const;

/** One of each: what differs only in its figures is left to the tests of the screens. */
const STATES = ['choosing', 'sweeping-following', 'sweeping-film', 'refused'];
const PLACES = [
  'shed',
  'wheel-new',
  'wheel-proved',
  'bench',
  'stand',
  'reading',
  'weights',
  'proof',
  'proof-to-trim',
  'by-eye',
  'practice',
  'logbook',
  'logged-wheel',
  'film-setup',
  'settings',
  'help',
];
const BEFORE_A_CAMERA = ['sight-dark', 'sight-ready', 'lead-turn', 'lead-here'];

/** The gallery's query for each screen. */
const SCREENS: Readonly<Record<string, string>> = {
  ...Object.fromEntries(STATES.map((state) => [state, `state=${state}`])),
  ...Object.fromEntries(PLACES.map((place) => [place, `place=${place}`])),
  ...Object.fromEntries(
    BEFORE_A_CAMERA.map((name) => {
      const { place, state } = GALLERY_LIVE[name]!;
      return [name, `place=${place}&state=${state}`];
    }),
  ),
  'update-offer': 'place=shed&update',
};

/**
 * Share of a picture's points that may differ: a thousandth is 1,024 of 1280 × 800. Edges of letters
 * between two builds of one browser stay far below it; a button of the smallest size that moves by
 * its own height changes four times as many.
 */
const MOST_DIFFERENT = 0.001;

let gallery: ServedGallery;

test.beforeAll(async () => {
  gallery = await serveGallery();
});

test.afterAll(() => gallery.close());

/**
 * The letters of the reference are DejaVu Sans, which comes with Debian's Chromium. Where it is not
 * installed every line breaks elsewhere, and the pictures say nothing.
 */
async function hasReferenceLetters(page: Page): Promise<boolean> {
  return page.evaluate(() => {
    const context = document.createElement('canvas').getContext('2d')!;
    const widthIn = (letters: string) => {
      context.font = `100px ${letters}`;
      return context.measureText('Stick 30 g on at 8:30').width;
    };
    // The advance widths of its own tables, added up.
    return Math.abs(widthIn('"DejaVu Sans", monospace') - 1042.6) < 1;
  });
}

for (const [size, viewport] of Object.entries(SIZES)) {
  for (const colorScheme of ['light', 'dark'] as const) {
    test.describe(`${size}, ${colorScheme}`, () => {
      test.use({ viewport, colorScheme, locale: 'en-GB', timezoneId: 'UTC' });

      test.beforeEach(async ({ page }) => {
        await page.emulateMedia({ reducedMotion: 'reduce' });
        await page.clock.setFixedTime(new Date('2026-04-04T10:00:00Z'));
        test.skip(!(await hasReferenceLetters(page)), 'DejaVu Sans is not installed');
      });

      for (const [name, query] of Object.entries(SCREENS)) {
        test(name, async ({ page }) => {
          await page.goto(`${gallery.address}?${query}`);
          await page.addStyleTag({ content: ':root { --letters: "DejaVu Sans" }' });
          // The practice stand first times how fast it is drawn; always the wheel of seed 1, masked.
          await expect(page.locator('main h1').first()).toBeAttached({ timeout: 60_000 });
          await page.waitForLoadState('networkidle');
          await expect(page).toHaveScreenshot(`${name}-${size}-${colorScheme}.png`, {
            animations: 'disabled',
            maxDiffPixelRatio: MOST_DIFFERENT,
            mask: [page.locator('video, canvas')],
            maskColor: '#808080',
            timeout: 60_000,
          });
        });
      }

      test('connect', async ({ page }) => {
        await openConnectPage(page, 'en');
        await expect(page).toHaveScreenshot(`connect-${size}-${colorScheme}.png`, {
          animations: 'disabled',
          maxDiffPixelRatio: MOST_DIFFERENT,
        });
      });
    });
  }
}

test('a button that moves by less than half its height is noticed', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce', colorScheme: 'light' });
  await page.setViewportSize(SIZES.landscape);
  test.skip(!(await hasReferenceLetters(page)), 'DejaVu Sans is not installed');
  await page.goto(`${gallery.address}?place=weights`);
  const stuck = page.locator('[data-role="stuck-on"]');
  await expect(stuck).toBeVisible();
  await page.addStyleTag({
    content:
      ':root { --letters: "DejaVu Sans" } [data-role="stuck-on"] { transform: translateY(24px) }',
  });
  await expect(page).not.toHaveScreenshot('weights-landscape-light.png', {
    animations: 'disabled',
    maxDiffPixelRatio: MOST_DIFFERENT,
    timeout: 15_000,
  });
});
