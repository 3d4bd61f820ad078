import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

import { build } from 'vite';

import type * as CoreEntry from './coreEntry.ts';

export type BundledCore = typeof CoreEntry;

/**
 * The measuring core bundled as the app bundles it, names kept: what loads sources one by one wraps
 * each function and looks every import up at each use, which is of no interest to a user.
 */
export async function bundledCore(): Promise<BundledCore> {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    build: {
      ...{ write: false, minify: false, target: 'es2022' },
      lib: {
        entry: resolve(import.meta.dirname, 'coreEntry.ts'),
        formats: ['es'],
        fileName: 'core',
      },
    },
  });
  const output = Array.isArray(built) ? built[0] : built;
  if (!output || !('output' in output)) throw new Error('the bundle was not built');
  const file = join(mkdtempSync(join(tmpdir(), 'tiltsweep-core-')), 'core.mjs');
  writeFileSync(file, output.output[0].code);
  return (await import(pathToFileURL(file).href)) as BundledCore;
}
