import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const SOURCES = ['src', 'workers', 'samples', 'index.html', 'package-lock.json', 'vite.config.ts'];

/** Builds the app into `dist` unless what is there is newer than everything it is made from. */
export function buildFresh(root: string): string {
  const dist = join(root, 'dist');
  const page = join(dist, 'index.html');
  const builtMs = existsSync(page) ? statSync(page).mtimeMs : -Infinity;
  if (SOURCES.some((source) => newestMs(join(root, source)) > builtMs)) {
    execFileSync(
      process.execPath,
      [join(root, 'node_modules/vite/bin/vite.js'), 'build', '--logLevel', 'warn'],
      {
        cwd: root,
        stdio: ['ignore', 'ignore', 'inherit'],
      },
    );
  }
  return dist;
}

function newestMs(path: string): number {
  const facts = statSync(path);
  if (!facts.isDirectory()) return facts.mtimeMs;
  return Math.max(facts.mtimeMs, ...readdirSync(path).map((name) => newestMs(join(path, name))));
}
