import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { describe, expect, it } from 'vitest';

import { licenceTrouble } from '../../../src/build/licenceTrouble.ts';
import { packageFolder, shippedPackage } from '../../../src/build/shippedPackage.ts';

const pack = (
  licence: string,
  text: string | null = 'Copyright',
  source: string | null = null,
) => ({
  name: 'sheet',
  version: '1.0.0',
  licence,
  text,
  source,
});

describe('licence of a shipped package', () => {
  it.each(['MIT', 'ISC', 'Apache-2.0', 'BSD-3-Clause', '(MIT OR GPL-3.0-only)', 'MIT AND ISC'])(
    '%s is well',
    (licence) => {
      expect(licenceTrouble(pack(licence))).toBeNull();
    },
  );

  it.each([
    'GPL-3.0-only',
    'AGPL-3.0-or-later',
    'LGPL-2.1',
    'UNLICENSED',
    'MIT AND GPL-2.0',
    'BUSL-1.1',
  ])('%s must not be shipped', (licence) => {
    expect(licenceTrouble(pack(licence))).toContain('not among');
  });

  it('none at all must not be shipped', () => {
    expect(licenceTrouble(pack(''))).toBe('states no licence');
  });

  it('without its text must not be shipped, but in the public domain', () => {
    expect(licenceTrouble(pack('MIT', null))).toContain('wants its text');
    expect(licenceTrouble(pack('Unlicense', null))).toBeNull();
  });

  it('MPL-2.0 goes along with its text and word of its source', () => {
    expect(licenceTrouble(pack('MPL-2.0', 'text', 'https://example.org/sheet'))).toBeNull();
    expect(licenceTrouble(pack('MPL-2.0', 'text', null))).toContain('source');
  });
});

describe('package of a module', () => {
  it('is found with its licence, past folders that are none', () => {
    const root = mkdtempSync(join(tmpdir(), 'tiltsweep-package-'));
    const folder = join(root, 'node_modules/@shed/sheet');
    mkdirSync(join(folder, 'esm'), { recursive: true });
    const about = {
      name: '@shed/sheet',
      version: '1.2.3',
      license: 'ISC',
      repository: 'shed/sheet',
    };
    writeFileSync(join(folder, 'package.json'), JSON.stringify(about));
    writeFileSync(join(folder, 'esm/package.json'), '{"type":"module"}');
    writeFileSync(join(folder, 'LICENCE.md'), 'Copyright of the shed\n');
    expect(packageFolder(join(folder, 'esm/index.js?v=1'))).toBe(folder);
    expect(shippedPackage(folder)).toEqual({
      name: '@shed/sheet',
      version: '1.2.3',
      licence: 'ISC',
      text: 'Copyright of the shed',
      source: 'https://github.com/shed/sheet',
    });
    rmSync(root, { recursive: true });
  });

  it('is none for a module of the app', () => {
    expect(packageFolder(import.meta.filename)).toBeNull();
  });
});
