import { resolve } from 'node:path';

import { chromium, type Browser } from '@playwright/test';

import ensureBrowser from '../../setup/ensureBrowser.ts';
import { launchWith } from '../../setup/launchWith.ts';
import { buildFresh } from '../buildFresh.ts';
import { readInPage } from '../pageSweep.ts';
import { serveFolder } from '../serveFolder.ts';

/** A film of half a minute is read in six seconds. */
export const LEAST_TIMES_REAL_TIME = 5;
/** From the page's opening, with nothing fetched before, to the reading of the sample. */
const MOST_OPEN_TO_READING_S = 10;
const RUNS = 3;
export const READ_LIMIT_MS = 300_000;

/**
 * How fast the built app reads the built-in sweep (1280×720) in headless Chromium, through its own
 * file input, and how long a person waits from opening the app to the reading of the sample, by the
 * clock; whether fast enough. Decoding goes on in threads of the browser's own. A
 * browser does not tell the time that its worker had of the processor: on a busy machine this says little.
 */
export async function browserSpeed(root: string): Promise<boolean> {
  const film = resolve(root, 'samples/shed-front-left');
  ensureBrowser();
  const served = await serveFolder(buildFresh(root));
  const browser = await chromium.launch(launchWith());
  let best = 0;
  let openingS = Infinity;
  try {
    for (let run = 1; run <= RUNS; run++) {
      const page = await browser.newPage();
      await page.goto(served.url);
      const files = [`${film}.mp4`, `${film}.setup.json`];
      const { timing } = await readInPage(page, files, READ_LIMIT_MS);
      await page.close();
      openingS = Math.min(openingS, await secondsToFirstReading(browser, served.url));
      if (!timing) throw new Error('the sample was not read to its end');
      const { pictures, passes, measuringS, filmS, seconds } = timing;
      const perPictureMs = (1000 * measuringS) / (pictures * passes);
      best = Math.max(best, filmS / seconds);
      console.log(
        `run ${run}: ${pictures} pictures of 1280×720, ${passes} times through, in ${seconds.toFixed(1)} s: ` +
          `${(filmS / seconds).toFixed(1)} times real time; ${perPictureMs.toFixed(1)} ms a picture in the measuring core`,
      );
    }
  } finally {
    await browser.close();
    served.close();
  }
  const kept = best >= LEAST_TIMES_REAL_TIME && openingS < MOST_OPEN_TO_READING_S;
  console.log(
    `best: ${best.toFixed(1)} times real time (at least ${LEAST_TIMES_REAL_TIME} asked), ` +
      `${openingS.toFixed(1)} s from opening to reading (under ${MOST_OPEN_TO_READING_S} asked): ` +
      (kept ? 'kept' : 'NOT KEPT'),
  );
  return kept;
}

/** In a browser context of its own: no file of the app is there yet. */
async function secondsToFirstReading(browser: Browser, url: string): Promise<number> {
  const context = await browser.newContext();
  const page = await context.newPage();
  const startMs = performance.now();
  await page.goto(url);
  await page.locator('[data-role="read-sample"]').click();
  await page
    .locator('main[data-phase="read"][data-status="ok"]')
    .waitFor({ timeout: READ_LIMIT_MS });
  const tookS = (performance.now() - startMs) / 1000;
  await context.close();
  return tookS;
}
