import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

import { openFilm } from '../../../workers/filmFrames.ts';

/** What can be said of a file before anything is decoded; decoding itself is tested in the browser. */
async function troubleWith(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const film = await openFilm(new Blob([bytes]));
  return film.ok ? 'none' : film.failure.code;
}

const SAMPLE = new Uint8Array(readFileSync('samples/shed-front-left.mp4'));
const text = (words: string) => new TextEncoder().encode(words);

/** The boxes of the sample in another order: as a camera writes them, table of contents last. */
function boxNamed(name: string): Uint8Array<ArrayBuffer> {
  for (let at = 0; at < SAMPLE.length;) {
    const size = new DataView(SAMPLE.buffer).getUint32(at);
    if (new TextDecoder().decode(SAMPLE.subarray(at + 4, at + 8)) === name)
      return SAMPLE.slice(at, at + size);
    at += size;
  }
  throw new Error(`no ${name} in the sample`);
}

describe('openFilm', () => {
  it('tells an empty file from one that is no film', async () => {
    expect(await troubleWith(new Uint8Array(0))).toBe('film-empty');
    expect(await troubleWith(text('This is a letter, not a film. '.repeat(50)))).toBe(
      'file-unreadable',
    );
    expect(await troubleWith(text('{"format":"tiltsweep.setup/1"}'))).toBe('file-unreadable');
  });

  it('tells a film that breaks off from one that never was', async () => {
    const ftyp = boxNamed('ftyp');
    const mdat = boxNamed('mdat');
    // Recording stopped before the table of contents was written.
    const unfinished = new Uint8Array([...ftyp, ...mdat.subarray(0, 100_000)]);
    expect(await troubleWith(unfinished)).toBe('film-cut-off');
    // Copying stopped inside the table of contents.
    expect(await troubleWith(SAMPLE.slice(0, 3000))).toBe('film-cut-off');
  });

  it('says so where a film is whole but nothing here can decode it', async () => {
    // Node has no WebCodecs.
    expect(await troubleWith(SAMPLE)).toBe('film-coding-unknown');
  });
});
