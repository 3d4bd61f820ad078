import { defineConfig } from '@playwright/test';

import { CHROMIUM_FLAGS, findChromium } from './tests/setup/findChromium.ts';

const PORT = 4174;
const executablePath = findChromium();

export default defineConfig({
  testDir: 'tests/browser',
  testMatch: '**/*.test.ts',
  globalSetup: './tests/setup/ensureBrowser.ts',
  // One at a time: a sweep that is read uses both cores of a small machine by itself.
  workers: 1,
  fullyParallel: false,
  forbidOnly: !!process.env.CI,
  timeout: 120_000,
  reporter: 'list',
  use: {
    baseURL: `http://localhost:${PORT}/`,
    viewport: { width: 1280, height: 800 },
    launchOptions: { args: CHROMIUM_FLAGS, ...(executablePath ? { executablePath } : {}) },
    trace: 'retain-on-failure',
  },
  webServer: {
    command: `npx vite build && npx vite preview --port ${PORT} --strictPort`,
    url: `http://localhost:${PORT}/`,
    timeout: 120_000,
  },
});
