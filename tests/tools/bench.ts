import { spawnSync } from 'node:child_process';
import { loadavg } from 'node:os';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';

import { bandCost } from './speed/bandCost.ts';
import { cameraDrops } from './speed/cameraDrops.ts';
import { browserSpeed } from './speed/browserSpeed.ts';
import { bundledCore } from './speed/bundledCore.ts';
import { coreSpeed } from './speed/coreSpeed.ts';
import { filmSpeeds } from './speed/filmSpeeds.ts';
import { memoryRun } from './speed/memoryRun.ts';

/**
 * Speed and memory of the program on this machine: `npm run bench`; `-- --memory` measures half an hour
 * before a camera instead, `-- --camera` what a camera of 60 pictures a second loses in the browser,
 * `-- --films DIR [name …]` how fast the built app reads a folder's films, those read twice among them.
 * Exit status 1 when slower than asked or when memory grows.
 *
 * What runs under Node decodes with the `ffmpeg` on the path; without it only the browser is timed, and
 * that counts as not kept, since most limits were not looked at.
 */
const flag = { type: 'boolean', default: false } as const;
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { memory: flag, camera: flag, films: { type: 'string' } },
});
const root = resolve(import.meta.dirname, '../..');
const isWhole = !values.memory && !values.camera && values.films === undefined;
/** The built-in film whose first view is farthest off: it is read once all the same, and so as fast. */
const FARTHEST_OFF = 'shed-rear-right';
const kept: boolean[] = [];
console.log(
  `load of the machine: ${loadavg()
    .map((load) => load.toFixed(1))
    .join(', ')}`,
);
if (spawnSync('ffmpeg', ['-version']).status === 0) {
  if (values.memory) kept.push(await memoryRun(await bundledCore()));
  else if (values.camera) kept.push(await cameraDrops(root));
  else if (isWhole) {
    const core = await bundledCore();
    kept.push(await coreSpeed(core), await bandCost(core));
  }
} else {
  console.log('no ffmpeg on the path: the measuring core was NOT TIMED');
  kept.push(false);
}
if (values.films !== undefined) kept.push(await filmSpeeds(root, values.films, positionals));
if (isWhole) {
  kept.push(await browserSpeed(root));
  kept.push(await filmSpeeds(root, resolve(root, 'samples'), [FARTHEST_OFF]));
}
process.exit(kept.every(Boolean) ? 0 : 1);
