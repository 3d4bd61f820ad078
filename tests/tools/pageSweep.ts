import { readFileSync } from 'node:fs';

import type { Page } from '@playwright/test';

import { refusalCodeOf, type SweepNoticeCode } from '../../src/contract/notice.ts';
import type { Reading } from '../../src/contract/reading.ts';
import type { FilmTiming } from '../../workers/readFilm.ts';

export interface PageSweep {
  readonly reading: Reading;
  /** Null when the film was not read to its end. */
  readonly timing: FilmTiming | null;
}

const MAIN = 'main[data-phase]';

/** Gives the open page's own file input a sweep's files and waits for what comes of it. */
export async function readInPage(page: Page, files: string[], limitMs: number): Promise<PageSweep> {
  await page.locator('input[type=file][data-role="sweep-files"]').setInputFiles(files);
  const problem = page.locator('[data-role="problem"]');
  const read = page.locator(`${MAIN}[data-phase="read"]`);
  await read.or(problem).first().waitFor({ state: 'attached', timeout: limitMs });
  if ((await read.count()) === 0) return { reading: await problemAsReading(page), timing: null };
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 30_000 }),
    page.locator('[data-role="download-reading"]').click(),
  ]);
  const reading = JSON.parse(readFileSync(await download.path(), 'utf8')) as Reading;
  return { reading, timing: await filmTiming(page) };
}

/** What was refused before a picture was looked at has no reading to download: it is made here. */
async function problemAsReading(page: Page): Promise<Reading> {
  const problem = page.locator('[data-role="problem"]').first();
  const code = (await problem.getAttribute('data-code')) as SweepNoticeCode;
  const message = (await problem.innerText()).replace(/\s+/g, ' ').trim();
  return {
    format: 'tiltsweep.reading/1',
    status: 'refused',
    refusals: [{ code: refusalCodeOf(code), message, remedy: '', evidence: { code } }],
    turn: null,
  };
}

async function filmTiming(page: Page): Promise<FilmTiming | null> {
  return page.evaluate(() => {
    const last = performance.getEntriesByName('tiltsweep.film').at(-1) as
      | PerformanceMeasure
      | undefined;
    return (last?.detail as FilmTiming | undefined) ?? null;
  });
}
