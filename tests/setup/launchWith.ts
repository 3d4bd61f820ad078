import type { LaunchOptions } from '@playwright/test';

import { CHROMIUM_FLAGS, findChromium } from './findChromium.ts';

/** How the tests start their browser; `flags` come on top of the common ones. */
export function launchWith(flags: readonly string[] = []): LaunchOptions {
  const executablePath = findChromium();
  return {
    args: [...CHROMIUM_FLAGS, ...flags],
    ...(executablePath ? { executablePath } : {}),
  };
}
