import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';

import type { Reading } from '../../src/contract/reading.ts';
import { readStageTruth } from './stages/frameTruth.ts';
import { openSweep } from './stages/openedSweep.ts';
import { stageShares } from './stages/stageAblation.ts';
import { stageErrors } from './stages/stageErrors.ts';
import { stageSvg } from './stages/stageSvg.ts';
import { stageReport, stageTables, type StageReport } from './stages/stageTable.ts';
import { listSweeps } from './sweepFolder.ts';

/**
 * Where the error of a reading comes from, stage by stage, on rendered sweeps whose truth is known
 * picture by picture.
 *
 *   npm run stages -- DIR [name ...] [--out DIR]
 *
 * Prints two tables; with --out also writes stages.json and NAME.stages.svg. Films are decoded by
 * the installed ffmpeg and read under Node by the program's own core; the truth is opened here only.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { out: { type: 'string' } },
});
const [folder, ...names] = positionals;
if (!folder) {
  console.error('usage: npm run stages -- DIR [name ...] [--out DIR]');
  process.exit(2);
}
if (values.out) mkdirSync(values.out, { recursive: true });

const readings = new Map<string, Reading>();
const reports: StageReport[] = [];
for (const entry of listSweeps(folder, names)) {
  const truth = entry.truth && readStageTruth(entry.setupPath.replace('.setup.', '.truth.'));
  const before = entry.afterSweep === null ? undefined : readings.get(entry.afterSweep);
  const earlier = before?.status === 'ok' ? before : undefined;
  const { reading, inside } = await openSweep(entry, earlier);
  readings.set(entry.name, reading);
  const { recording, geometry, solved } = inside;
  if (!truth || !recording || !geometry || !solved) {
    const codes = reading.refusals.map((r) => r.code).join(' ');
    console.error(`${entry.name}: ${truth ? `nothing fitted ${codes}` : 'no truth by picture'}`);
    continue;
  }
  const errors = stageErrors(recording, geometry, solved, truth);
  const shares = stageShares(recording, geometry, solved, errors, truth);
  reports.push(stageReport(entry.name, geometry, solved, truth, errors, shares));
  if (values.out)
    writeFileSync(join(values.out, `${entry.name}.stages.svg`), stageSvg(entry.name, errors));
  console.error(`${entry.name}: done`);
}
if (reports.length > 0) console.log(stageTables(reports));
if (values.out)
  writeFileSync(join(values.out, 'stages.json'), `${JSON.stringify(reports, null, 1)}\n`);
