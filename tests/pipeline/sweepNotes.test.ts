import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';

import { drawnSweep, type DrawnSweep } from '../../samples/drawnWheel/drawnSweep.ts';
import { drawnTape } from '../../samples/drawnWheel/scene.ts';
import type { AcceptedReading } from '../../src/contract/reading.ts';
import type { SweepSetup } from '../../src/contract/setup.ts';
import { piecesOf } from '../../src/measure/notes/notePiece.ts';
import { readNotes } from '../../src/measure/notes/readNotes.ts';
import { createSweepReader } from '../../src/measure/sweepReader.ts';
import { subtractVectors, vectorAmount, vectorFromPolar } from '../../src/quantities/vector.ts';
import { accepted, drawnSetup, expectRefused } from './readDrawnSweep.ts';

/** A sweep that broke off is read from its notes as if it had been ended there. */
const PICTURES_A_SECOND = 30;

interface Noted {
  readonly pieces: Uint8Array<ArrayBuffer>[];
  readonly coveredDeg: number[];
  readonly live: AcceptedReading;
}

/** As before a camera: notes once a second, and a last time when it is ended. */
function noted(sweep: DrawnSweep, setup: SweepSetup): Noted {
  const reader = createSweepReader(setup, { live: true });
  const pieces: Uint8Array<ArrayBuffer>[] = [];
  const coveredDeg: number[] = [];
  const take = () => {
    const piece = reader.takeNotes();
    if (!piece) return;
    pieces.push(piece.bytes);
    coveredDeg.push(piece.coveredDeg);
  };
  let pictures = 0;
  for (const picture of sweep.pictures()) {
    reader.addFrame(picture);
    if (++pictures % PICTURES_A_SECOND === 0) take();
  }
  take();
  return { pieces, coveredDeg, live: accepted(reader.finish().reading) };
}

async function inOneFile(pieces: readonly Uint8Array<ArrayBuffer>[]): Promise<ArrayBuffer> {
  return new Blob([...pieces]).arrayBuffer();
}

let sweep: DrawnSweep;
let setup: SweepSetup;
let notes: Noted;

beforeAll(() => {
  sweep = drawnSweep({ unbalanceGmm: 3000, heavySpotDeg: 60 });
  setup = drawnSetup(sweep.scene);
  notes = noted(sweep, setup);
}, 120_000);

describe('readNotes', () => {
  it('gives the reading that the sweep itself gave', async () => {
    const read = accepted(readNotes(await inOneFile(notes.pieces), setup).reading);
    const { live } = notes;
    const miss = subtractVectors(
      vectorFromPolar(read.unbalance.amountGmm, read.unbalance.heavySpotDeg),
      vectorFromPolar(live.unbalance.amountGmm, live.unbalance.heavySpotDeg),
    );
    // Profiles are kept to 1/256 of a step of luma: a hundredth of a gram is ten times what that does.
    expect(vectorAmount(miss) / sweep.scene.weightRadiusMm).toBeLessThan(0.01);
    expect(read.turn.sense).toBe(live.turn.sense);
    expect(read.turn.coveredDeg).toBeCloseTo(live.turn.coveredDeg, 3);
  });

  it('tells a band of tape as the sweep itself did', async () => {
    const banded = drawnSweep({
      tapes: [drawnTape(0, 22, 'blue')],
      band: {
        ...{ bottomMm: 1, topMm: 13, luma: 175, joinDeg: 150, joinStepMm: 1 },
        ...{ offSquareMm: 0.8, highAtDeg: 30 },
      },
    });
    const entered = drawnSetup(banded.scene, (usual) => ({
      ...usual,
      sight: { ...usual.sight, valveMark: { widthMm: 22, colour: 'blue' } },
    }));
    const { live, pieces } = noted(banded, entered);
    const read = accepted(readNotes(await inOneFile(pieces), entered).reading);
    expect(live.edge!.kind).toBe('band');
    expect(read.edge!.kind).toBe('band');
    expect(read.unbalance.amountGmm / live.unbalance.amountGmm).toBeCloseTo(1, 2);
  }, 120_000);

  it('tells of half a sweep how far it was turned', async () => {
    const half = notes.pieces.slice(0, notes.pieces.length >> 1);
    const result = readNotes(await inOneFile(half), setup);
    expectRefused(result, 'turn-incomplete');
    const toldDeg = notes.coveredDeg[half.length - 1]!;
    expect(toldDeg).toBeGreaterThan(90);
    expect(result.reading.turn?.coveredDeg).toBeCloseTo(toldDeg, 6);
  });

  it('reads on to the last whole piece of a file that is cut', async () => {
    const whole = await inOneFile(notes.pieces.slice(0, 8));
    const cut = whole.slice(0, whole.byteLength - 1000);
    const result = readNotes(cut, setup);
    expect(result.reading.turn?.coveredDeg).toBeCloseTo(notes.coveredDeg[6]!, 6);
  });

  it('refuses what holds nothing', () => {
    expectRefused(readNotes(new ArrayBuffer(0), setup), 'too-few-frames');
    expectRefused(
      readNotes(new TextEncoder().encode('no notes at all').buffer, setup),
      'too-few-frames',
    );
  });

  it('takes notes of some hundred kilobytes a second', () => {
    const bytes = notes.pieces.reduce((sum, piece) => sum + piece.length, 0);
    // What the shelf bounds: 4800 frames of them are 70 MB.
    expect(bytes / (PICTURES_A_SECOND * notes.pieces.length)).toBeLessThan(15_000);
  });
});

const RUNS = 10_000;
const SEED = 20_260_302;
const LONGEST_FILE_MS = 5000;

it('ten thousand spoilt files of notes are taken as far as they are whole, and none hangs', async () => {
  // Some pictures of each piece would do: what can go wrong is in the head and in the lengths.
  const short = new Uint8Array(await inOneFile(notes.pieces.slice(0, 2)));
  const headBytes = 1500;
  const spoil = fc.record({
    head: fc.array(fc.tuple(fc.nat(headBytes), fc.nat(255)), { minLength: 1, maxLength: 6 }),
    anywhere: fc.array(fc.tuple(fc.nat(short.length - 1), fc.nat(255)), { maxLength: 6 }),
    cutAt: fc.option(fc.nat(short.length), { freq: 4 }),
  });
  const seen = new Set<number>();
  fc.assert(
    fc.property(spoil, ({ head, anywhere, cutAt }) => {
      const spoilt = short.slice(0, cutAt ?? short.length);
      for (const [at, value] of [...head, ...anywhere]) {
        if (at < spoilt.length) spoilt[at] = value;
      }
      const startMs = performance.now();
      seen.add([...piecesOf(spoilt.buffer)].length);
      expect(performance.now() - startMs).toBeLessThan(LONGEST_FILE_MS);
    }),
    { numRuns: RUNS, seed: SEED },
  );
  expect([...seen].sort()).toEqual([0, 1, 2]);
}, 180_000);

it('a whole sweep with spoilt numbers is read or refused, never thrown at', async () => {
  const whole = new Uint8Array(await inOneFile(notes.pieces));
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), { minLength: 1, maxLength: 40 }),
      (bytes) => {
        const spoilt = whole.slice();
        for (const [at, value] of bytes) spoilt[at] = value;
        expect(['ok', 'refused']).toContain(readNotes(spoilt.buffer, setup).reading.status);
      },
    ),
    { numRuns: 8, seed: SEED },
  );
}, 180_000);
