import { resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

import { chromium } from '@playwright/test';

import { cameraFilmPath, makeCameraFilm } from '../setup/cameraFilm.ts';
import { fakeCameraFlags } from '../setup/findChromium.ts';
import { launchWith } from '../setup/launchWith.ts';
import { heldBy, MEASURE_AT_ONCE, openLiveView } from '../setup/liveView.ts';
import { sampleSweep } from '../browser/support.ts';
import { buildFresh } from './buildFresh.ts';
import { serveFolder } from './serveFolder.ts';

/** `npm run growth -- [MINUTES]`: what the live view holds, twice a minute, and how it grows. */
const minutes = Number(process.argv[2] ?? 60);
const EVERY_MS = 30_000;

const { filmPath, setup } = sampleSweep('shed-front-left');
const served = await serveFolder(buildFresh(resolve(import.meta.dirname, '../..')));
const browser = await chromium.launch(
  launchWith([...fakeCameraFlags(cameraFilmPath(filmPath)), MEASURE_AT_ONCE]),
);
try {
  await makeCameraFilm(browser, served.url, filmPath);
  const page = await (await browser.newContext({ baseURL: served.url })).newPage();
  await openLiveView(page, setup);
  const startMs = performance.now();
  while (performance.now() - startMs < minutes * 60_000) {
    await pause(EVERY_MS);
    const { scriptsMb, processMb } = await heldBy(browser, page);
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
