import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

import { tablesAreWhole } from '../../../workers/filmTables.ts';

const SAMPLE = readFileSync('samples/shed-front-left.mp4');
const MOOV_AT = SAMPLE.indexOf('moov') - 4;
const MOOV_BYTES = SAMPLE.readUInt32BE(MOOV_AT);

/** The sample's table of contents with one 32-bit number changed, so many bytes after a box's name. */
function changed(box: string, after: number, value: number): Promise<boolean> {
  const film = Buffer.from(SAMPLE.subarray(0, MOOV_AT + MOOV_BYTES));
  film.writeUInt32BE(value, film.indexOf(box) + 4 + after);
  return tablesAreWhole(new Blob([film]), MOOV_AT, MOOV_BYTES);
}

describe('tablesAreWhole', () => {
  it('lets the sample pass', async () => {
    expect(await tablesAreWhole(new Blob([SAMPLE]), MOOV_AT, MOOV_BYTES)).toBe(true);
  });

  it.each(['stts', 'ctts', 'stss', 'stsc', 'stco'])(
    'finds a %s table that says it is longer than it is',
    async (box) => {
      expect(await changed(box, 4, 0x0100_0000)).toBe(false);
    },
  );

  it.each(['stts', 'ctts'])('finds a %s entry that counts a thousand million', async (box) => {
    expect(await changed(box, 8, 1_000_000_000)).toBe(false);
  });

  it('finds more sizes than there are', async () => {
    expect(await changed('stsz', 8, 0x0100_0000)).toBe(false);
  });

  it('finds a thousand million pictures of one size', async () => {
    const film = Buffer.from(SAMPLE.subarray(0, MOOV_AT + MOOV_BYTES));
    film.writeUInt32BE(3200, film.indexOf('stsz') + 8);
    film.writeUInt32BE(1_000_000_000, film.indexOf('stsz') + 12);
    expect(await tablesAreWhole(new Blob([film]), MOOV_AT, MOOV_BYTES)).toBe(false);
  });

  it('finds a chunk that says it holds more pictures than there are', async () => {
    expect(await changed('stsc', 12, 0x0100_0000)).toBe(false);
  });

  it('finds a film that says how its pictures lie but not how large they are', async () => {
    // The table of sizes under another name.
    const film = Buffer.from(SAMPLE.subarray(0, MOOV_AT + MOOV_BYTES));
    film.write('free', film.indexOf('stsz'), 'latin1');
    expect(await tablesAreWhole(new Blob([film]), MOOV_AT, MOOV_BYTES)).toBe(false);
  });

  it.each([
    ['longer than what it stands in', 0x7000_0000],
    ['as long as 64 bits say', 1],
  ])('finds a box that is %s', async (_, size) => {
    expect(await changed('stsc', -8, size)).toBe(false);
  });

  it('leaves sound alone: it may count each of a long film’s samples', async () => {
    const film = Buffer.from(SAMPLE.subarray(0, MOOV_AT + MOOV_BYTES));
    film.write('soun', film.indexOf('hdlr') + 12, 'latin1');
    film.writeUInt32BE(50_000_000, film.indexOf('stts') + 12);
    expect(await tablesAreWhole(new Blob([film]), MOOV_AT, MOOV_BYTES)).toBe(true);
  });
});
