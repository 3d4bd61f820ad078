import { resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

import { chromium } from '@playwright/test';

import { cameraFilmPath, makeCameraFilm } from '../setup/cameraFilm.ts';
import { fakeCameraFlags } from '../setup/findChromium.ts';
import { launchWith } from '../setup/launchWith.ts';
import { heldBy, MEASURE_AT_ONCE, openLiveView } from '../setup/liveView.ts';
import { sampleSweep } from '../browser/support.ts';
import { buildFresh } from './buildFresh.ts';
import { growthVerdict, type HeldAt } from './growthVerdict.ts';
import { serveFolder } from './serveFolder.ts';

/**
 * `npm run growth -- [MINUTES]`: what the live view holds, twice a minute; exit status 1 when it grows,
 * ends by itself, or was not watched for long enough to tell.
 */
const minutes = Number(process.argv[2] ?? 60);
const EVERY_MS = 30_000;

const { filmPath, setup } = sampleSweep('shed-front-left');
const served = await serveFolder(buildFresh(resolve(import.meta.dirname, '../..')));
const browser = await chromium.launch(
  launchWith([...fakeCameraFlags(cameraFilmPath(filmPath)), MEASURE_AT_ONCE]),
);
const held: HeldAt[] = [];
try {
  await makeCameraFilm(browser, served.url, filmPath);
  const page = await (await browser.newContext({ baseURL: served.url })).newPage();
  await openLiveView(page, setup);
  const startMs = performance.now();
  while (performance.now() - startMs < minutes * 60_000) {
    await pause(EVERY_MS);
    const { scriptsMb, processMb } = await heldBy(browser, page);
    held.push({ atS: (performance.now() - startMs) / 1000, scriptsMb, processMb });
    const said = await page.locator('[role="status"].instruction').first().innerText();
    const atS = ((performance.now() - startMs) / 1000).toFixed(0);
    console.log(
      `${atS.padStart(5)} s  scripts ${scriptsMb.toFixed(1)} MB  process ${processMb.toFixed(0)} MB  ${said}`,
    );
  }
} finally {
  await browser.close();
  served.close();
}
const { isFine, words } = growthVerdict(held);
console.log(words);
process.exitCode = isFine ? 0 : 1;
