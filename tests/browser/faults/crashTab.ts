import type { Page } from '@playwright/test';

/** Ends a tab's process as a browser does that runs out of memory: nothing of the page can run any more. */
export async function crashTab(page: Page): Promise<void> {
  const crashed = page.waitForEvent('crash');
  const devTools = await page.context().newCDPSession(page);
  // Never answered: who would answer is gone.
  void devTools.send('Page.crash').catch(() => undefined);
  await crashed;
}
