import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join, parse } from 'node:path';

import type { SweepTruth } from './score.ts';

/** One recorded sweep of a folder: a film, what a person entered, and the truth where it is known. */
export interface SweepEntry {
  readonly name: string;
  readonly filmPath: string;
  readonly setupPath: string;
  /** The parsed side file as it stands, unchecked: the reader's own door checks it. */
  readonly setupJson: unknown;
  readonly weightRadiusMm: number;
  /** Name of the earlier sweep of the same folder, for a check sweep. */
  readonly afterSweep: string | null;
  readonly truth: SweepTruth | null;
}

const FILM_ENDINGS = new Set(['.mp4', '.m4v', '.mov', '.webm', '.mkv']);

/** Every film with a side file, each after the sweep it builds on; names pick some, with what those need. */
export function listSweeps(folder: string, names: readonly string[] = []): SweepEntry[] {
  const all = readdirSync(folder)
    .map((file) => ({ file, ...parse(file) }))
    .filter(
      ({ ext, name }) =>
        FILM_ENDINGS.has(ext.toLowerCase()) && existsSync(join(folder, `${name}.setup.json`)),
    )
    .map(({ file, name }) => readEntry(folder, file, name))
    .sort((a, b) => a.name.localeCompare(b.name));
  const byName = new Map(all.map((entry) => [entry.name, entry]));
  const unknown = names.filter((name) => !byName.has(name));
  if (unknown.length > 0) throw new Error(`no such sweep in the folder: ${unknown.join(', ')}`);
  const ordered = new Map<string, SweepEntry>();
  const place = (entry: SweepEntry, waiting: readonly string[]) => {
    if (ordered.has(entry.name) || waiting.includes(entry.name)) return;
    const earlier = entry.afterSweep === null ? undefined : byName.get(entry.afterSweep);
    if (earlier) place(earlier, [...waiting, entry.name]);
    ordered.set(entry.name, entry);
  };
  for (const entry of all) if (names.length === 0 || names.includes(entry.name)) place(entry, []);
  return [...ordered.values()];
}

function readEntry(folder: string, file: string, name: string): SweepEntry {
  const setupPath = join(folder, `${name}.setup.json`);
  const truthPath = join(folder, `${name}.truth.json`);
  const setupJson = parseOrNull(readFileSync(setupPath, 'utf8'));
  const loose = (setupJson ?? {}) as {
    wheel?: { weightRadiusMm?: unknown };
    after?: { sweep?: unknown };
  };
  const after = loose.after?.sweep;
  return {
    name,
    filmPath: join(folder, file),
    setupPath,
    setupJson,
    weightRadiusMm: Number(loose.wheel?.weightRadiusMm ?? Number.NaN),
    afterSweep: typeof after === 'string' ? after : null,
    truth: existsSync(truthPath)
      ? (JSON.parse(readFileSync(truthPath, 'utf8')) as SweepTruth)
      : null,
  };
}

function parseOrNull(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
