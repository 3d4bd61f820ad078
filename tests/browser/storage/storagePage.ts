import { resolve } from 'node:path';

import { expect, type Page } from '@playwright/test';
import { createServer, type ViteDevServer } from 'vite';

/** Serves the storage layer by itself, outside of the built app. */
export async function serveStorage(): Promise<{ server: ViteDevServer; address: string }> {
  const server = await createServer({
    configFile: false,
    root: import.meta.dirname,
    cacheDir: resolve(import.meta.dirname, '../../../node_modules/.vite-storage'),
    server: { port: 0, fs: { allow: [resolve(import.meta.dirname, '../../..')] } },
    // Named beforehand: a package found late would reload the page in mid-test.
    optimizeDeps: { include: ['idb', 'valibot', 'fflate', 'mediabunny'] },
    logLevel: 'error',
  });
  await server.listen();
  return { server, address: server.resolvedUrls!.local[0]! };
}

export async function openStorage(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await expect.poll(() => page.evaluate(() => 'storageParts' in window)).toBe(true);
}
