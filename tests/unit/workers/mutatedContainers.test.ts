import { readFileSync } from 'node:fs';

import fc from 'fast-check';
import { BlobSource, EncodedPacketSink, Input, MATROSKA, MP4, WEBM } from 'mediabunny';
import { beforeAll, describe, expect, it, vi } from 'vitest';

import { openFilm } from '../../../workers/filmFrames.ts';
import { wholeMatroska } from '../../../workers/wholeMatroska.ts';
import { remuxedFilm } from '../../fakes/remuxedFilm.ts';

/**
 * Fragmented MP4 and Matroska, as cameras of browsers and this program itself record: spoilt at random
 * where they say what is in them, and taken apart to their last picture without a decoder. Never hung;
 * tables of plain MP4 films are tested in `mutatedFilms`.
 */
const RUNS_EACH = 5000;
const SEED = 20_260_302;
const LONGEST_FILE_MS = 5000;
const PICTURES = 30;

const SAMPLE = new Uint8Array(readFileSync('samples/shed-front-left.mp4'));

/** What a film says of itself stands at its beginning, and at each of these words. */
const KINDS = {
  fragmented: { words: [[0x6d, 0x6f, 0x6f, 0x66]], spanBytes: 130 },
  // Clusters, cues, simple blocks.
  matroska: {
    words: [
      [0x1f, 0x43, 0xb6, 0x75],
      [0x1c, 0x53, 0xbb, 0x6b],
      [0xa3, 0x21],
    ],
    spanBytes: 24,
  },
} as const;
const HEAD_BYTES = 900;

async function picturesIn(film: Blob): Promise<number> {
  const whole = await wholeMatroska(film);
  const source = new BlobSource(whole?.film ?? film);
  const input = new Input({ source, formats: [MP4, MATROSKA, WEBM] });
  const track = await input.getPrimaryVideoTrack();
  let pictures = 0;
  if (track) {
    for await (const packet of new EncodedPacketSink(track).packets()) {
      pictures += packet.byteLength > 0 ? 1 : 0;
      expect(pictures).toBeLessThan(100 * PICTURES);
    }
  }
  input.dispose();
  return pictures;
}

function placesOf(film: Uint8Array, words: readonly (readonly number[])[]): number[] {
  return [...film.keys()].filter((at) =>
    words.some((word) => word.every((byte, i) => film[at + i] === byte)),
  );
}

describe.each(['fragmented', 'matroska'] as const)('a %s film', (kind) => {
  let film: Uint8Array<ArrayBuffer>;

  beforeAll(async () => {
    film = await remuxedFilm(SAMPLE, kind, PICTURES);
    vi.spyOn(console, 'error').mockReturnValue();
    vi.spyOn(console, 'warn').mockReturnValue();
  });

  it('is taken apart to its last picture', async () => {
    expect(await picturesIn(new Blob([film]))).toBe(PICTURES);
  });

  it('spoilt five thousand times is read, broken off or refused, and none hangs', async () => {
    const { words, spanBytes } = KINDS[kind];
    const places = placesOf(film, words);
    expect(places.length).toBeGreaterThan(0);
    const spoil = fc.record({
      head: fc.array(fc.tuple(fc.nat(HEAD_BYTES), fc.nat(255)), { maxLength: 3 }),
      later: fc.array(fc.tuple(fc.constantFrom(...places), fc.nat(spanBytes), fc.nat(255)), {
        minLength: 1,
        maxLength: 5,
      }),
      cutAt: fc.option(fc.nat(film.length), { freq: 6 }),
    });
    const seen = new Set<string>();
    await fc.assert(
      fc.asyncProperty(spoil, async ({ head, later, cutAt }) => {
        const spoilt = film.slice(0, cutAt ?? film.length);
        const bytes = [...head, ...later.map(([at, off, byte]) => [at - 8 + off, byte] as const)];
        for (const [at, byte] of bytes) if (at >= 0 && at < spoilt.length) spoilt[at] = byte;
        const blob = new Blob([spoilt]);
        const startMs = performance.now();
        // Node has no decoder: what could be decoded is refused for that.
        const opened = await openFilm(blob);
        let end: string = opened.ok ? 'opened' : opened.failure.code;
        if (end === 'film-coding-unknown') {
          const read = await picturesIn(blob).catch(() => null);
          end = read === null ? 'broken off' : read === PICTURES ? 'whole' : 'in part';
        }
        expect(performance.now() - startMs).toBeLessThan(LONGEST_FILE_MS);
        seen.add(end);
      }),
      { numRuns: RUNS_EACH, seed: SEED },
    );
    expect([...seen]).toEqual(expect.arrayContaining(['whole', 'in part', 'file-unreadable']));
  }, 180_000);
});

describe('wholeMatroska', () => {
  let film: Uint8Array<ArrayBuffer>;

  beforeAll(async () => {
    film = await remuxedFilm(SAMPLE, 'matroska', PICTURES);
  });

  it('leaves films of other kinds alone', async () => {
    expect(await wholeMatroska(new Blob([SAMPLE]))).toBeNull();
    expect(await wholeMatroska(new Blob(['no film']))).toBeNull();
  });

  it('cuts a film off where an element begins that may not stand there', async () => {
    const spoilt = film.slice();
    // The cues, behind the pictures.
    spoilt[placesOf(film, [[0x1c, 0x53, 0xbb, 0x6b]]).at(-1)!] = 0x55;
    expect((await wholeMatroska(new Blob([spoilt])))!.isCut).toBe(true);
    expect(await picturesIn(new Blob([spoilt]))).toBe(PICTURES);
  });

  it('cuts off what stands behind a film', async () => {
    const noise = Uint8Array.from({ length: 5000 }, (_, i) => (i * 7919) % 256);
    const longer = new Blob([film, noise]);
    expect((await wholeMatroska(longer))!.isCut).toBe(true);
    expect(await picturesIn(longer)).toBe(PICTURES);
  });

  it('walks along in clusters that do not say how long they are, as this program records', async () => {
    const live = await remuxedFilm(SAMPLE, 'live matroska', PICTURES);
    const whole = await wholeMatroska(new Blob([live]));
    expect(whole!.isCut).toBe(false);
    expect(await picturesIn(new Blob([live]))).toBe(PICTURES);
    // Broken off in its last picture.
    const cut = new Blob([live.slice(0, -40)]);
    expect((await wholeMatroska(cut))!.isCut).toBe(true);
    expect(await picturesIn(cut)).toBe(PICTURES - 1);
  });
});
