import { writeFileSync } from 'node:fs';

import { expect, test, type Page } from '@playwright/test';

import { createLogbookFile } from '../fakes/largeLogbook.ts';
import { entriesOfLogbook } from './faults/storedRecords.ts';

/**
 * 2,000 wheels and 10,000 sweeps, each with its trace: list, search, open and export. The 95th
 * percentile of repeated runs is held against the second that was asked for. An export works all of
 * its time, so on a machine that others use it is held by the processor's time, not by the clock's.
 */
const RUNS = 12;
const LIMIT_MS = 1000;

/** Bringing it in takes some seconds, several times that on a machine that others use. */
const BROUGHT_IN = { timeout: 120_000 };
const said = (page: Page) => page.locator('[data-role="archive-said"]');

async function largeLogbookFile(path: string): Promise<string> {
  writeFileSync(path, await createLogbookFile(2000, 10_000));
  return path;
}

test('a logbook of 2,000 wheels and 10,000 sweeps is listed, searched and opened quickly', async ({
  page,
}, info) => {
  test.setTimeout(300_000);
  const path = await largeLogbookFile(info.outputPath('logbook.zip'));
  await page.goto('/#/logbook');
  const worked = await workedMsOf(page);
  const startMs = performance.now();
  await page.locator('[data-role="bring-in"]').setInputFiles(path);
  await expect(said(page)).toHaveAttribute('data-kind', 'merged', BROUGHT_IN);
  const byClockS = ((performance.now() - startMs) / 1000).toFixed(1);
  console.log(`brought in: ${byClockS} s, the page at work ${Math.round(await worked())} ms`);
  const times: Record<string, number[]> = {
    list: [],
    search: [],
    open: [],
    export: [],
    exportByClock: [],
  };
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

test('bringing in so much shows how far it is; stopped in its midst, nothing is in', async ({
  page,
}, info) => {
  test.setTimeout(300_000);
  const path = await largeLogbookFile(info.outputPath('logbook.zip'));
  await page.goto('/#/logbook');
  await page.locator('[data-role="bring-in"]').setInputFiles(path);
  const seen = await page.evaluate(async () => {
    const bar = () => document.querySelector<HTMLProgressElement>('.logbook-bringing progress');
    const seen: number[] = [];
    // Past the checking: records are on their way into storage.
    while ((seen.at(-1) ?? 0) < 0.5) {
      await new Promise(requestAnimationFrame);
      const value = bar()?.value ?? 0;
      if (value !== seen.at(-1)) seen.push(value);
    }
    document.querySelector<HTMLElement>('[data-role="stop-bringing-in"]')!.click();
    return seen;
  });
  expect(seen.length).toBeGreaterThan(5);
  expect([...seen].sort((a, b) => a - b)).toEqual(seen);
  await expect(said(page)).toHaveAttribute('data-kind', 'stopped', BROUGHT_IN);
  await expect(page.locator('.logbook-line')).toHaveCount(0);
  expect(await entriesOfLogbook(page)).toEqual([]);
  // Nor is anything held in the page, to be stored later on.
  await expect(page.locator('[data-role="storage-notice"]')).toHaveCount(0);
  await page.reload();
  await expect(page.locator('[data-role="bring-in"]')).toBeEnabled();
  expect(await entriesOfLogbook(page)).toEqual([]);
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

/** Until the file is there to be taken; it is not taken, since Chromium cancels the eleventh download of a page. */
async function exportMs(page: Page): Promise<number> {
  return page.evaluate(async () => {
    let isOffered = false;
    const click = HTMLAnchorElement.prototype.click;
    HTMLAnchorElement.prototype.click = function () {
      isOffered = this.href.startsWith('blob:') && this.download !== '';
      HTMLAnchorElement.prototype.click = click;
    };
    const startMs = performance.now();
    const said = document.querySelector('[data-role="archive-said"]')!;
    document.querySelector<HTMLElement>('[data-role="save-logbook"]')!.click();
    do await new Promise(requestAnimationFrame);
    while (said.getAttribute('data-kind') === 'working');
    const tookMs = performance.now() - startMs;
    if (!isOffered) throw new Error('no file was offered');
    return tookMs;
  });
}

function percentile95(list: readonly number[]): number {
  return [...list].sort((a, b) => a - b)[Math.ceil(0.95 * list.length) - 1]!;
}
