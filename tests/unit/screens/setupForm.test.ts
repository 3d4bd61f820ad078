import { describe, expect, it } from 'vitest';

import { readSetup } from '../../../src/contract/setup.ts';
import {
  assumedPaths,
  checkDraft,
  draftFromStored,
  draftOf,
  PROPOSED_DRAFT,
  setupProblemWords,
  withKnown,
  withText,
} from '../../../src/screens/setup/setupDraft.ts';
import { parseTyped } from '../../../src/screens/words/numbers.ts';
import { AMOUNT_FIELDS, NUMBER_FIELDS } from '../../../src/screens/setup/setupFields.ts';
import {
  filmWithoutSetup,
  readingAmong,
  withSetupFile,
} from '../../../src/screens/start/filmWithoutSetup.ts';
import { shedSetup } from '../../browser/gallery/fixtures.ts';

describe('numbers as typed', () => {
  it.each([
    ['16.5', 16.5],
    ['16,5', 16.5],
    [' 8 ', 8],
    ['.5', 0.5],
    ['1e3', null],
    ['12 kg', null],
    ['1.000,5', null],
    ['', null],
  ])('%s', (text, value) => {
    expect(parseTyped(text)).toBe(value);
  });
});

describe('the setup form', () => {
  it('proposes a setup that passes the check, all of it assumed', () => {
    const checked = checkDraft(PROPOSED_DRAFT);
    expect(checked.ok).toBe(true);
    expect(assumedPaths(PROPOSED_DRAFT)).toHaveLength(AMOUNT_FIELDS.length);
  });

  it('names every wrong value at once, with its limit and unit', () => {
    let draft = withText(PROPOSED_DRAFT, 'wheel.massKg', '800');
    draft = withText(draft, 'stand.pendulumDepthMm', '');
    draft = withText(draft, 'camera.downTiltDeg', 'steep');
    draft = withText(draft, 'stand.lineAbovePlateMm', '-5');
    const checked = checkDraft(draft);
    expect(checked).toEqual({
      ok: false,
      problems: {
        'wheel.massKg': 'Must be 80\u00a0kg or less.',
        'stand.pendulumDepthMm': 'Please enter a value.',
        'camera.downTiltDeg': 'Please enter a number, such as 16.5.',
        'stand.lineAbovePlateMm': 'Must be 0\u00a0mm or more.',
      },
    });
  });

  it('reaches every required number of the setup file', () => {
    for (const field of NUMBER_FIELDS.filter((one) => !one.optional)) {
      const checked = checkDraft(withText(PROPOSED_DRAFT, field.path, ''));
      expect(checked.ok ? [] : Object.keys(checked.problems)).toEqual([field.path]);
    }
  });

  it('takes a typed value for known, and the mark back on demand', () => {
    const typed = withText(PROPOSED_DRAFT, 'wheel.massKg', '17');
    expect(assumedPaths(typed)).not.toContain('wheel.massKg');
    expect(assumedPaths(withKnown(typed, 'wheel.massKg', false))).toContain('wheel.massKg');
  });

  it('keeps a setup through form and back', () => {
    const checked = checkDraft(draftOf(shedSetup));
    expect(checked.ok && checked.setup).toEqual(shedSetup);
  });

  it('keeps the weights of a check sweep, and remembers them for no other film', () => {
    const added = [{ massG: -10, radiusMm: 185, angleDeg: 40 }];
    const checked = checkDraft({ ...PROPOSED_DRAFT, added });
    expect(checked.ok && checked.setup.after?.added).toEqual(added);
    const again = checked.ok ? draftOf(checked.setup) : PROPOSED_DRAFT;
    expect(again.added).toEqual(added);
    expect(draftFromStored(JSON.parse(JSON.stringify(again)))?.added).toEqual([]);
  });

  it('keeps what a setup file says of its film, on this film alone, and leaves the edge out on demand', () => {
    const edgePoint = { xPx: 640, yPx: 380, timeS: 0.5 };
    const tested = { up: 'confirmed', turn: 'reversed' } as const;
    const setup = { ...shedSetup, sight: { ...shedSetup.sight, edgePoint, tested } };
    const draft = withText(draftOf(setup), 'wheel.massKg', '17');
    const checked = checkDraft(draft);
    expect(checked.ok && checked.setup.sight).toEqual(setup.sight);
    const without = checkDraft({ ...draft, usesEdge: false });
    expect(without.ok && without.setup.sight).toEqual({ ...shedSetup.sight, tested });
    const other = draftFromStored(JSON.parse(JSON.stringify(draft)));
    expect(other).toMatchObject({ ofFilm: {}, usesEdge: true });
    const read = checkDraft(other!);
    expect(read.ok && read.setup.sight).toEqual(shedSetup.sight);
  });

  it('remembers, and forgets what has not the right shape', () => {
    const stored: unknown = JSON.parse(JSON.stringify(draftOf(shedSetup)));
    expect(draftFromStored(stored)).toEqual(draftOf(shedSetup));
    expect(draftFromStored(null)).toBeNull();
    expect(draftFromStored({ texts: 3, known: [] })).toBeNull();
    expect(draftFromStored({ texts: {}, known: [3], colour: 'mauve' })).toEqual(PROPOSED_DRAFT);
  });
});

describe('films without a setup file', () => {
  const mp4 = new Uint8Array([0, 0, 0, 32, ...new TextEncoder().encode('ftypisom')]);
  const film = new File([mp4], 'front-left.mp4', { type: 'video/mp4' });
  const setup = new File([JSON.stringify(shedSetup)], 'front-left.setup.json');
  const reading = new File(['{"format":"tiltsweep.reading/1"}'], 'before.reading.json');

  it('asks for the form only when nothing but the setup is missing', async () => {
    expect(await filmWithoutSetup([film])).toBe(film);
    expect(await filmWithoutSetup([film, reading])).toBe(film);
    expect(await filmWithoutSetup([film, setup])).toBeNull();
    expect(await filmWithoutSetup([film, new File(['{'], 'x.json')])).toBeNull();
    expect(await filmWithoutSetup([setup])).toBeNull();
    expect(await filmWithoutSetup([film, film])).toBeNull();
    expect(await filmWithoutSetup([new File([], 'empty.mp4')])).toBeNull();
    expect(await filmWithoutSetup([new File(['hello, not a film'], 'note.mp4')])).toBeNull();
  });

  it('knows the reading of the sweep before among the files', async () => {
    expect(await readingAmong([film, setup, reading])).toBe(reading);
    expect(await readingAmong([film, setup])).toBeNull();
  });

  it('puts the entered setup beside the film in place of a wrong one', async () => {
    const files = await withSetupFile([film, new File(['{'], 'x.json'), reading], film, shedSetup);
    expect(files.map((file) => file.name)).toEqual([
      'front-left.mp4',
      'front-left.setup.json',
      'before.reading.json',
    ]);
    const json: unknown = JSON.parse(await files[1]!.text());
    expect(readSetup(json).ok).toBe(true);
  });
});

describe('a setup file that was refused', () => {
  it('is told with the form’s name of the value, its limit and unit', () => {
    const refused = readSetup({ ...shedSetup, wheel: { ...shedSetup.wheel, massKg: 800 } });
    const evidence = refused.ok ? {} : refused.failure.evidence;
    const told = (units: 'metric' | 'inch-pound') =>
      setupProblemWords(String(evidence['where']), String(evidence['problem']), units);
    expect(told('metric')).toBe('Mass: Must be 80\u00a0kg or less.');
    expect(told('inch-pound')).toBe('Mass: Must be 176.4\u00a0lb or less.');
  });
});
