import { readFileSync } from 'node:fs';

import fc from 'fast-check';
import { BlobSource, EncodedPacketSink, Input, MATROSKA, MP4, MPEG_TS, WEBM } from 'mediabunny';
import { beforeAll, describe, expect, it, vi } from 'vitest';

import { openFilm } from '../../../workers/filmFrames.ts';
import { wholeMatroska } from '../../../workers/wholeMatroska.ts';
import { remuxedFilm, type RemuxedKind } from '../../fakes/remuxedFilm.ts';

/**
 * Every container that cameras, browsers and this program itself record in: spoilt at random where it
 * says what is in it, and taken apart to its last picture without a decoder. Never hung.
 */
const RUNS_EACH = 10_000;
const SEED = 20_260_302;
/** Of the processor's time: beside other tests a file may wait. */
const LONGEST_FILE_MS = 5000;
const PICTURES = 30;

const SAMPLE = new Uint8Array(readFileSync('samples/shed-front-left.mp4'));

const CLUSTER = [0x1f, 0x43, 0xb6, 0x75];
const CUES = [0x1c, 0x53, 0xbb, 0x6b];

type Kind = Exclude<RemuxedKind, 'live matroska'>;
const ascii = (name: string) => [...Buffer.from(name, 'latin1')];

/** What a film says of itself stands at its beginning, and at each of these words. */
const KINDS: Readonly<Record<Kind, { words: readonly number[][]; spanBytes: number }>> = {
  plain: {
    words: ['stsd', 'stts', 'ctts', 'stss', 'stsc', 'stsz', 'stco', 'elst'].map(ascii),
    spanBytes: 60,
  },
  fragmented: { words: [ascii('moof')], spanBytes: 130 },
  // Clusters, cues, simple blocks.
  matroska: {
    words: [CLUSTER, CUES, [0xa3, 0x21]],
    spanBytes: 24,
  },
  // Packets of 188 bytes begin with this; here and there a picture holds it too.
  transport: {
    words: [
      [0x47, 0x01],
      [0x47, 0x41],
    ],
    spanBytes: 24,
  },
};
const HEAD_BYTES = 900;

async function picturesIn(film: Blob): Promise<number> {
  const whole = await wholeMatroska(film);
  const source = new BlobSource(whole?.film ?? film);
  const input = new Input({ source, formats: [MP4, MATROSKA, WEBM, MPEG_TS] });
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

describe.each(['plain', 'fragmented', 'matroska', 'transport'] as const)('a %s film', (kind) => {
  let film: Uint8Array<ArrayBuffer>;

  beforeAll(async () => {
    film = await remuxedFilm(SAMPLE, kind, PICTURES);
    vi.spyOn(console, 'error').mockReturnValue();
    vi.spyOn(console, 'warn').mockReturnValue();
  });

  it('is taken apart to its last picture', async () => {
    expect(await picturesIn(new Blob([film]))).toBe(PICTURES);
  });

  it('spoilt ten thousand times is read, broken off or refused, and none hangs', async () => {
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
        const before = process.cpuUsage();
        // Node has no decoder: what could be decoded is refused for that.
        const opened = await openFilm(blob);
        let end: string = opened.ok ? 'opened' : opened.failure.code;
        if (end === 'film-coding-unknown') {
          const read = await picturesIn(blob).catch(() => null);
          end = read === null ? 'broken off' : read === PICTURES ? 'whole' : 'in part';
        }
        const { user, system } = process.cpuUsage(before);
        expect((user + system) / 1000).toBeLessThan(LONGEST_FILE_MS);
        seen.add(end);
      }),
      { numRuns: RUNS_EACH, seed: SEED },
    );
    expect([...seen]).toEqual(expect.arrayContaining(['whole', 'in part', 'file-unreadable']));
  }, 600_000);
});

/** Where a film's head says what it is, how long its segment and its first cluster are. */
const wordAt = (film: Uint8Array, word: readonly number[]) => placesOf(film, [word])[0]!;

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
    spoilt[placesOf(film, [CUES]).at(-1)!] = 0x55;
    expect((await wholeMatroska(new Blob([spoilt])))!.isCut).toBe(true);
    expect(await picturesIn(new Blob([spoilt]))).toBe(PICTURES);
  });

  it('cut so that its last cluster seems to end eight bytes before an end put behind it', async () => {
    // Two of sixty thousand: a search that came so near to the end never ended.
    for (let off = 990; off < 1010; off++) {
      const clusterEnd = placesOf(film, [CUES]).at(-1)!;
      expect(await picturesIn(new Blob([film.slice(0, clusterEnd - off)]))).toBeLessThan(PICTURES);
    }
  });

  it('takes nothing apart behind a head that is longer than it says', async () => {
    const spoilt = film.slice();
    spoilt[7]! -= 20;
    // And a cluster that is shorter than it says, which would be searched through.
    spoilt[wordAt(film, CLUSTER) + 4] = 0xe0;
    const whole = await wholeMatroska(new Blob([spoilt]));
    expect(whole!.isCut).toBe(true);
    expect(whole!.film.size).toBeLessThan(64);
  });

  it('keeps the pictures of a cluster that breaks off in its middle', async () => {
    const [clusterAt, ...others] = placesOf(film, [CLUSTER]);
    expect(others).toEqual([]);
    expect(clusterAt).toBeLessThan(HEAD_BYTES);
    const most = new Blob([film.slice(0, Math.round(0.9 * film.length))]);
    expect((await wholeMatroska(most))!.isCut).toBe(true);
    expect(await picturesIn(most)).toBeGreaterThan(0);
    expect(await picturesIn(most)).toBeLessThan(PICTURES);
  });

  it('leaves the tables out that may point anywhere', async () => {
    const { film: kept, isCut } = (await wholeMatroska(new Blob([film])))!;
    expect(isCut).toBe(false);
    // The seek head names the cues, and there they are.
    expect(placesOf(film, [CUES])).toHaveLength(2);
    expect(placesOf(new Uint8Array(await kept.arrayBuffer()), [CUES])).toEqual([]);
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
