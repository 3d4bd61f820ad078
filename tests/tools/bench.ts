import { spawnSync } from 'node:child_process';
import { loadavg } from 'node:os';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';

import { bandCost } from './speed/bandCost.ts';
import { cameraDrops } from './speed/cameraDrops.ts';
import { browserSpeed } from './speed/browserSpeed.ts';
import { bundledCore } from './speed/bundledCore.ts';
import { coreSpeed } from './speed/coreSpeed.ts';
import { memoryRun } from './speed/memoryRun.ts';

/**
 * Speed and memory of the program on this machine: `npm run bench`; `-- --memory` measures half an hour
 * before a camera instead, `-- --camera` what a camera of 60 pictures a second loses in the browser. Exit status 1 when slower than asked or when memory grows.
 *
 * What runs under Node decodes with the `ffmpeg` on the path; without it only the browser is timed, and
 * that counts as not kept, since most limits were not looked at.
 */
const flag = { type: 'boolean', default: false } as const;
const { values } = parseArgs({ options: { memory: flag, camera: flag } });
const root = resolve(import.meta.dirname, '../..');
const kept: boolean[] = [];
console.log(
  `load of the machine: ${loadavg()
    .map((load) => load.toFixed(1))
    .join(', ')}`,
);
if (spawnSync('ffmpeg', ['-version']).status === 0) {
  if (values.memory) kept.push(await memoryRun(await bundledCore()));
  else if (values.camera) kept.push(await cameraDrops(root));
  else {
    const core = await bundledCore();
    kept.push(await coreSpeed(core), await bandCost(core));
  }
} else {
  console.log('no ffmpeg on the path: the measuring core was NOT TIMED');
  kept.push(false);
}
if (!values.memory && !values.camera) kept.push(await browserSpeed(root));
process.exit(kept.every(Boolean) ? 0 : 1);
