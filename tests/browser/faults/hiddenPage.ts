import type { Page } from '@playwright/test';

/**
 * Puts the page out of sight as another app in front does. A browser without a window never hides a
 * page, so what the page is told is put in its place; stopping the camera, as a tablet does then, is
 * the test's own part.
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
