import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

import { describe, expect, it } from 'vitest';

interface LockedPackage {
  readonly integrity?: string;
  readonly resolved?: string;
  readonly link?: boolean;
  readonly hasInstallScript?: boolean;
}

const lock = JSON.parse(
  readFileSync(resolve(import.meta.dirname, '../../../package-lock.json'), 'utf8'),
) as { readonly packages: Readonly<Record<string, LockedPackage>> };
const installed = Object.entries(lock.packages).filter(([path]) => path !== '');

/** Runs code of its own when it is installed: chooses its program for the machine. A build tool only. */
const MAY_RUN_ON_INSTALL = ['node_modules/esbuild'];

/** What can be checked of the dependency tree without asking a registry about known weaknesses. */
describe('locked packages', () => {
  it('are held to their content by a strong hash, each of them', () => {
    expect(installed.length).toBeGreaterThan(100);
    const loose = installed.filter(([, { integrity }]) => !integrity?.startsWith('sha512-'));
    expect(loose.map(([path]) => path)).toEqual([]);
  });

  it('come from the registry alone: no address, no link', () => {
    const elsewhere = installed.filter(([, one]) => one.resolved !== undefined || one.link);
    expect(elsewhere.map(([path]) => path)).toEqual([]);
  });

  it('run nothing on installing, but for those that are known', () => {
    const running = installed.filter(([, one]) => one.hasInstallScript).map(([path]) => path);
    expect(running).toEqual(MAY_RUN_ON_INSTALL);
  });
});
