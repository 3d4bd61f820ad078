import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

import { listSweeps } from '../../tools/sweepFolder.ts';

let folder: string;
beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'sweeps-'))));
afterEach(() => rmSync(folder, { recursive: true }));

function sweep(name: string, after?: string): void {
  writeFileSync(join(folder, `${name}.mp4`), 'film');
  const setup = { wheel: { weightRadiusMm: 185 }, ...(after ? { after: { sweep: after } } : {}) };
  writeFileSync(join(folder, `${name}.setup.json`), JSON.stringify(setup));
}
const namesOf = (...names: string[]) => listSweeps(folder, names).map((entry) => entry.name);

describe('listSweeps', () => {
  it('puts each sweep after the one it builds on', () => {
    sweep('a-last', 'b-middle');
    sweep('b-middle', 'z-first');
    sweep('z-first');
    expect(namesOf()).toEqual(['z-first', 'b-middle', 'a-last']);
    expect(namesOf('b-middle')).toEqual(['z-first', 'b-middle']);
  });

  it('leaves out films without a setup, and is not caught in a circle', () => {
    sweep('one', 'two');
    sweep('two', 'one');
    writeFileSync(join(folder, 'holiday.mp4'), 'film');
    expect(namesOf().sort()).toEqual(['one', 'two']);
  });

  it('keeps a sweep whose setup is broken: saying so is the reader’s part', () => {
    writeFileSync(join(folder, 'bad.webm'), 'film');
    writeFileSync(join(folder, 'bad.setup.json'), '{oops');
    expect(listSweeps(folder)).toMatchObject([
      { name: 'bad', setupJson: null, afterSweep: null, truth: null },
    ]);
  });
});
