import { describe, expect, it } from 'vitest';

import type { SweepEntry } from '../../../src/contract/logbook.ts';
import { seasonReadings } from '../../../src/screens/logbook/seasonReadings.ts';
import { refusedReading } from '../../browser/gallery/fixtures.ts';
import { noteEntry, sweepEntry, weightsEntry } from '../../fakes/logRecords.ts';

const ADDED = [{ massG: 30, radiusMm: 185, angleDeg: 255 }];
const day = (n: number) => new Date(Date.UTC(2026, 2, n)).toISOString();

function checkOf(before: string, id: string, n: number): SweepEntry {
  const sweep = sweepEntry(id, 'w1', day(n), 2);
  return { ...sweep, setup: { ...sweep.setup, after: { sweep: before, added: ADDED } } };
}

describe('a wheel over the seasons', () => {
  it('sets what weights left apart from how the wheel came, and close to it', () => {
    const read = seasonReadings([
      sweepEntry('s1', 'w1', day(1), 28),
      weightsEntry('p1', 'w1', day(1)),
      checkOf('s1', 's2', 2),
      checkOf('s1', 's3', 3),
      noteEntry('n1', 'w1', day(4), 'new tyre'),
      sweepEntry('s4', 'w1', day(9), 17),
    ]);
    expect(read.map(({ id, isCheck }) => [id, isCheck])).toEqual([
      ['s1', false],
      ['s2', true],
      ['s3', true],
      ['s4', false],
    ]);
    const [first, check, second, next] = read.map(({ place }) => place);
    expect(first).toBe(0);
    expect(check! - first!).toBeLessThan(next! - second!);
  });

  it('leaves sweeps without a reading out, and of many draws the latest', () => {
    const refused = { ...sweepEntry('s0', 'w1', day(1)), reading: refusedReading('line-lost') };
    const many = Array.from({ length: 30 }, (_, i) => sweepEntry(`s${i + 1}`, 'w1', day(i + 2)));
    const read = seasonReadings([refused, ...many]);
    expect(read.at(-1)!.id).toBe('s30');
    expect(read.length).toBeLessThan(30);
    expect(read[0]!.place).toBe(0);
    expect(seasonReadings([refused])).toEqual([]);
  });
});
