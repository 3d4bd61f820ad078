import { expect, test, type Page } from '@playwright/test';

import { cameraFilmPath, makeCameraFilm } from '../setup/cameraFilm.ts';
import { fakeCameraFlags } from '../setup/findChromium.ts';
import { launchWith } from '../setup/launchWith.ts';
import { expectGoesOn, expectSaid } from './faults/said.ts';
import { filmsOnShelf } from './faults/storedRecords.ts';
import { expectProblem, FRONT_LEFT, main, role, startCamera } from './support.ts';

/** The measuring worker before a camera: killed, hung, out of memory; each caused in the worker itself. */
test.use({
  launchOptions: launchWith([
    ...fakeCameraFlags(cameraFilmPath(FRONT_LEFT.filmPath)),
    // So little that it can be filled within seconds; the app takes some 60 MB of it.
    '--js-flags=--max-old-space-size=300',
  ]),
});

test.beforeAll(async ({ browser }, info) => {
  test.setTimeout(180_000);
  await makeCameraFilm(browser, info.project.use.baseURL!, FRONT_LEFT.filmPath);
});

/** A worker that does not answer is given up after ten seconds; looks come twice a second. */
const GIVEN_UP = { timeout: 30_000 };
const RECORDED_PIECES = 3;

async function sweepFor(page: Page): Promise<void> {
  await page.goto('/');
  await startCamera(page, FRONT_LEFT.setup);
  const pieces = async () => (await filmsOnShelf(page))[0]?.pieceCount ?? 0;
  await expect.poll(pieces, { timeout: 40_000 }).toBeGreaterThanOrEqual(RECORDED_PIECES);
}

/** Begun anew by itself, the film so far on the shelf, and a new one beside it. */
async function expectBegunAnew(page: Page): Promise<void> {
  await expectSaid(role(page, 'notice'), 'worker-restarted', GIVEN_UP);
  await expect(main(page, 'sweeping')).toBeVisible();
  await expect.poll(async () => (await filmsOnShelf(page)).length).toBe(2);
  const recorded = (await filmsOnShelf(page)).map(({ pieceCount }) => pieceCount);
  expect(Math.max(...recorded)).toBeGreaterThanOrEqual(RECORDED_PIECES);
}

const breakIn = (page: Page, fault: () => void) => page.workers().at(-1)!.evaluate(fault);
const killed = () => close();
const hung = () =>
  void setTimeout(() => {
    for (;;);
  });
const outOfMemory = () => void setTimeout(() => new ArrayBuffer(Number.MAX_SAFE_INTEGER));

test('killed: it sends no error and no answer, and is found out', async ({ page }) => {
  await sweepFor(page);
  await breakIn(page, killed);
  await expectBegunAnew(page);
});

test('hung: given up, and another takes over', async ({ page }) => {
  await sweepFor(page);
  await breakIn(page, hung);
  await expectBegunAnew(page);
});

test('no memory for what it asks: another takes over; a second time it is said and ends', async ({
  page,
}) => {
  await sweepFor(page);
  await breakIn(page, outOfMemory);
  await expectBegunAnew(page);
  await breakIn(page, outOfMemory);
  await expectProblem(page, 'worker-failed');
  await page.evaluate(() => (location.hash = '#/logbook'));
  await expect(page.locator('[data-role="unfinished-sweeps"] li')).toHaveCount(2);
  // A third worker is there for the next sweep, without a reload.
  await expectGoesOn(page);
  await startCamera(page, FRONT_LEFT.setup);
  await expect(main(page, 'sweeping')).toBeVisible();
});

test('its memory is full, which takes the whole tab along: the film is there in the next one', async ({
  page,
  context,
}) => {
  await sweepFor(page);
  const crashed = page.waitForEvent('crash');
  void breakIn(page, () => {
    const kept: number[][] = [];
    setTimeout(() => {
      for (;;) kept.push(Array.from<number>({ length: 1e5 }).fill(1.5));
    });
  }).catch(() => undefined);
  await crashed;
  const next = await context.newPage();
  await next.goto('/#/logbook');
  await next.locator('[data-role="unfinished-sweeps"]').getByRole('button').first().click();
  await expect(main(next, 'read', 'refused')).toBeVisible({ timeout: 60_000 });
  await expect.poll(async () => (await filmsOnShelf(next))[0]!.entryId).not.toBeNull();
});
