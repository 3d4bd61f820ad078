import { createRequire } from 'node:module';
import { dirname } from 'node:path';

import type { Plugin } from 'vite';

import { licenceTrouble, type ShippedPackage } from './licenceTrouble.ts';
import { packageFolder, shippedPackage } from './shippedPackage.ts';

/** Where the list stands in the built folder. */
const LICENCES_FILE = 'licences.json';

/** What build tools put into the bundle of their own, by how the module's name begins. */
const HELPERS: readonly (readonly [RegExp, string])[] = [
  [/^\0?vite\//, 'vite'],
  [/^\0?rolldown\//, 'rolldown'],
];
/** The service worker is made of these after the bundle is written. */
const IN_SERVICE_WORKER = [
  'workbox-core',
  'workbox-precaching',
  'workbox-routing',
  'workbox-strategies',
];

/**
 * Lists name, version, licence and its text of every package whose code ends up in the built app
 * (page, workers, service worker) in `licences.json`, for the app to show. A package that may not be
 * shipped breaks the build. `forWorkers` goes into Vite's `worker.plugins`.
 */
export function licenceList(): { readonly forPage: Plugin; readonly forWorkers: () => Plugin[] } {
  const folders = new Set<string>();
  const collect: Pick<Plugin, 'renderChunk'> = {
    renderChunk(_code, chunk) {
      for (const [id, { renderedLength }] of Object.entries(chunk.modules)) {
        if (renderedLength === 0) continue;
        const helper = HELPERS.find(([beginning]) => beginning.test(id));
        const folder = helper ? installedFolder(helper[1]) : packageFolder(id);
        if (folder !== null) folders.add(folder);
      }
      return null;
    },
  };
  return {
    forWorkers: () => [{ name: 'tiltsweep-licences-of-workers', apply: 'build', ...collect }],
    forPage: {
      name: 'tiltsweep-licences',
      apply: 'build',
      ...collect,
      generateBundle() {
        for (const name of IN_SERVICE_WORKER) folders.add(installedFolder(name));
        const shipped = [...folders].map(shippedPackage).sort(byName);
        for (const one of shipped) {
          const trouble = licenceTrouble(one);
          if (trouble !== null) this.error(`${one.name} must not be shipped: ${trouble}`);
        }
        const source = `${JSON.stringify(shipped, null, 1)}\n`;
        this.emitFile({ type: 'asset', fileName: LICENCES_FILE, source });
      },
    },
  };
}

function installedFolder(name: string): string {
  const require = createRequire(import.meta.url);
  return dirname(require.resolve(`${name}/package.json`));
}

function byName(a: ShippedPackage, b: ShippedPackage): number {
  return a.name.localeCompare(b.name, 'en') || a.version.localeCompare(b.version, 'en');
}
