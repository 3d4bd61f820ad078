import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

import { sortChosenFiles } from '../../../src/session/chosenFiles.ts';

const SETUP_TEXT = readFileSync('samples/shed-front-left.setup.json', 'utf8');
const film = new File(['pictures'], 'sweep.mp4', { type: 'video/mp4' });
const setup = new File([SETUP_TEXT], 'sweep.setup.json');
const refused = { format: 'tiltsweep.reading/1', status: 'refused', refusals: [], turn: null };
const earlier = new File([JSON.stringify(refused)], 'before.reading.json');

async function problemWith(...files: File[]) {
  const chosen = await sortChosenFiles(files);
  return chosen.ok ? 'none' : chosen.failure;
}

describe('sortChosenFiles', () => {
  it('tells film, setup and earlier reading apart in any order', async () => {
    for (const files of [
      [film, setup, earlier],
      [earlier, setup, film],
      [setup, film, earlier],
    ]) {
      const chosen = await sortChosenFiles(files);
      expect(chosen).toMatchObject({ ok: true, value: { film, earlier: refused } });
    }
  });

  it('goes by what is in a JSON file, not by its name', async () => {
    const renamed = new File([SETUP_TEXT], 'notes.json');
    expect(await sortChosenFiles([film, renamed])).toMatchObject({
      ok: true,
      value: { earlier: null },
    });
  });

  it('names what is missing, or too much', async () => {
    expect(await problemWith(setup)).toMatchObject({ code: 'film-missing' });
    expect(await problemWith(film)).toMatchObject({ code: 'setup-missing' });
    expect(await problemWith()).toMatchObject({ code: 'film-missing' });
    const other = new File(['more'], 'other.webm');
    expect(await problemWith(film, other, setup)).toMatchObject({
      code: 'film-several',
      evidence: { first: 'sweep.mp4', second: 'other.webm' },
    });
    expect(await problemWith(new File([], 'sweep.mp4'), setup)).toMatchObject({
      code: 'film-empty',
    });
  });

  it('names the value of a setup that is wrong', async () => {
    const absurd = SETUP_TEXT.replace('"massKg": 16.5', '"massKg": 16500');
    expect(absurd).not.toBe(SETUP_TEXT);
    expect(await problemWith(film, new File([absurd], 'sweep.setup.json'))).toMatchObject({
      code: 'setup-invalid',
      evidence: { where: 'wheel.massKg', file: 'sweep.setup.json' },
    });
  });

  it('says of broken or foreign JSON what it is', async () => {
    expect(await problemWith(film, new File(['{oops'], 'sweep.setup.json'))).toMatchObject({
      code: 'setup-invalid',
      evidence: { problem: 'it is not JSON' },
    });
    expect(await problemWith(film, new File(['{"a":1}'], 'list.json'))).toMatchObject({
      code: 'setup-unreadable',
    });
  });

  it('does not take a reading with a hole for an earlier sweep', async () => {
    const holed = new File(
      ['{"format":"tiltsweep.reading/1","status":"ok","refusals":[]}'],
      'b.reading.json',
    );
    expect(await problemWith(film, setup, holed)).toMatchObject({
      code: 'earlier-sweep-missing',
      evidence: { file: 'b.reading.json', where: 'turn' },
    });
  });
});
