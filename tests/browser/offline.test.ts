import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

import { expect, test, type Page } from '@playwright/test';

import { places } from '../../src/screens/shell/places.ts';
import { buildFresh } from '../tools/buildFresh.ts';
import { serveFolder } from '../tools/serveFolder.ts';
import { main, role } from './support.ts';
import { watchOffences } from './watchers.ts';

test.use({ serviceWorkers: 'allow' });

const READING_LIMIT_MS = 100_000;
const dist = buildFresh(resolve(import.meta.dirname, '../..'));

/** Opens the app and waits until all of it is kept. */
async function install(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    if (navigator.serviceWorker.controller) return;
    await new Promise((taken) =>
      navigator.serviceWorker.addEventListener('controllerchange', taken, { once: true }),
    );
  });
}

/** The built app with another mark in its page, as a later version of it. */
function laterVersion(folder: string): string {
  cpSync(dist, folder, { recursive: true });
  const page = join(folder, 'index.html');
  writeFileSync(page, readFileSync(page, 'utf8').replace('<html ', '<html data-version="later" '));
  const worker = join(folder, 'sw.js');
  const before = readFileSync(worker, 'utf8');
  const after = before.replace(
    /(\{url:"index\.html",revision:")[^"]+|(\{"revision":")[^"]+(?=","url":"index\.html")/,
    '$1$20123456789abcdef',
  );
  expect(after).not.toBe(before);
  writeFileSync(worker, after);
  return folder;
}

test('once opened, everything works with the network gone', async ({ page, context }) => {
  test.setTimeout(2 * READING_LIMIT_MS);
  const served = await serveFolder(dist);
  const offences = await watchOffences(context, new URL(served.url).origin);
  await install(page, served.url);
  served.close();
  await page.reload();
  await role(page, 'read-sample').click();
  await expect(main(page, 'read', 'ok')).toBeVisible({ timeout: READING_LIMIT_MS });
  await expect(page).toHaveURL(/#\/wheel\/[^/]+\/reading\//);
  const [, wheelId, entryId] = /#\/wheel\/([^/]+)\/reading\/([^/]+)/.exec(page.url())!;
  // Each of them is a script of its own that was never fetched before.
  for (const place of Object.values(places)) {
    await page.goto(
      `${served.url}#${typeof place === 'string' ? place : place(wheelId!, entryId!)}`,
    );
    await page.waitForLoadState('networkidle');
  }
  expect(offences.list).toEqual([]);
  expect(await page.evaluate(() => crossOriginIsolated)).toBe(true);
});

test('a new version waits while a sweep runs, and takes over when told after', async ({
  page,
}, info) => {
  test.setTimeout(2 * READING_LIMIT_MS);
  const first = await serveFolder(dist);
  await install(page, first.url);
  first.close();
  const port = Number(new URL(first.url).port);
  const later = await serveFolder(laterVersion(info.outputPath('later')), port);
  try {
    await role(page, 'read-sample').click();
    await expect(main(page, 'sweeping')).toBeVisible();
    const waits = page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      await registration.update();
      while (registration.waiting === null) await new Promise((on) => setTimeout(on, 20));
    });
    await waits;
    // It came in mid-sweep: nothing is offered, nothing is lost, the sweep comes to its end.
    await expect(main(page, 'sweeping')).toBeVisible();
    await expect(page.locator('[data-role="update-offer"]')).toHaveCount(0);
    await expect(main(page, 'read', 'ok')).toBeVisible({ timeout: READING_LIMIT_MS });
    await expect(page.locator('html')).not.toHaveAttribute('data-version', 'later');
    await page.locator('[data-role="use-update"]').click();
    await expect(page.locator('html')).toHaveAttribute('data-version', 'later');
    await expect(page.locator('[data-role="update-offer"]')).toHaveCount(0);
  } finally {
    later.close();
  }
});

test('a sweep in one tab keeps a new version from taking over in another', async ({
  page,
  context,
}, info) => {
  test.setTimeout(2 * READING_LIMIT_MS);
  const first = await serveFolder(dist);
  await install(page, first.url);
  const other = await context.newPage();
  await other.goto(first.url);
  first.close();
  const port = Number(new URL(first.url).port);
  const later = await serveFolder(laterVersion(info.outputPath('later')), port);
  try {
    await role(page, 'read-sample').click();
    await expect(main(page, 'sweeping')).toBeVisible();
    await other.evaluate(async () => (await navigator.serviceWorker.ready).update());
    const use = other.locator('[data-role="use-update"]');
    await use.click();
    await expect(other.locator('[data-role="update-offer"]')).toContainText(/another tab/);
    await expect(main(page, 'sweeping')).toBeVisible();
    await expect(main(page, 'read', 'ok')).toBeVisible({ timeout: READING_LIMIT_MS });
    await use.click();
    await expect(other.locator('html')).toHaveAttribute('data-version', 'later');
    // The tab with the reading is not taken from under the person: it is offered to open anew.
    await expect(main(page, 'read', 'ok')).toBeVisible();
    await expect(page.locator('[data-role="update-offer"]')).toBeVisible();
  } finally {
    later.close();
  }
});

test('the manifest names an icon for every use, and each is there', async ({ page, baseURL }) => {
  await page.goto('/');
  const href = await page.locator('link[rel="manifest"]').getAttribute('href');
  const manifest = (await (await page.request.get(new URL(href!, baseURL).href)).json()) as {
    name: string;
    icons: { src: string; sizes: string; purpose?: string }[];
  };
  expect(manifest).toMatchObject({ name: 'Tiltsweep', display: 'standalone', start_url: './' });
  expect(manifest.icons.map((icon) => icon.purpose ?? 'any')).toContain('maskable');
  for (const { src, sizes } of manifest.icons) {
    const sizePx = await page.evaluate(async (address) => {
      const image = new Image();
      image.src = address;
      await image.decode();
      return image.naturalWidth;
    }, src);
    if (sizes !== 'any') expect(sizes).toBe(`${sizePx}x${sizePx}`);
  }
});
