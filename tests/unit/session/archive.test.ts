import { strFromU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';

import { readArchive } from '../../../src/session/archive/readArchive.ts';
import { storedZip } from '../../../src/session/archive/storedZip.ts';
import { writeArchive } from '../../../src/session/archive/writeArchive.ts';
import { packedContents, unpackedEntry } from '../../../src/session/logbook/packedTrace.ts';
import { zipDirectory } from '../../../src/session/archive/zipDirectory.ts';
import { readingsCsv } from '../../../src/session/archive/readingsCsv.ts';
import { wheelsForAll } from '../../../src/job/wheelsForAll.ts';
import { mergedContents } from '../../../src/job/mergedContents.ts';
import { createMemoryLogbook } from '../../../src/session/logbook/memoryLogbook.ts';
import { checkedAtOnce } from '../../fakes/checkedAtOnce.ts';
import { earlierArchive } from '../../fakes/earlierArchive.ts';
import { filmRecord, smallLogbook } from '../../fakes/archiveFixtures.ts';

const film = new Blob([Uint8Array.from({ length: 3000 }, (_, i) => i % 251)]);

describe('an archive', () => {
  it('gives back what was put in, traces bit by bit', async () => {
    const contents = smallLogbook();
    const archive = await writeArchive(packedContents(contents), [
      { record: filmRecord('f1', film.size), film },
    ]);
    const read = await readArchive(archive);
    expect(read.ok && read.value.contents).toEqual(packedContents(contents));
    const [back] = read.ok ? read.value.films : [];
    expect(back!.record).toEqual(filmRecord('f1', film.size));
    expect(await back!.film.arrayBuffer()).toEqual(await film.arrayBuffer());
  });

  it('that was saved compressed, as this program once did, is read as well', async () => {
    const contents = smallLogbook();
    const saved = await earlierArchive(contents, [{ record: filmRecord('f1', film.size), film }]);
    const directory = await zipDirectory(saved);
    expect(directory!.map(({ isCompressed }) => isCompressed)).toEqual([true, false, false]);
    const read = await readArchive(saved);
    expect(read.ok && read.value.contents).toEqual(packedContents(contents));
    expect(read.ok && read.value.films).toHaveLength(1);
  });

  it('is one that another program takes apart', async () => {
    const contents = smallLogbook();
    const archive = await writeArchive(packedContents(contents), [
      { record: filmRecord('f1', film.size), film },
    ]);
    const files = unzipSync(new Uint8Array(await archive.arrayBuffer()));
    expect(Object.keys(files)).toEqual(['logbook.json', 'traces.f32', 'films/f1']);
    expect(files['films/f1']).toEqual(new Uint8Array(await film.arrayBuffer()));
    const json = JSON.parse(strFromU8(files['logbook.json']!)) as { entries: unknown[] };
    expect(json.entries).toHaveLength(contents.entries.length);
  });

  it('takes along what was noted of a sweep that broke off, also without a film', async () => {
    const notes = new Blob([Uint8Array.of(3, 1, 4, 1, 5)]);
    const said = { pieceCount: 2, sizeBytes: 5, coveredDeg: 212.5 };
    const record = { ...filmRecord('f1', 0), pieceCount: 0, entryId: null, notes: said };
    const sweep = { record, film: new Blob(), notes };
    const contents = packedContents(smallLogbook());
    const archive = await writeArchive(contents, [sweep]);
    const read = await readArchive(archive);
    const [back] = read.ok ? read.value.films : [];
    expect(back!.record).toEqual(record);
    expect(await back!.notes!.arrayBuffer()).toEqual(await notes.arrayBuffer());
    // Notes that the record tells of and the file does not hold: refused whole.
    const files = unzipSync(new Uint8Array(await archive.arrayBuffer()));
    delete files['notes/f1'];
    const without = new Blob([zipSync(files, { level: 0 }) as Uint8Array<ArrayBuffer>]);
    expect(await readArchive(without)).toMatchObject({
      ok: false,
      failure: { code: 'archive-unreadable', evidence: { file: 'notes/f1' } },
    });
  });

  it('over 4 GB is not written', () => {
    const large = Object.defineProperty(new Blob(), 'size', { value: 3e9 });
    const files = [1, 2].map((n) => ({ name: `films/${n}`, content: large, crc: 0 }));
    expect(() => storedZip(files, 'application/zip')).toThrow(RangeError);
  });

  it('is refused whole when a film in it is damaged', async () => {
    const archive = await writeArchive(packedContents(smallLogbook()), [
      { record: filmRecord('f1', film.size), film },
    ]);
    const bytes = new Uint8Array(await archive.arrayBuffer());
    const pattern = Array.from({ length: 8 }, (_, i) => 100 + i);
    const at = bytes.findIndex((_, i) => pattern.every((byte, k) => bytes[i + k] === byte));
    expect(at).toBeGreaterThan(0);
    bytes[at] ^= 1;
    const read = await readArchive(new Blob([bytes]));
    expect(read).toMatchObject({
      ok: false,
      failure: { code: 'archive-unreadable', evidence: { file: 'films/f1' } },
    });
  });

  it('names the record that is wrong', async () => {
    const contents = smallLogbook();
    const heavy = { ...contents.wheels[0]!, massKg: { value: 800, origin: 'entered' as const } };
    const read = await readArchive(
      await writeArchive(packedContents({ ...contents, wheels: [heavy, contents.wheels[1]!] })),
    );
    expect(read).toMatchObject({
      ok: false,
      failure: { code: 'archive-record', evidence: { where: 'wheels 1: massKg.value' } },
    });
  });

  it('with an entry of a wheel that is not in it is refused', async () => {
    const contents = smallLogbook();
    const read = await readArchive(
      await writeArchive(packedContents({ ...contents, wheels: [contents.wheels[0]!] })),
    );
    expect(read).toMatchObject({
      ok: false,
      failure: { code: 'archive-record', evidence: { where: 'wheelId' } },
    });
  });

  it('of a logbook in which a wheel could not be read gets that wheel from its sweeps', async () => {
    const { stand, wheels, entries } = smallLogbook();
    const left = wheels.filter(({ id }) => id === 'w2');
    const saved = { stand, wheels: wheelsForAll(left, entries), entries };
    const read = await readArchive(await writeArchive(packedContents(saved)));
    expect(read.ok && read.value.contents.entries.map(unpackedEntry)).toEqual(entries);
    expect(
      read.ok && read.value.contents.wheels.map(({ id, massKg }) => [id, massKg.value]),
    ).toEqual([
      ['w2', left[0]!.massKg.value],
      ['w1', 16.5],
    ]);
    expect(wheelsForAll(wheels, entries)).toEqual(wheels);
  });

  it('of a later form is told apart from a broken one', async () => {
    const json = { format: 'tiltsweep.logbook/2', madeAt: '2031-01-01T00:00:00.000Z' };
    expect(checkedAtOnce(json, new Uint8Array(0))).toMatchObject({
      failure: { code: 'archive-newer' },
    });
  });
});

describe('merging', () => {
  it('into an empty logbook gives the same logbook', async () => {
    const contents = packedContents(smallLogbook());
    const logbook = createMemoryLogbook();
    const empty = { stand: null, wheels: [], entries: [] };
    await logbook.putIn(mergedContents(empty, contents).contents);
    const original = createMemoryLogbook();
    await original.putIn(contents);
    expect(await logbook.packed()).toEqual(await original.packed());
    expect(await logbook.wheel('w1')).toMatchObject({ value: { stage: 'proved' } });
  });

  it('of what is here already changes nothing', () => {
    const merge = mergedContents(packedContents(smallLogbook()), packedContents(smallLogbook()));
    expect(merge.contents).toEqual({ stand: null, wheels: [], entries: [] });
    expect(merge).toMatchObject({ sameRecords: 8, doubledEntries: 0, keptOwnStand: true });
  });

  it('keeps both of two entries under one name, and not a third when done twice', () => {
    const here = packedContents(smallLogbook());
    const other = {
      ...here,
      entries: here.entries.map(({ entry, trace }) =>
        entry.kind === 'note'
          ? { entry: { ...entry, text: 'another text' }, trace }
          : { entry, trace },
      ),
    };
    const merge = mergedContents(here, other);
    expect(merge.doubledEntries).toBe(1);
    const [second] = merge.contents.entries;
    expect(second).toMatchObject({ entry: { text: 'another text', wheelId: 'w2' } });
    expect(second!.entry.id).not.toBe('n1');
    const after = { ...here, entries: [...here.entries, second!] };
    expect(mergedContents(after, other).contents.entries).toEqual([]);
  });

  it('keeps both of two sweeps under one name whose traces differ in one point', () => {
    const here = packedContents(smallLogbook());
    const other = packedContents(smallLogbook());
    const { entry, trace } = other.entries.find((one) => one.trace !== null)!;
    trace!.points[5]! += 0.25;
    const merge = mergedContents(here, other);
    expect(merge.doubledEntries).toBe(1);
    const [second] = merge.contents.entries;
    expect(second!.entry.id).toMatch(new RegExp(`^${entry.id}~`));
    const after = { ...here, entries: [...here.entries, second!] };
    expect(mergedContents(after, other).contents.entries).toEqual([]);
  });

  it('keeps the values of a wheel that were changed last', () => {
    const here = packedContents(smallLogbook());
    const changed = (changedAt: string) => ({
      ...here,
      wheels: here.wheels.map((wheel) => ({ ...wheel, tyre: '205/55 R16', changedAt })),
    });
    expect(mergedContents(here, changed('2027-01-01T00:00:00.000Z'))).toMatchObject({
      newerWheels: 2,
      olderWheels: 0,
    });
    expect(mergedContents(here, changed('2020-01-01T00:00:00.000Z')).contents.wheels).toEqual([]);
  });
});

describe('the table of readings', () => {
  it('has as many cells in every line as in its head, names quoted, formulas made text', () => {
    const contents = smallLogbook();
    const [first, ...rest] = contents.wheels;
    const table = readingsCsv({
      ...contents,
      wheels: [{ ...first!, label: '=HYPERLINK("x"),1' }, ...rest],
    });
    const lines = table.split('\r\n');
    expect(lines.at(-1)).toBe('');
    expect(lines).toHaveLength(5);
    const cells = (line: string) => line.match(/("([^"]|"")*"|[^,]*)(,|$)/g)!.slice(0, -1);
    const width = lines[0]!.split(',').length;
    for (const line of lines.slice(1, -1)) expect(cells(line)).toHaveLength(width);
    expect(lines[1]).toContain(`"'=HYPERLINK(""x""),1"`);
    expect(lines[2]).toContain(',28.1,');
  });
});
