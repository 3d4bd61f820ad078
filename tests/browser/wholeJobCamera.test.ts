import { copyFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { expect, test, type Page } from '@playwright/test';

import { shortWayDeg } from '../../src/quantities/angle.ts';
import { makeCameraFilm, withLeadIn } from '../setup/cameraFilm.ts';
import { fakeCameraFlags } from '../setup/findChromium.ts';
import { launchWith } from '../setup/launchWith.ts';
import { foreignRequests, main, sampleSweep } from './support.ts';
import {
  contentsOf,
  describeStand,
  goUp,
  inEmptyBrowser,
  measureNewWheel,
  nextStep,
  noteHandWeight,
  savedLogbook,
  shownReading,
} from './wholeJob/steps.ts';

const BEFORE = sampleSweep('shed-rear-right');
const CORRECTED = sampleSweep('shed-rear-right-corrected');

/** The browser opens this file anew with each camera: what lies there then is what it sees. */
const inCamera = join(tmpdir(), `tiltsweep-whole-job-${process.pid}.mjpeg`);
const ready = {
  before: join(tmpdir(), `tiltsweep-whole-job-${process.pid}-before.mjpeg`),
  corrected: join(tmpdir(), `tiltsweep-whole-job-${process.pid}-corrected.mjpeg`),
};
/** Time to find line and edge and to press the button, before the hand begins to turn. */
const LEAD_IN_S = 12;
/** Lead-in, a film of half a minute, and the fit. */
const SWEEP_LIMIT_MS = 150_000;
/** Lead-in, and the turn until the tape has come by. */
const LEAD_LIMIT_MS = 60_000;
const MOST_OFF_G = 1.5;
const MOST_OFF_DEG = 3;

test.use({ launchOptions: launchWith(fakeCameraFlags(inCamera)) });

test.beforeAll(async ({ browser }, info) => {
  test.setTimeout(300_000);
  for (const [name, sweep] of [
    ['before', BEFORE],
    ['corrected', CORRECTED],
  ] as const) {
    await makeCameraFilm(browser, info.project.use.baseURL!, sweep.filmPath);
    withLeadIn(sweep.filmPath, LEAD_IN_S, ready[name]);
  }
});

test.afterAll(() => {
  for (const path of [inCamera, ready.before, ready.corrected]) rmSync(path, { force: true });
});

/** At the sight: waits until all is good, then sweeps to the reading. */
async function sweepFromSight(page: Page): Promise<void> {
  await expect(page.locator('.sight-list')).toBeVisible({ timeout: 60_000 });
  await expect(page.locator('.sight-list [data-state="not-yet"]')).toHaveCount(0, {
    timeout: 60_000,
  });
  await page.locator('[data-role="begin-sweep"]').click();
  await expect(main(page, 'sweeping')).toBeVisible();
  await expect(main(page, 'read', 'ok')).toBeVisible({ timeout: SWEEP_LIMIT_MS });
}

/**
 * Answers "done" to each weight of the plan. The same film before a camera reads a little different
 * each time, by which pictures come in time: some readings are served by one weight, some by two.
 */
async function stickAllOn(page: Page): Promise<void> {
  const place = page.locator('.lead-mark');
  const [, total] = /^Weight 1 of (\d)/.exec((await place.textContent())!)!;
  for (let weight = 1; weight <= Number(total); weight++) {
    await expect(place).toContainText(`Weight ${weight} of ${total}`);
    await page.locator('[data-role="weight-done"]').click();
  }
  await expect(page.locator('[data-role="prove"]')).toBeVisible();
}

/**
 * One wheel before a made-up camera, step by step as the screens lead: bench, sight, sweep, reading,
 * weights, the hand led, proof, logbook with its films, and the same in an empty browser.
 */
test('the whole job before a camera, and the same from the saved logbook', async ({
  page,
  browser,
}) => {
  test.setTimeout(3 * SWEEP_LIMIT_MS + LEAD_LIMIT_MS);
  const foreign = foreignRequests(page);
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));

  await page.goto('/');
  await page.getByRole('button', { name: 'Understood' }).click();
  await describeStand(page, BEFORE.setup);
  await measureNewWheel(page, 'Rear right', BEFORE.setup);

  copyFileSync(ready.before, inCamera);
  await page.locator('[data-role="to-sight"]').click();
  await sweepFromSight(page);
  const radiusMm = BEFORE.setup.wheel.weightRadiusMm;
  const { unbalance } = BEFORE.truth;
  const read = await shownReading(page);
  expect(Math.abs(read.amountG - unbalance!.amountGmm / radiusMm)).toBeLessThan(MOST_OFF_G);
  expect(Math.abs(shortWayDeg(read.lightDeg, unbalance!.lightSpotDeg))).toBeLessThan(MOST_OFF_DEG);

  // The hand is led, and the weight noted; this person then takes it off again.
  await page.locator('[data-role="lead"]').click();
  await expect(page.locator('.live[data-mode="lead"][data-source="turn"]')).toBeVisible({
    timeout: LEAD_LIMIT_MS,
  });
  await stickAllOn(page);
  await goUp(page);
  await expect(nextStep(page)).toHaveText('Sweep to prove it');
  await page.getByRole('button', { name: /^Take back: Put on/ }).click();
  await expect(nextStep(page)).toHaveText('Stick weights on');
  for (const { massG, angleDeg } of CORRECTED.setup.after!.added) {
    await noteHandWeight(page, massG, angleDeg);
  }

  copyFileSync(ready.corrected, inCamera);
  await nextStep(page).click();
  // A check sweep leads to its verdict by itself.
  await sweepFromSight(page);
  await expect(page.locator('.proof[data-verdict="pass"]')).toBeVisible();
  await expect(page.locator('.proof')).toContainText('measured with these weights');
  const left = Number(await page.locator('.proof-left .figure').textContent());
  const trulyLeft = CORRECTED.truth.unbalance!.amountGmm / radiusMm;
  expect(Math.abs(left - trulyLeft)).toBeLessThan(MOST_OFF_G);
  const proofPlace = new URL(page.url()).hash;
  const proofText = await page.locator('.proof').innerText();

  const archive = await savedLogbook(page, 'save-with-films');
  const saved = contentsOf(archive);
  // Both sweeps were filmed: each can be read again from its film.
  expect(Object.keys(saved).filter((name) => name.startsWith('films/'))).toHaveLength(2);
  await inEmptyBrowser(browser, archive, async (other) => {
    await other.goto(`/${proofPlace}`);
    await expect(other.locator('.proof')).toBeVisible();
    expect(await other.locator('.proof').innerText()).toBe(proofText);
    expect(contentsOf(await savedLogbook(other, 'save-with-films'))).toEqual(saved);
  });
  expect(foreign).toEqual([]);
  expect(errors).toEqual([]);
});
