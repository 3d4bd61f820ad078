import { resolve } from 'node:path';

import { chromium, type Browser } from '@playwright/test';

import ensureBrowser from '../../setup/ensureBrowser.ts';
import { launchWith } from '../../setup/launchWith.ts';
import { buildFresh } from '../buildFresh.ts';
import { readInPage } from '../pageSweep.ts';
import { serveFolder } from '../serveFolder.ts';
import { listSweeps, type SweepEntry } from '../sweepFolder.ts';
import { LEAST_TIMES_REAL_TIME, READ_LIMIT_MS } from './browserSpeed.ts';

const RUNS = 3;

/**
 * How fast the built app reads the films of a folder, best of three by the clock: above all those that
 * are read twice, which the built-in sample is not. Whether all fast enough. A check sweep is left out:
 * without the reading of the one before it nothing is read.
 */
export async function filmSpeeds(
  root: string,
  folder: string,
  names: readonly string[],
): Promise<boolean> {
  const films = listSweeps(resolve(folder), names).filter((entry) => entry.afterSweep === null);
  ensureBrowser();
  const served = await serveFolder(buildFresh(root));
  const browser = await chromium.launch(launchWith());
  let kept = films.length > 0;
  try {
    for (const film of films) kept = (await isReadFast(browser, served.url, film)) && kept;
  } finally {
    await browser.close();
    served.close();
  }
  return kept;
}

async function isReadFast(browser: Browser, url: string, film: SweepEntry): Promise<boolean> {
  let best = 0;
  let told = 'not read to its end';
  for (let run = 1; run <= RUNS; run++) {
    const page = await browser.newPage();
    await page.goto(url);
    const { timing } = await readInPage(page, [film.filmPath, film.setupPath], READ_LIMIT_MS);
    await page.close();
    if (!timing || timing.filmS / timing.seconds < best) continue;
    const { pictures, passes, measuringS, filmS, seconds } = timing;
    best = filmS / seconds;
    told =
      `${pictures} pictures, ${passes} times through, ${seconds.toFixed(1)} s (${measuringS.toFixed(1)} in the ` +
      `measuring core), ${best.toFixed(1)} times real time`;
  }
  const kept = best >= LEAST_TIMES_REAL_TIME;
  console.log(
    `${film.name}: ${told} (at least ${LEAST_TIMES_REAL_TIME} asked): ${kept ? 'kept' : 'NOT KEPT'}`,
  );
  return kept;
}
