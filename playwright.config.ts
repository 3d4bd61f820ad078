import { defineConfig } from '@playwright/test';

import { launchWith } from './tests/setup/launchWith.ts';

const PORT = 4174;
/** Names an app that is served already, to be tested instead of a fresh build. */
const servedUrl = process.env.TILTSWEEP_URL;

export default defineConfig({
  testDir: 'tests/browser',
  testMatch: '**/*.test.ts',
  globalSetup: './tests/setup/ensureBrowser.ts',
  // One at a time: a sweep that is read uses both cores of a small machine by itself.
  workers: 1,
  fullyParallel: false,
  forbidOnly: !!process.env.CI,
  timeout: 120_000,
  // What a quiet machine shows in one second a busy one shows in ten.
  expect: { timeout: 20_000 },
  reporter: 'list',
  // The same for every system: the letters are (see lookOfScreens.test.ts).
  snapshotPathTemplate: '{testDir}/look/{arg}{ext}',
  use: {
    baseURL: servedUrl ?? `http://localhost:${PORT}/`,
    viewport: { width: 1280, height: 800 },
    launchOptions: launchWith(),
    screenshot: 'only-on-failure',
    // Its own tests let it work: elsewhere it would answer before a test's route can.
    serviceWorkers: 'block',
  },
  ...(servedUrl
    ? {}
    : {
        webServer: {
          command: `npx tsx src/server/main.ts --no-lan --port ${PORT}`,
          url: `http://localhost:${PORT}/`,
          timeout: 120_000,
        },
      }),
});
