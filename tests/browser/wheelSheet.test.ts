import { expect, test } from '@playwright/test';

import { serveGallery, type ServedGallery } from './gallery/serveGallery.ts';

/** What comes out of the printer: one page a wheel. */

let gallery: ServedGallery;

test.beforeAll(async () => {
  gallery = await serveGallery();
});

test.afterAll(() => gallery.close());

test('a wheel’s page has its drawing, before and after, weights, stand and tablet, and is one page', async ({
  page,
}) => {
  await page.goto(`${gallery.address}?place=logged-wheel`);
  await expect(page.locator('main h1:visible')).toHaveText('Minibus 1');
  await page.emulateMedia({ media: 'print' });
  const sheet = page.locator('.sheet');
  await expect(sheet).toBeVisible();
  await expect(page.locator('.screen-only')).toBeHidden();
  // As it was read before the weights, with them on it.
  const drawing = sheet.locator('.wheel-drawing');
  await expect(drawing).toHaveAttribute('aria-label', /Light spot 8:30\s·\s255°/);
  await expect(drawing).toHaveAttribute('aria-label', /30\sg/);
  await expect(sheet.locator('dd')).toHaveText([/28\.1\sg\s±\s0\.8/, /1\.9\sg\s±\s0\.8/, /30\sg/]);
  for (const value of ['Mass', 'Ball', 'Camera looks down by']) {
    await expect(
      sheet.getByRole('rowheader', { name: value, includeHidden: true }).first(),
    ).toBeVisible();
  }
  const pdf = await page.pdf({ preferCSSPageSize: true });
  const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? [];
  expect(pages).toHaveLength(1);
});
