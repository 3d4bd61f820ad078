import type { Page } from '@playwright/test';

/** Smallest side of anything that a glove has to hit, px. */
const LEAST_TOUCH_PX = 56;

/** Everything to be touched that is too small for a glove, told by its words and its size. */
export function tooSmallToTouch(page: Page): Promise<string[]> {
  return page
    .locator('button, a[href], input:not([type=file]), select, summary, label.way')
    .evaluateAll(
      (elements, leastPx) =>
        elements
          .map((element) => ({ box: element.getBoundingClientRect(), text: element.textContent }))
          // What lies in a closed drawer has no box.
          .filter(({ box }) => box.width > 0 && (box.width < leastPx || box.height < leastPx))
          .map(({ box, text }) => `${text} ${box.width}×${box.height}`),
      LEAST_TOUCH_PX,
    );
}
