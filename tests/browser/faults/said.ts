import { expect, type Locator, type Page } from '@playwright/test';

import type { NoticeCode } from '../../../src/contract/notice.ts';
import { en } from '../../../src/screens/words/en/index.ts';

export interface HowSaid {
  /** True when it happens again: then the other advice is given. */
  readonly again?: boolean;
  readonly timeout?: number;
}

/** A notice stands there in sight, with its reason and what to do, word for word. */
export async function expectSaid(
  notice: Locator,
  code: NoticeCode,
  { again = false, ...patience }: HowSaid = {},
): Promise<void> {
  await expect(notice).toHaveAttribute('data-code', code, patience);
  const { cause, remedy, secondTime } = en.notices[code];
  await expect(notice.locator('.notice-cause')).toHaveText(cause);
  await expect(notice.locator('.notice-remedy')).toHaveText(again ? secondTime : remedy);
  await expect(notice).toBeVisible();
}

/** In the place of a reading stands why there is none and what to do. */
export async function expectRefused(
  page: Page,
  code: NoticeCode,
  { again = false, ...patience }: HowSaid = {},
): Promise<void> {
  const refused = page.locator('.refused');
  await expect(refused).toHaveAttribute('data-code', code, patience);
  const { cause, remedy, secondTime } = en.notices[code];
  await expect(refused.getByRole('heading', { level: 1 })).toHaveText(cause);
  await expect(refused.locator('.instruction')).toHaveText(again ? secondTime : remedy);
}

/** The same page, without having been loaded anew, is ready for the next sweep. */
export async function expectGoesOn(page: Page): Promise<void> {
  await page.evaluate(() => (location.hash = '#/'));
  await expect(page.locator('[data-role="open-camera"]')).toBeVisible();
}
