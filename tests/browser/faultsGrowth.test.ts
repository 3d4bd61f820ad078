import { expect, test } from '@playwright/test';

import { cameraFilmPath, makeCameraFilm } from '../setup/cameraFilm.ts';
import { fakeCameraFlags } from '../setup/findChromium.ts';
import { launchWith } from '../setup/launchWith.ts';
import { heldBy, MEASURE_AT_ONCE, openLiveView } from '../setup/liveView.ts';
import { FRONT_LEFT } from './support.ts';

/** A live view that nobody ends must not grow: `npm run growth` watches it for an hour. */
const flags = [...fakeCameraFlags(cameraFilmPath(FRONT_LEFT.filmPath)), MEASURE_AT_ONCE];
test.use({ launchOptions: launchWith(flags) });

test.beforeAll(async ({ browser }, info) => {
  test.setTimeout(180_000);
  await makeCameraFilm(browser, info.project.use.baseURL!, FRONT_LEFT.filmPath);
});

/** Past the 1500 pictures after which the core begins to forget. */
const SETTLING_MS = 75_000;
const WATCHED_MS = 60_000;
/** Of 1800 pictures in that time; what the core keeps of each would be 59 MB, their pixels 2.5 GB. */
const MOST_GROWTH_MB = 15;
const MOST_PROCESS_GROWTH_MB = 150;

test('a live view of two minutes holds as much at its end as in its middle', async ({
  page,
  browser,
}) => {
  test.setTimeout(300_000);
  await openLiveView(page, FRONT_LEFT.setup);
  await page.waitForTimeout(SETTLING_MS);
  const middle = await heldBy(browser, page);
  await page.waitForTimeout(WATCHED_MS);
  const end = await heldBy(browser, page);
  console.log(`live view: ${JSON.stringify({ middle, end })}`);
  await expect(page.locator('main[data-phase="sighting"]')).toBeVisible();
  expect(end.scriptsMb - middle.scriptsMb).toBeLessThan(MOST_GROWTH_MB);
  // Where the system does not tell, there is nothing to hold.
  if (Number.isFinite(end.processMb)) {
    expect(end.processMb - middle.processMb).toBeLessThan(MOST_PROCESS_GROWTH_MB);
  }
});
