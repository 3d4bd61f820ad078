import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

import { IMPORT_RULES } from './importRules.ts';
import { cruiseImports } from './importViolations.ts';

const HERE = import.meta.dirname;

describe('imports', () => {
  it('run one way through the project', async () => {
    const { violations, files } = await cruiseImports(join(HERE, '../..'));
    expect(violations).toEqual([]);
    // Proof that it looked: a scan that finds nothing finds no violation either.
    expect(files).toContain('workers/measure.worker.ts');
    expect(files.length).toBeGreaterThan(30);
  });

  it('are found out when they break a rule, each rule once in a project made for it', async () => {
    const { violations } = await cruiseImports(join(HERE, 'broken'));
    const broken = new Set(violations.map((v) => v.rule));
    const rules = [...IMPORT_RULES.map((r) => r.name), 'one-file-starts-the-worker'];
    expect([...broken].sort()).toEqual(rules.sort());
  });
});
