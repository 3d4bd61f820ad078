import type { FilmRecord } from '../../src/contract/filmShelf.ts';
import type { LogbookContents } from '../../src/contract/logbook.ts';
import { proposedStand, proposedWheel } from '../../src/job/proposals.ts';
import { refusedReading, shedSetup } from '../browser/gallery/fixtures.ts';
import { noteEntry, sweepEntry, weightsEntry } from './logRecords.ts';

/** A small logbook with one of each. */
export function smallLogbook(): LogbookContents {
  const refused = { reading: refusedReading('turn-incomplete'), trace: null };
  return {
    stand: proposedStand(),
    wheels: [
      proposedWheel('w1', 'minibus front left', '2026-03-01T08:00:00.000Z'),
      proposedWheel('w2', '<b>minibus</b> rear, "spare"', '2026-03-01T09:00:00.000Z'),
    ],
    entries: [
      { ...sweepEntry('s0', 'w1', '2026-03-02T07:50:00.000Z'), ...refused },
      sweepEntry('s1', 'w1', '2026-03-02T08:00:00.000Z'),
      weightsEntry('p1', 'w1', '2026-03-02T08:05:00.000Z'),
      { ...sweepEntry('s2', 'w1', '2026-03-02T08:10:00.000Z', 2.1, 120), filmId: 'f1' },
      {
        id: 'e1',
        wheelId: 'w2',
        at: '2026-03-02T08:15:00.000Z',
        kind: 'by-eye',
        lightSpotDeg: 250,
        massG: 30,
        radiusMm: 185,
        blind: true,
      },
      noteEntry('n1', 'w2', '2026-03-02T08:20:00.000Z', '=1+1 <img src=x onerror=alert(1)>'),
    ],
  };
}

export function filmRecord(id: string, sizeBytes: number): FilmRecord {
  return {
    id,
    at: '2026-03-02T08:09:00.000Z',
    wheelId: 'w1',
    setup: shedSetup,
    assumed: [],
    mimeType: 'video/mp4',
    sizeBytes,
    pieceCount: 1,
    entryId: 's2',
    removedAt: null,
  };
}
