import { spawnSync } from 'node:child_process';

import { findChromium } from './findChromium.ts';

/**
 * Global set-up of the browser tests: where no browser is found, installs Debian's package (as root,
 * where there is apt-get), else Playwright's own.
 */
export default function ensureBrowser(): void {
  if (findChromium()) return;
  if (process.getuid?.() === 0 && runs('apt-get', ['--version'])) {
    run('apt-get', ['update', '-qq']);
    run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium']);
    if (findChromium()) return;
  }
  if (!run('npx', ['playwright', 'install', 'chromium'])) {
    throw new Error(
      'no browser found, and none could be installed: install Chromium, then run again',
    );
  }
}

function runs(command: string, args: string[]): boolean {
  return spawnSync(command, args, { stdio: 'ignore' }).status === 0;
}

function run(command: string, args: string[]): boolean {
  return spawnSync(command, args, { stdio: ['ignore', 'inherit', 'inherit'] }).status === 0;
}

if (import.meta.url === `file://${process.argv[1]}`) ensureBrowser();
