import type { Page } from '@playwright/test';

/** A tablet lying and upright, and a phone. */
export const SIZES = {
  tablet: { width: 1280, height: 800 },
  upright: { width: 820, height: 1180 },
  phone: { width: 390, height: 844 },
};

/** Sets what the app remembers of a person's choices, before the page is opened. */
export const prefer = (page: Page, key: string, value: unknown) =>
  page.addInitScript(
    ([name, text]) => localStorage.setItem(`tiltsweep.${name}`, text!),
    [key, JSON.stringify(value)],
  );
