import { resolve } from 'node:path';

import { expect, test } from '@playwright/test';
import { createServer, type ViteDevServer } from 'vite';

/**
 * The practice stand is drawn two ways from one scene: by WebGL2 in the app, by the processor for
 * films and tests. Served from a folder of its own, so that none of it is in the built app.
 */
let server: ViteDevServer;
let address: string;

test.beforeAll(async () => {
  server = await createServer({
    configFile: false,
    root: resolve(import.meta.dirname, 'stand'),
    cacheDir: resolve(import.meta.dirname, '../../node_modules/.vite-stand'),
    server: { port: 0, fs: { allow: [resolve(import.meta.dirname, '../..')] } },
    logLevel: 'error',
  });
  await server.listen();
  address = server.resolvedUrls!.local[0]!;
});

test.afterAll(async () => {
  await server.close();
});

test('both renderers draw the same picture', async ({ page }) => {
  // A browser without a graphics unit runs the shader on the processor.
  test.setTimeout(240_000);
  await page.goto(address);
  await page.waitForFunction(() => 'compare' in window);
  const apart = await page.evaluate(() =>
    window.compare(
      {
        camera: { widthPx: 320, heightPx: 180, rollDeg: 2 },
        tyre: { lateralRunOut: [{ order: 1, amplitudeMm: 0.5, highAtDeg: 20 }], dust: 0.4 },
        wheel: { weights: [{ massG: 20, angleDeg: -20 }] },
      },
      20,
    ),
  );
  // Steps of 255; rounding and the graphics unit's coarser filter leave about half a step.
  expect(apart.mean).toBeLessThan(1.5);
  // Single sights that pass a cut on the other side.
  expect(apart.farShare).toBeLessThan(0.005);
  expect(apart.linePx).toBeLessThan(0.15);
});
