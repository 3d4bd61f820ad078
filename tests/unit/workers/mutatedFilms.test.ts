import { readFileSync } from 'node:fs';

import fc from 'fast-check';
import { expect, it, vi } from 'vitest';

import { openFilm } from '../../../workers/filmFrames.ts';

/**
 * Films spoilt at random in the boxes that say what is in them: opened as one that nothing here can
 * decode (Node has no decoder), or told what is the matter; never thrown at, never hung. Spoilt
 * pictures are tested in the browser (faultsFilm).
 */
const RUNS = 10_000;
const SEED = 20_260_302;
const LONGEST_FILE_MS = 5000;
const KNOWN = ['film-empty', 'film-cut-off', 'file-unreadable', 'film-coding-unknown'];

const SAMPLE = new Uint8Array(readFileSync('samples/shed-front-left.mp4'));
/** The boxes before the pictures, and the first of these. */
const HEAD_BYTES = 24_000;

it('ten thousand films spoilt in their heads are opened or refused by name', async () => {
  // The library that takes films apart writes what it finds to the console.
  vi.spyOn(console, 'error').mockReturnValue();
  vi.spyOn(console, 'warn').mockReturnValue();
  const head = SAMPLE.slice(0, HEAD_BYTES);
  const spoil = fc.record({
    bytes: fc.array(fc.tuple(fc.nat(HEAD_BYTES - 1), fc.nat(255)), { minLength: 1, maxLength: 6 }),
    // The first boxes name lengths and kinds of all others: half of the changes go there.
    early: fc.array(fc.tuple(fc.nat(700), fc.nat(255)), { maxLength: 6 }),
    cutAt: fc.option(fc.nat(HEAD_BYTES), { freq: 4 }),
  });
  const seen = new Set<string>();
  await fc.assert(
    fc.asyncProperty(spoil, async ({ bytes, early, cutAt }) => {
      const spoilt = head.slice(0, cutAt ?? HEAD_BYTES);
      for (const [at, byte] of [...bytes, ...early]) if (at < spoilt.length) spoilt[at] = byte;
      const startMs = performance.now();
      const film = await openFilm(new Blob([spoilt]));
      expect(performance.now() - startMs).toBeLessThan(LONGEST_FILE_MS);
      const code = film.ok ? 'opened' : film.failure.code;
      if (film.ok) film.value.close();
      else expect(KNOWN).toContain(code);
      seen.add(code);
    }),
    { numRuns: RUNS, seed: SEED },
  );
  // Were it always one answer, the changes would change nothing.
  expect(seen.size).toBeGreaterThan(1);
}, 180_000);
