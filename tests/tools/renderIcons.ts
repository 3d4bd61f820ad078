import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

import { chromium } from '@playwright/test';

import ensureBrowser from '../setup/ensureBrowser.ts';
import { launchWith } from '../setup/launchWith.ts';

/**
 * Draws the pictures that an installed app needs from `src/install/icon.svg`: `npm run icons`, after
 * a change of the drawing.
 */
interface Picture {
  readonly name: string;
  readonly sizePx: number;
  /** Share of the edge that the drawing takes; the rest is its ground. Masks cut a fifth off. */
  readonly share: number;
}

const PICTURES: readonly Picture[] = [
  { name: 'icon-192.png', sizePx: 192, share: 1 },
  { name: 'icon-512.png', sizePx: 512, share: 1 },
  { name: 'icon-maskable-512.png', sizePx: 512, share: 0.8 },
  // Tablets that round the corners by themselves want no clear corners.
  { name: 'apple-touch-icon.png', sizePx: 180, share: 0.9 },
];
const GROUND = '#1b1c1d';

const folder = resolve(import.meta.dirname, '../../src/install');
const drawing = readFileSync(resolve(folder, 'icon.svg')).toString('base64');
ensureBrowser();
const browser = await chromium.launch(launchWith());
const page = await browser.newPage();
for (const { name, sizePx, share } of PICTURES) {
  await page.setViewportSize({ width: sizePx, height: sizePx });
  const ground = share < 1 ? GROUND : 'transparent';
  await page.setContent(
    `<body style="margin:0;background:${ground};display:grid;place-items:center;height:100vh">` +
      `<img width="${sizePx * share}" src="data:image/svg+xml;base64,${drawing}">`,
  );
  await page.locator('img').evaluate((image: HTMLImageElement) => image.decode());
  await page.screenshot({ path: resolve(folder, name), omitBackground: true });
}
await browser.close();
