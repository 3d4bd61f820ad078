import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

import { REFUSALS, type RefusalCode } from '../../../src/contract/refusals.ts';
import { de } from '../../../src/screens/words/de/index.ts';
import { en } from '../../../src/screens/words/en/index.ts';

const CODES = Object.keys(REFUSALS) as RefusalCode[];
const ROOT = join(import.meta.dirname, '..', '..', '..');

/** Rows of the developers' table: `code` | what provokes it | the test that does. */
const ROWS = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8')
  .split('\n')
  .flatMap((line) => {
    const cells = line.split('|').map((cell) => cell.trim());
    const code = /^`([a-z-]+)`$/.exec(cells[1] ?? '')?.[1];
    return code && cells.length === 5 ? [{ code, tests: cells[3]! }] : [];
  })
  .filter(({ code }) => (CODES as string[]).includes(code));

/** Every test file by its name without ending. */
const TESTS = new Map(
  readdirSync(join(ROOT, 'tests'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => [name.replace(/^.*\//, '').replace('.test.ts', ''), join(ROOT, 'tests', name)]),
);

describe('every reason for giving no figure', () => {
  it.each(CODES)(
    '%s stands once in the developers’ table, with a test that provokes it',
    (code) => {
      const rows = ROWS.filter((row) => row.code === code);
      expect(rows).toHaveLength(1);
      const names = rows[0]!.tests.split(',').map((name) => name.trim());
      for (const name of names) {
        const file = TESTS.get(name);
        expect(file, `${name}.test.ts`).toBeDefined();
        expect(readFileSync(file!, 'utf8'), name).toContain(`'${code}'`);
      }
    },
  );

  it.each(CODES)(
    '%s says in every language what to do, and something else the second time',
    (code) => {
      for (const words of [en, de]) {
        const { cause, remedy, secondTime } = words.notices[code];
        for (const said of [cause, remedy, secondTime]) expect(said).toMatch(/^\p{Lu}.+\.$/u);
        expect(new Set([cause, remedy, secondTime]).size).toBe(3);
        expect(words.troubleNow[code].length).toBeLessThan(60);
      }
      expect(de.notices[code].cause).not.toBe(en.notices[code].cause);
    },
  );
});
