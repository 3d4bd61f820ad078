import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

import type { ShippedPackage } from './licenceTrouble.ts';

/** Folder of the package to which a module in `node_modules` belongs; null for own modules. */
export function packageFolder(moduleId: string): string | null {
  const path = moduleId.split('?', 1)[0]!.replace(/^\0/, '');
  if (!/[\\/]node_modules[\\/]/.test(path)) return null;
  // A folder within a package may hold a package.json of its own, without a name.
  for (let folder = dirname(path); folder !== dirname(folder); folder = dirname(folder)) {
    const file = join(folder, 'package.json');
    if (existsSync(file) && 'version' in readJson(file)) return folder;
  }
  return null;
}

/** What a package says of itself, with the text of its licence. */
export function shippedPackage(folder: string): ShippedPackage {
  const about = readJson(join(folder, 'package.json'));
  const { name, version, license, repository, homepage } = about;
  return {
    name: String(name),
    version: String(version),
    licence: typeof license === 'string' ? license : '',
    text: licenceText(folder),
    source: addressOf(repository) ?? (typeof homepage === 'string' ? homepage : null),
  };
}

function licenceText(folder: string): string | null {
  const texts = readdirSync(folder)
    .filter((name) => /^(licen[cs]e|copying|notice)(\.\w+)?$/i.test(name))
    .sort()
    .map((name) => readFileSync(join(folder, name), 'utf8').trim());
  if (texts.length === 0) return null;
  // Build tools list there too what they carry themselves; none of that is shipped.
  return texts
    .join('\n\n')
    .split(/^# Licenses of bundled dependencies/m, 1)[0]!
    .trim();
}

function addressOf(repository: unknown): string | null {
  const url =
    typeof repository === 'string'
      ? repository
      : (repository as { url?: unknown } | undefined)?.url;
  if (typeof url !== 'string') return null;
  if (/^[\w.-]+\/[\w.-]+$/.test(url)) return `https://github.com/${url}`;
  return url
    .replace(/^git\+/, '')
    .replace(/^(git|ssh):\/\/(git@)?/, 'https://')
    .replace(/^github:/, 'https://github.com/')
    .replace(/\.git$/, '');
}

function readJson(path: string): Record<string, unknown> {
  return JSON.parse(readFileSync(path, 'utf8')) as Record<string, unknown>;
}
