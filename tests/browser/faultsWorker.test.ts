import { expect, test, type Page } from '@playwright/test';

import { expectGoesOn, expectSaid } from './faults/said.ts';
import { expectRecordsStand, openWithRecords } from './faults/standingRecords.ts';
import {
  chooseFiles,
  cutFilmFile,
  expectProblem,
  frontLeftSetupFile,
  main,
  role,
} from './support.ts';

/** Gives the measuring worker another script for its first starts. */
async function breakWorker(page: Page, script: string, times: number): Promise<() => number> {
  let starts = 0;
  await page.route('**/measure.worker-*.js', (route) => {
    starts += 1;
    if (starts > times) return route.continue();
    // An isolated page starts only workers that are isolated too.
    const headers = { 'cross-origin-embedder-policy': 'require-corp' };
    return route.fulfill({ contentType: 'text/javascript', headers, body: script });
  });
  await openWithRecords(page);
  await page.goto('/');
  return () => starts;
}

test('a worker that dies is started again, with the reason shown, and the film is read', async ({
  page,
}) => {
  const starts = await breakWorker(page, 'throw new Error("out of memory");', 1);
  await chooseFiles(page, [cutFilmFile(), frontLeftSetupFile()]);
  await expectSaid(role(page, 'notice'), 'worker-restarted');
  await expect(role(page, 'notice')).toContainText('out of memory');
  await expect(main(page, 'read')).toBeVisible({ timeout: 60_000 });
  expect(starts()).toBe(2);
  await expectRecordsStand(page, 1);
});

test('a worker that dies again on the same film is given up with a message', async ({ page }) => {
  const starts = await breakWorker(page, 'throw new Error("out of memory");', 99);
  await chooseFiles(page, [cutFilmFile(), frontLeftSetupFile()]);
  await expectProblem(page, 'worker-failed', /out of memory/);
  expect(starts()).toBe(2);
  await expectRecordsStand(page);
  // The next one starts; no reload is needed for it.
  await page.unrouteAll();
  await expectGoesOn(page);
  await chooseFiles(page, [cutFilmFile(), frontLeftSetupFile()]);
  await expect(main(page, 'read')).toBeVisible({ timeout: 60_000 });
});

test('a worker that hangs is found out and started again', async ({ page }) => {
  // Past the half minute for which a worker may be silent.
  const patience = { timeout: 60_000 };
  await breakWorker(page, 'for (;;);', 1);
  await chooseFiles(page, [cutFilmFile(), frontLeftSetupFile()]);
  await expectSaid(role(page, 'notice'), 'worker-restarted', patience);
  await expect(main(page, 'read')).toBeVisible(patience);
  await expectRecordsStand(page, 1);
});

test('the measuring part cannot be loaded once: loaded again by itself, and the film is read', async ({
  page,
}) => {
  let asked = 0;
  await page.route('**/measure.worker-*.js', (route) =>
    (asked += 1) === 1 ? route.abort() : route.continue(),
  );
  await openWithRecords(page);
  await page.goto('/');
  await chooseFiles(page, [cutFilmFile(), frontLeftSetupFile()]);
  await expect(main(page, 'read')).toBeVisible({ timeout: 60_000 });
  expect(asked).toBe(2);
  await expectRecordsStand(page, 1);
});

test('the measuring part cannot be loaded at all: said with what to do, and the logbook stands', async ({
  page,
}) => {
  await page.route('**/measure.worker-*.js', (route) => route.abort());
  await openWithRecords(page);
  await page.goto('/');
  await chooseFiles(page, [cutFilmFile(), frontLeftSetupFile()]);
  await expectProblem(page, 'worker-failed');
  await expectRecordsStand(page);
});
