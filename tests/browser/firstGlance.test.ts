import { gzipSync } from 'node:zlib';

import { expect, test } from '@playwright/test';

import { main, role } from './support.ts';

/** Asked of the first screen: what a phone network brings in about a second. */
const MOST_FIRST_SCRIPT_BYTES = 180_000;
test('the first screen’s scripts are small, and nothing of the measuring is among them', async ({
  page,
}) => {
  const scripts = new Map<string, number>();
  const asked: string[] = [];
  page.on('response', async (response) => {
    if (response.request().resourceType() !== 'script') return;
    asked.push(response.url());
    scripts.set(response.url(), gzipSync(await response.body()).byteLength);
  });
  await page.goto('/');
  await expect(main(page, 'choosing')).toBeVisible();
  await expect(role(page, 'read-sample')).toBeVisible();
  await page.waitForLoadState('networkidle');
  await expect.poll(() => scripts.size).toBe(new Set(asked).size);
  expect(scripts.size).toBeGreaterThan(0);
  const bytes = [...scripts.values()].reduce((sum, one) => sum + one, 0);
  console.log(`first screen: ${scripts.size} scripts, ${bytes} bytes by gzip`);
  expect(bytes).toBeLessThanOrEqual(MOST_FIRST_SCRIPT_BYTES);
  expect(asked.filter((url) => /worker/i.test(url))).toEqual([]);
});
