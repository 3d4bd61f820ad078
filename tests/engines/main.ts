import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';

import { buildFresh } from '../tools/buildFresh.ts';
import { scoreReading, type SweepTruth } from '../tools/score.ts';
import { serveFolder } from '../tools/serveFolder.ts';
import type { EnginePage } from './enginePage.ts';
import { ensureEngine, type EngineNeeds } from './ensureEngine.ts';
import { openFirefoxPage } from './firefoxPage.ts';
import { readSampleFilm } from './readSampleFilm.ts';
import { tryLogbook } from './tryLogbook.ts';
import { trySaidLacks } from './trySaidLacks.ts';
import { openWebKitPage } from './webKitPage.ts';

/**
 * The main job from a file, and the logbook, in the engines that Playwright cannot drive here:
 * `npm run engines`. An engine that is not there and cannot be installed is skipped, loudly.
 */
interface Engine extends EngineNeeds {
  readonly name: string;
  readonly open: (port: number) => Promise<EnginePage>;
}

const ENGINES: readonly Engine[] = [
  { name: 'Firefox', open: openFirefoxPage, programs: ['firefox-esr'], packages: ['firefox-esr'] },
  {
    name: 'WebKit',
    open: openWebKitPage,
    programs: ['WebKitWebDriver', 'xvfb-run'],
    // Its films are decoded by GStreamer: without libav there is no H.264.
    packages: ['webkit2gtk-driver', 'xvfb', 'xauth', 'gstreamer1.0-libav'],
  },
];
const FIRST_PORT = Number(process.env.TILTSWEEP_ENGINE_PORT ?? 4180);

const root = resolve(import.meta.dirname, '../..');
const sample = (ending: string) =>
  JSON.parse(readFileSync(resolve(root, `samples/shed-front-left${ending}`), 'utf8')) as unknown;
const truth = sample('.truth.json') as SweepTruth;
const { wheel } = sample('.setup.json') as { wheel: { weightRadiusMm: number } };
const dist = buildFresh(root);
const served = await serveFolder(dist);
const tally = { passed: 0, failed: 0, skipped: 0 };
for (const [place, engine] of ENGINES.entries()) {
  if (!ensureEngine(engine)) {
    console.log(`!! SKIPPED: ${engine.name} is not installed and could not be`);
    tally.skipped += 1;
    continue;
  }
  try {
    console.log(`✓ ${await tryEngine(engine, FIRST_PORT + place)}`);
    tally.passed += 1;
  } catch (error) {
    console.log(`✘ ${engine.name}: ${error instanceof Error ? error.message : String(error)}`);
    tally.failed += 1;
  }
}
served.close();
console.log(`${tally.passed} passed, ${tally.failed} failed, ${tally.skipped} skipped`);
const [report] = process.argv.slice(2);
if (report) writeFileSync(report, JSON.stringify(tally));
process.exit(tally.failed > 0 ? 1 : 0);

async function tryEngine(engine: Engine, port: number): Promise<string> {
  const page = await engine.open(port);
  try {
    await page.goTo(served.url);
    const isolated = await page.run<boolean>('return crossOriginIsolated');
    if (!isolated) throw new Error('the page is not isolated');
    const { reading, problem, place, seconds } = await readSampleFilm(page, dist);
    if (!reading) throw new Error(`no reading: ${problem}`);
    const about = { weightRadiusMm: wheel.weightRadiusMm, seconds, frames: null };
    const score = scoreReading(engine.name, reading, truth, about);
    if (score.status !== 'ok' || !score.withinBounds) throw new Error(JSON.stringify(score));
    if (!/^#\/wheel\/[^/]+\/reading\//.test(place)) throw new Error(`not kept: stands at ${place}`);
    await tryLogbook(page, served.url, place);
    const lacks = await trySaidLacks(page, served.url);
    const told = lacks.length === 0 ? 'lacks nothing' : `lacks and says so: ${lacks.join(', ')}`;
    return `${page.version}: ${JSON.stringify(score)}, kept over reloads, ${told}`;
  } finally {
    await page.close();
  }
}
