import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';

import { readSetup, type TurnSense } from '../../src/contract/setup.ts';
import { createSweepReader } from '../../src/measure/sweepReader.ts';
import { readSweepNode } from './readSweepNode.ts';
import { scoreCrash, scoreReading, scoreTable, type SweepScore } from './score.ts';
import { listSweeps, type SweepEntry } from './sweepFolder.ts';
import { factsOfFilm, makeFilm } from './troubles/makeFilm.ts';
import type { TroubledPlan } from './troubles/trouble.ts';
import { toldTroubles, troubledPlan } from './troubles/troubledPlan.ts';
import { troubledSetup, troubledTruth } from './troubles/troubledSides.ts';

/**
 * `npm run troubles -- DIR --from N --count M --out D [--again]`: for each seed one film of DIR, which
 * has a truth and is not to be refused, gets two to four troubles by lot, is written to D with setup
 * and truth, and read by the core under Node. With --again the films that are in D already are only
 * read. Exit status 1 if a reading crashed, is one that should not be, or is beside its own region.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    from: { type: 'string', default: '1' },
    count: { type: 'string', default: '10' },
    out: { type: 'string' },
    again: { type: 'boolean', default: false },
  },
});
const [folder] = positionals;
const out = values.out;
if (!folder || !out) {
  console.error('usage: npm run troubles -- DIR --from N --count M --out D [--again]');
  process.exit(2);
}
mkdirSync(out, { recursive: true });
const sources = listSweeps(folder).filter((entry) => entry.truth?.shouldRefuse === false);
const facts = sources.map(({ name, filmPath }) => factsOfFilm(name, filmPath));

const scores: SweepScore[] = [];
const from = Number(values.from);
for (let seed = from; seed < from + Number(values.count); seed++) {
  const plan = troubledPlan(seed, facts);
  const name = `seed-${seed}`;
  if (!values.again) makeSweep(plan, name, out);
  const score = await readScored(listSweeps(out, [name])[0]);
  scores.push(score);
  console.log(`${told(score)}\n    ${seed} ${plan.film.name}: ${toldTroubles(plan)}`);
}
console.log(`\n${scoreTable(scores)}\n${summary()}`);
process.exit(scores.some(isWrong) ? 1 : 0);

/** Film, setup and truth of one seed. */
function makeSweep(plan: TroubledPlan, name: string, into: string): void {
  const source = sources.find((entry) => entry.name === plan.film.name)!;
  const setup = readSetup(source.setupJson);
  if (!setup.ok || !source.truth) throw new Error(`${source.name}: no readable setup or no truth`);
  const { sense } = source.truth as { readonly sense?: TurnSense };
  makeFilm(plan, source.filmPath, join(into, `${name}.mp4`), into);
  const write = (kind: string, value: object) =>
    writeFileSync(join(into, `${name}.${kind}.json`), `${JSON.stringify(value, null, 1)}\n`);
  write('setup', troubledSetup(plan, setup.value, sense));
  write('truth', troubledTruth(plan, source.truth));
}

async function readScored(entry: SweepEntry): Promise<SweepScore> {
  const startedMs = performance.now();
  const seconds = () => (performance.now() - startedMs) / 1000;
  try {
    const { result, frames } = await readSweepNode(entry, {
      createSweepReader,
      readings: new Map(),
    });
    const { weightRadiusMm, name, truth } = entry;
    const path = join(out!, `${name}.reading.json`);
    writeFileSync(path, `${JSON.stringify(result.reading, null, 1)}\n`);
    const run = { weightRadiusMm, seconds: seconds(), frames };
    return scoreReading(name, result.reading, truth, run);
  } catch (error) {
    console.error(error);
    const message = error instanceof Error ? error.message : String(error);
    return scoreCrash(entry.name, message, seconds());
  }
}

function told(score: SweepScore): string {
  const { name, status, why, trueG, vectorErrorG, claimedG, regionHolds, withinBounds } = score;
  if (status !== 'ok') {
    const right = withinBounds ? 'as it should be' : status === 'refused' ? 'though readable' : '';
    return `${name}: ${status} ${why} ${right}`;
  }
  const figures = `error ${vectorErrorG?.toFixed(2) ?? '–'} g ± ${claimedG?.toFixed(2)} of ${trueG?.toFixed(1)} g`;
  const region = regionHolds === null ? why : regionHolds ? 'inside' : 'OUTSIDE its region';
  return `${name}: ok, ${figures}, ${region}`;
}

/** What must never be: a crash, a figure of a spoilt film, a truth beside the region. */
function isWrong({ status, withinBounds, vectorErrorG, regionHolds }: SweepScore): boolean {
  if (status === 'refused') return false;
  const spoilt = status === 'ok' && vectorErrorG === null && withinBounds === false;
  return status === 'crashed' || spoilt || regionHolds === false;
}

function summary(): string {
  const errors = scores.flatMap((s) => (s.vectorErrorG === null ? [] : [s.vectorErrorG]));
  errors.sort((a, b) => a - b);
  const share = (q: number) => (errors[Math.floor(q * (errors.length - 1))] ?? NaN).toFixed(2);
  const refused = scores.filter((s) => s.status === 'refused');
  const rightly = refused.filter((s) => s.withinBounds === true).length;
  return (
    `${scores.length} films: ${errors.length} read, error g median ${share(0.5)} 90 % ${share(0.9)} worst ${share(1)}; ` +
    `refused ${rightly} rightly, ${refused.length - rightly} though readable; wrong ${scores.filter(isWrong).length}`
  );
}
