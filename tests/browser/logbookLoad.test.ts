import { expect, test, type Page } from '@playwright/test';

import { createLogbookFile } from '../fakes/largeLogbook.ts';
import { fileOf } from './support.ts';

/**
 * 2,000 wheels and 10,000 sweeps, each with its trace: list, search, open and export. The 95th
 * percentile of repeated runs is held against the second that was asked for. An export works all of
 * its time, so on a machine that others use it is held by the processor's time, not by the clock's.
 */
const RUNS = 12;
const LIMIT_MS = 1000;

test('a logbook of 2,000 wheels and 10,000 sweeps is listed, searched and opened quickly', async ({
  page,
}) => {
  test.setTimeout(300_000);
  await page.goto('/#/logbook');
  await page
    .locator('[data-role="bring-in"]')
    .setInputFiles(
      fileOf('logbook.zip', Buffer.from(await createLogbookFile(2000, 10_000)), 'application/zip'),
    );
  await expect(page.locator('[data-role="archive-said"]')).toHaveAttribute('data-kind', 'merged', {
    timeout: 120_000,
  });
  const times: Record<string, number[]> = {
    list: [],
    search: [],
    open: [],
    export: [],
    exportByClock: [],
  };
  const worked = await workedMsOf(page);
  for (let i = 0; i < RUNS; i++) {
    await page.evaluate(() => (location.hash = '#/help'));
    await expect(page.locator('.logbook')).toHaveCount(0);
    times['list']!.push(await until(page, "location.hash = '#/logbook'", '.logbook-line'));
    times['search']!.push(await search(page, `wheel ${1000 + i}`));
    times['open']!.push(
      await until(
        page,
        "document.querySelector('.logbook-line').click()",
        '[data-role="timeline"] > li',
      ),
    );
    await page.evaluate(() => (location.hash = '#/logbook'));
    await expect(page.locator('.logbook-line')).toHaveCount(40);
    const beforeMs = await worked();
    times['exportByClock']!.push(await exportMs(page));
    times['export']!.push((await worked()) - beforeMs);
  }
  const p95 = Object.fromEntries(
    Object.entries(times).map(([name, list]) => [name, Math.round(percentile95(list))]),
  );
  console.log(`2,000 wheels, 10,000 sweeps, p95 ms: ${JSON.stringify(p95)}`);
  for (const name of ['list', 'search', 'open', 'export']) {
    expect(p95[name], name).toBeLessThan(LIMIT_MS);
  }
});

/** The processor's time that the page itself has taken so far, ms. */
async function workedMsOf(page: Page): Promise<() => Promise<number>> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  return async () => {
    const { metrics } = await session.send('Performance.getMetrics');
    return 1000 * metrics.find(({ name }) => name === 'ThreadTime')!.value;
  };
}

/** Milliseconds from the step until the element is drawn. */
function until(page: Page, step: string, selector: string): Promise<number> {
  return page.evaluate(
    async ([step, selector]) => {
      const startMs = performance.now();
      // oxlint-disable-next-line no-eval -- a step of this test itself
      (0, eval)(step!);
      while (document.querySelector(selector!) === null) await new Promise(requestAnimationFrame);
      await new Promise(requestAnimationFrame);
      return performance.now() - startMs;
    },
    [step, selector] as const,
  );
}

async function search(page: Page, name: string): Promise<number> {
  return page.evaluate(async (name) => {
    const input = document.querySelector<HTMLInputElement>('input[type=search]')!;
    const startMs = performance.now();
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!.call(input, name);
    input.dispatchEvent(new Event('input', { bubbles: true }));
    const isFound = () => {
      const lines = document.querySelectorAll('.logbook-line');
      return lines.length === 1 && lines[0]!.textContent.includes(name);
    };
    while (!isFound()) await new Promise(requestAnimationFrame);
    return performance.now() - startMs;
  }, name);
}

async function exportMs(page: Page): Promise<number> {
  const [download, ms] = await Promise.all([
    page.waitForEvent('download'),
    page.evaluate(async () => {
      const startMs = performance.now();
      const said = document.querySelector('[data-role="archive-said"]')!;
      document.querySelector<HTMLElement>('[data-role="save-logbook"]')!.click();
      do await new Promise(requestAnimationFrame);
      while (said.getAttribute('data-kind') === 'working');
      return performance.now() - startMs;
    }),
  ]);
  await download.delete();
  return ms;
}

function percentile95(list: readonly number[]): number {
  return [...list].sort((a, b) => a - b)[Math.ceil(0.95 * list.length) - 1]!;
}
