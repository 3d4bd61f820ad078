import { readFileSync } from 'node:fs';
import { join } from 'node:path';

import { cruise, type ICruiseResult } from 'dependency-cruiser';

import { IMPORT_RULES } from './importRules.ts';

interface Violation {
  readonly rule: string;
  readonly from: string;
  readonly to: string;
}

export interface Cruised {
  readonly violations: readonly Violation[];
  readonly files: readonly string[];
}

/** Reads every import under `root`'s src and workers, types too, and holds it against the rules. */
export async function cruiseImports(root: string): Promise<Cruised> {
  const { output } = await cruise(
    ['src', 'workers'],
    {
      baseDir: root,
      ruleSet: { forbidden: [...IMPORT_RULES] },
      validate: true,
      doNotFollow: { path: 'node_modules' },
      // A type import binds two layers as surely as one of a value.
      tsPreCompilationDeps: true,
      exclude: { path: '\\?url$' },
    },
    {
      extensions: ['.ts', '.tsx', '.json', '.css', '.js'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'types'],
    },
  );
  const { modules, summary } = output as ICruiseResult;
  const files = modules.map((m) => m.source).filter((source) => /^(src|workers)\//.test(source));
  return {
    violations: [
      ...summary.violations.map(({ rule, from, to }) => ({ rule: rule.name, from, to })),
      ...startedWorkers(root, files),
    ],
    files,
  };
}

/** A worker is started by an address, which is no import: looked for in the text. */
function startedWorkers(root: string, files: readonly string[]): Violation[] {
  return files
    .filter((file) => /\.tsx?$/.test(file) && file !== 'src/session/measureWorker.ts')
    .filter((file) => /new\s+(Shared)?Worker\s*\(/.test(readFileSync(join(root, file), 'utf8')))
    .map((file) => ({ rule: 'one-file-starts-the-worker', from: file, to: 'new Worker' }));
}
