import { setTimeout as pause } from 'node:timers/promises';

import type { Browser } from '@playwright/test';

/** Stops every page of this browser, workers and all, as a machine that sleeps does, and wakes it. */
export async function sleepFor(browser: Browser, ms: number): Promise<void> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  const pages = processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => id);
  const tellAll = (signal: 'SIGSTOP' | 'SIGCONT') => {
    for (const id of pages) process.kill(id, signal);
  };
  tellAll('SIGSTOP');
  try {
    await pause(ms);
  } finally {
    tellAll('SIGCONT');
  }
}
