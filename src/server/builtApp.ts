import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

import { failed, succeeded, type Outcome } from '../contract/outcome.ts';

/** All that the built app is made from. The server is none of it, but the policy of its pages is. */
const SOURCES = ['src', 'workers', 'samples', 'index.html', 'package-lock.json', 'vite.config.ts'];

/** The built app's folder, built anew unless it is newer than everything it is made from. */
export function builtApp(root: string): Outcome<string, 'build-failed'> {
  const dist = join(root, 'dist');
  const page = join(dist, 'index.html');
  const builtMs = existsSync(page) ? statSync(page).mtimeMs : -Infinity;
  if (SOURCES.every((source) => newestMs(join(root, source)) <= builtMs)) return succeeded(dist);
  const vite = join(root, 'node_modules/vite/bin/vite.js');
  const built = spawnSync(process.execPath, [vite, 'build', '--logLevel', 'warn'], {
    cwd: root,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  return built.status === 0 ? succeeded(dist) : failed('build-failed');
}

function newestMs(path: string): number {
  const facts = statSync(path);
  if (!facts.isDirectory()) return facts.mtimeMs;
  return Math.max(facts.mtimeMs, ...readdirSync(path).map((name) => newestMs(join(path, name))));
}
