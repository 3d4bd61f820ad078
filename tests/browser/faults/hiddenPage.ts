import type { Page } from '@playwright/test';

/**
 * Tells the page that it is out of sight, and no more: for what only hangs on being told. Where pages
 * are truly hidden, drawn no more and slowed, is `hideablePage`.
 */
export const hidePage = (page: Page) => setVisibility(page, 'hidden');
export const showPage = (page: Page) => setVisibility(page, 'visible');

async function setVisibility(page: Page, state: DocumentVisibilityState): Promise<void> {
  await page.evaluate((state) => {
    const told = (value: unknown) => ({ configurable: true, get: () => value });
    Object.defineProperty(document, 'visibilityState', told(state));
    Object.defineProperty(document, 'hidden', told(state === 'hidden'));
    document.dispatchEvent(new Event('visibilitychange', { bubbles: true }));
  }, state);
}
