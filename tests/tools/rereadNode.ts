import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';

import type { Reading } from '../../src/contract/reading.ts';
import type { CreateSweepReader, SweepResult } from '../../src/contract/sweep.ts';
import { readSweepNode } from './readSweepNode.ts';
import { scoreCrash, scoreReading, scoreTable, type SweepScore } from './score.ts';
import { listSweeps } from './sweepFolder.ts';

/**
 * Reads the sweeps of a folder under Node, with the installed ffmpeg as decoder: quicker to turn
 * round than the browser while the measuring core is worked on. `npm run reread` is what counts.
 *
 *   npx tsx tests/tools/rereadNode.ts DIR [name ...] [--out DIR] [--json FILE]
 *       [--core src/measure/sweepReader.ts] [--first N] [--results]
 *       [--filter FFMPEG_FILTER]
 *
 * --first N stops after N pictures; --filter spoils every film on purpose (`hflip`: mirrored); --results writes NAME.result.json (with the trace) as well.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    out: { type: 'string' },
    json: { type: 'string' },
    core: { type: 'string', default: 'src/measure/sweepReader.ts' },
    first: { type: 'string' },
    filter: { type: 'string' },
    results: { type: 'boolean', default: false },
  },
});
const [folder, ...names] = positionals;
if (!folder) {
  console.error('usage: npx tsx tests/tools/rereadNode.ts DIR [name ...]');
  process.exit(2);
}
const { createSweepReader } = (await import(join(process.cwd(), values.core))) as {
  createSweepReader: CreateSweepReader;
};

const readings = new Map<string, Reading>();
const scores: SweepScore[] = [];
for (const entry of listSweeps(folder, names)) {
  const startedMs = performance.now();
  try {
    const { result, frames, readerMs } = await readSweepNode(entry, {
      createSweepReader,
      readings,
      ...(values.first ? { first: Number(values.first) } : {}),
      ...(values.filter ? { filter: values.filter } : {}),
    });
    const seconds = (performance.now() - startedMs) / 1000;
    readings.set(entry.name, result.reading);
    save(entry.name, result);
    scores.push(
      scoreReading(entry.name, result.reading, entry.truth, {
        weightRadiusMm: entry.weightRadiusMm,
        seconds,
        frames,
      }),
    );
    const perFrame = frames > 0 ? (readerMs / frames).toFixed(1) : '–';
    console.error(`${entry.name}: ${frames} pictures, ${perFrame} ms each in the reader`);
  } catch (error) {
    console.error(error);
    const message = error instanceof Error ? error.message : String(error);
    scores.push(scoreCrash(entry.name, message, (performance.now() - startedMs) / 1000));
  }
}
console.log(scoreTable(scores));
if (values.json) writeFileSync(values.json, `${JSON.stringify(scores, null, 1)}\n`);
process.exit(scores.some((s) => s.status === 'crashed') ? 1 : 0);

function save(name: string, result: SweepResult): void {
  if (!values.out) return;
  mkdirSync(values.out, { recursive: true });
  writeFileSync(
    join(values.out, `${name}.reading.json`),
    `${JSON.stringify(result.reading, null, 1)}\n`,
  );
  if (!values.results) return;
  const plain = (_key: string, v: unknown) =>
    ArrayBuffer.isView(v) ? Array.from(v as Float32Array) : v;
  writeFileSync(join(values.out, `${name}.result.json`), `${JSON.stringify(result, plain)}\n`);
}
