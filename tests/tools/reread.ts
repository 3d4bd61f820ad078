import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';

import { chromium, type Browser } from '@playwright/test';

import type { Reading } from '../../src/contract/reading.ts';
import ensureBrowser from '../setup/ensureBrowser.ts';
import { launchWith } from '../setup/launchWith.ts';
import { buildFresh } from './buildFresh.ts';
import { readInPage } from './pageSweep.ts';
import { scoreCrash, scoreReading, scoreTable, type SweepScore } from './score.ts';
import { serveFolder } from './serveFolder.ts';
import { listSweeps, type SweepEntry } from './sweepFolder.ts';

/**
 * Reads every sweep of a folder with the built app in headless Chromium, through its own file
 * input, and holds the readings against the truth where that is known:
 *
 *   npm run reread -- DIR [name ...] [--out DIR] [--json FILE]
 *
 * Writes NAME.reading.json into the out folder (a temporary one unless named), never into DIR.
 * Exit status 1 if any sweep crashed.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { out: { type: 'string' }, json: { type: 'string' } },
});
const [folder, ...names] = positionals;
if (!folder) {
  console.error('usage: npm run reread -- DIR [name ...] [--out DIR] [--json FILE]');
  process.exit(2);
}
/** A sweep of a minute and a half on a busy machine takes about as long again; past this it hangs. */
const LIMIT_MS = 600_000;

const root = resolve(import.meta.dirname, '../..');
const out = values.out ?? mkdtempSync(join(tmpdir(), 'tiltsweep-'));
mkdirSync(out, { recursive: true });
const sweeps = listSweeps(resolve(folder), names);
ensureBrowser();
const served = await serveFolder(buildFresh(root));
const browser = await chromium.launch(launchWith());
const readingPaths = new Map<string, string>();
const scores: SweepScore[] = [];
try {
  for (const entry of sweeps) {
    const score = await readSweep(browser, entry);
    scores.push(score);
    console.error(`${score.name}: ${score.status} ${score.why} (${score.seconds.toFixed(1)} s)`);
  }
} finally {
  await browser.close();
  served.close();
}
console.log(scoreTable(scores));
console.log(`readings in ${out}`);
if (values.json) writeFileSync(values.json, `${JSON.stringify(scores, null, 1)}\n`);
process.exit(scores.some((s) => s.status === 'crashed') ? 1 : 0);

async function readSweep(browserNow: Browser, entry: SweepEntry): Promise<SweepScore> {
  // A context of its own each time: no sweep can lean on what another has left behind.
  const context = await browserNow.newContext();
  const startedMs = performance.now();
  const secondsSince = () => (performance.now() - startedMs) / 1000;
  try {
    const page = await context.newPage();
    const crash = new Promise<never>((_, reject) => {
      page.on('crash', () => reject(new Error('the page crashed')));
      page.on('pageerror', (error) => reject(error));
    });
    await page.goto(served.url);
    const earlier = entry.afterSweep === null ? undefined : readingPaths.get(entry.afterSweep);
    const files = [entry.filmPath, entry.setupPath, ...(earlier ? [earlier] : [])];
    const { reading, timing } = await Promise.race([readInPage(page, files, LIMIT_MS), crash]);
    save(entry.name, reading);
    return scoreReading(entry.name, reading, entry.truth, {
      weightRadiusMm: entry.weightRadiusMm,
      seconds: timing?.seconds ?? secondsSince(),
      frames: timing?.pictures ?? null,
    });
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    return scoreCrash(entry.name, message, secondsSince());
  } finally {
    await context.close();
  }
}

function save(name: string, reading: Reading): void {
  const path = join(out, `${name}.reading.json`);
  writeFileSync(path, `${JSON.stringify(reading, null, 1)}\n`);
  readingPaths.set(name, path);
}
