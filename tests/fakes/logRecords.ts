import type { NoteEntry, SweepEntry, WeightsEntry } from '../../src/contract/logbook.ts';
import { acceptedReading, shedSetup, traceOf } from '../browser/gallery/fixtures.ts';

/** Entries of a logbook as the shed would have written them. */
export function sweepEntry(
  id: string,
  wheelId: string,
  at: string,
  amountG = 28.1,
  heavyDeg = 75,
): SweepEntry {
  const reading = acceptedReading({ amountG, heavyDeg, sdG: 0.45 });
  return {
    id,
    wheelId,
    at,
    kind: 'sweep',
    source: 'camera',
    setup: shedSetup,
    assumed: ['wheel.massKg'],
    filmId: null,
    reading,
    trace: traceOf(reading),
  };
}

export function weightsEntry(id: string, wheelId: string, at: string): WeightsEntry {
  return {
    id,
    wheelId,
    at,
    kind: 'weights',
    added: [{ massG: 30, radiusMm: 185, angleDeg: 255 }],
  };
}

export function noteEntry(id: string, wheelId: string, at: string, text: string): NoteEntry {
  return { id, wheelId, at, kind: 'note', text };
}
