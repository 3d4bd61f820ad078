import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

import { chromium, type Browser, type Page } from '@playwright/test';

import ensureBrowser from '../setup/ensureBrowser.ts';
import { launchWith } from '../setup/launchWith.ts';
import { heldBy, MEASURE_AT_ONCE, peakMb } from '../setup/liveView.ts';
import { sampleSweep } from '../browser/support.ts';
import { buildFresh } from './buildFresh.ts';
import { readInPage } from './pageSweep.ts';
import { serveFolder } from './serveFolder.ts';

/**
 * `npm run heavy`: films that are too much, made of the built-in sample with the `ffmpeg` on the
 * path, read by the built app in Chromium: how long it takes, what it holds, what it says. Exit
 * status 1 if one takes the page along, is neither read nor refused in words, or needs too much.
 */
const FILMS = {
  'twenty minutes': ['-t', '1200', '-c', 'copy'],
  '3840×2160': ['-vf', 'scale=3840:2160', ...fast()],
  '240 a second': ['-vf', 'fps=240', ...fast()],
} as const;
/** The sample is half a minute: so often it is put end to end where a film is longer. */
const LOOPS = 40;
/** Above this a tablet with 3 GB closes the tab. */
const MOST_PROCESS_MB = 1500;
/** The slowest of them takes a few minutes on a busy machine with two cores; past this it hangs. */
const LIMIT_MS = 1_800_000;
const EVERY_MS = 5000;

const { filmPath, setupPath } = sampleSweep('shed-front-left');
const folder = mkdtempSync(join(tmpdir(), 'tiltsweep-heavy-'));
ensureBrowser();
const served = await serveFolder(buildFresh(resolve(import.meta.dirname, '../..')));
const browser = await chromium.launch(launchWith([MEASURE_AT_ONCE]));
let isFine = true;
try {
  for (const [name, how] of Object.entries(FILMS)) {
    const path = makeFilm(name, how);
    isFine = (await readHeavy(browser, name, path)) && isFine;
  }
} finally {
  await browser.close();
  served.close();
  rmSync(folder, { recursive: true });
}
process.exit(isFine ? 0 : 1);

function fast(): string[] {
  return ['-c:v', 'libx264', '-preset', 'ultrafast', '-crf', '28'];
}

function makeFilm(name: string, how: readonly string[]): string {
  const path = join(folder, `${name.replace(/\W+/g, '-')}.mp4`);
  const loop = how.includes('-t') ? ['-stream_loop', String(LOOPS)] : [];
  const made = spawnSync('ffmpeg', ['-v', 'error', ...loop, '-i', filmPath, ...how, path]);
  if (made.status !== 0) throw new Error(`ffmpeg: ${made.stderr?.toString() ?? made.error}`);
  return path;
}

async function readHeavy(browserNow: Browser, name: string, path: string): Promise<boolean> {
  const context = await browserNow.newContext();
  const page = await context.newPage();
  const crash = new Promise<never>((_, reject) => {
    page.on('crash', () => reject(new Error('the page crashed')));
    page.on('pageerror', (error) => reject(error));
  });
  const startMs = performance.now();
  let isOver = false;
  try {
    await page.goto(served.url);
    const watched = watch(page, () => isOver);
    const read = readInPage(page, [path, setupPath], LIMIT_MS);
    const { reading, timing } = await Promise.race([read, crash]);
    isOver = true;
    const { scriptsMb } = await watched;
    const processMb = await peakMb(browserNow);
    const seconds = (performance.now() - startMs) / 1000;
    const codes = reading.status === 'refused' ? reading.refusals.map(({ code }) => code) : [];
    console.log(
      `${name}: ${reading.status} ${codes.join(', ')}\n` +
        `  ${seconds.toFixed(0)} s, ${timing?.pictures ?? 'no'} pictures measured, ` +
        `${timing?.passes ?? 0} passes, ${timing?.filmS.toFixed(0) ?? 0} s of film\n` +
        `  at most: page and worker ${scriptsMb.toFixed(0)} MB, its process ${processMb.toFixed(0)} MB\n` +
        `  said: ${await saidBy(page)}`,
    );
    return !(processMb > MOST_PROCESS_MB);
  } catch (error) {
    console.log(`${name}: ${error instanceof Error ? error.message : String(error)}`);
    return false;
  } finally {
    isOver = true;
    await context.close();
  }
}

/** The most that page and worker were seen to hold until it is over. */
async function watch(page: Page, isOver: () => boolean): Promise<{ scriptsMb: number }> {
  let scriptsMb = 0;
  while (!isOver()) {
    await pause(EVERY_MS);
    const held = await heldBy(browser, page).catch(() => null);
    scriptsMb = Math.max(scriptsMb, held?.scriptsMb ?? 0);
  }
  return { scriptsMb };
}

async function saidBy(page: Page): Promise<string> {
  const said = page.locator('[data-role="notice"], [data-role="problem"], main h1');
  return (await said.allInnerTexts()).join(' | ').replace(/\s+/g, ' ');
}
