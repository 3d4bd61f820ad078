import { describe, expect, it } from 'vitest';

import { SECTOR_COUNT, type SweepProgress } from '../../../src/contract/sweep.ts';
import { REFUSALS, type RefusalCode } from '../../../src/contract/refusals.ts';
import { instructionFor } from '../../../src/screens/sweep/instructionFor.ts';
import { sweepEventBetween } from '../../../src/screens/sweep/sweepEvents.ts';
import { words } from '../../../src/screens/words/words.ts';

function progress(changes: Partial<SweepProgress> & { covered?: number }): SweepProgress {
  const { covered = 0, ...rest } = changes;
  return {
    stage: 'following',
    trouble: null,
    framesSeen: 10,
    timeS: 1,
    coveredDeg: covered * 5,
    coveredSectors: Array.from({ length: SECTOR_COUNT }, (_, index) => index < covered),
    turnDeg: 0,
    markSeen: false,
    turningDegPerS: 12,
    edgeHeightMm: 1,
    enough: false,
    overlay: null,
    ...rest,
  };
}

describe('the one line to read while a camera sweep runs', () => {
  const say = (p: SweepProgress | null) => instructionFor(p, 'camera', null).say;

  it('leads from aiming to enough', () => {
    expect(say(null)).toBe(words.sweep.live.starting);
    expect(say(progress({ stage: 'looking' }))).toBe(words.sweep.live.lookingFirst);
    expect(say(progress({ covered: 1, turningDegPerS: 0 }))).toBe(words.sweep.live.begin);
    expect(say(progress({ covered: 20 }))).toBe(words.sweep.live.goOn);
    expect(say(progress({ covered: 20, turningDegPerS: 0.2 }))).toBe(words.sweep.live.goBackOn);
    expect(say(progress({ covered: 60 }))).toBe(words.sweep.live.almost);
    expect(say(progress({ covered: 72, enough: true }))).toBe(words.sweep.live.enough);
  });

  it('asks for less speed in either sense of turn', () => {
    expect(say(progress({ covered: 20, turningDegPerS: 40 }))).toBe(words.sweep.live.slower);
    expect(say(progress({ covered: 20, turningDegPerS: -40 }))).toBe(words.sweep.live.slower);
  });

  it('puts trouble first, but not before "enough"', () => {
    const dark = progress({ stage: 'looking', trouble: 'too-dark' });
    expect(instructionFor(dark, 'camera', null)).toEqual({
      say: 'Too dark: turn on a lamp',
      tone: 'trouble',
    });
    expect(say(progress({ enough: true, stage: 'lost', trouble: 'line-lost' }))).toBe(
      words.sweep.live.enough,
    );
  });

  it('has a short line for every reason, short enough to read at a glance', () => {
    for (const code of Object.keys(REFUSALS) as RefusalCode[]) {
      expect(words.troubleNow[code].length).toBeGreaterThan(5);
      expect(words.troubleNow[code].length).toBeLessThanOrEqual(45);
    }
  });
});

describe('the line while a film is read', () => {
  it('never gives the hand an order', () => {
    const orders: readonly string[] = Object.values(words.sweep.live);
    for (const stage of ['looking', 'following', 'lost'] as const) {
      const words = instructionFor(progress({ stage, trouble: 'too-fast' }), 'file', 0.4).say;
      expect(orders).not.toContain(words);
    }
  });

  it('says that a film is read a second time, since its share read starts again', () => {
    const again = progress({ stage: 'following', covered: 12 });
    expect(instructionFor(again, 'file', 0.2, 2).say).toBe(words.sweep.film.secondLook);
    expect(instructionFor(again, 'file', 0.2, 1).say).toBe(words.sweep.film.following);
    expect(instructionFor(progress({ stage: 'lost' }), 'file', 0.2, 2).say).toBe(
      words.sweep.film.lost,
    );
  });

  it('says when the reading is being worked out', () => {
    expect(instructionFor(progress({ enough: true }), 'sample', 1).say).toBe(
      words.sweep.film.working,
    );
  });
});

describe('events worth a tone', () => {
  it('tells each once', () => {
    const looking = progress({ stage: 'looking' });
    const found = progress({ covered: 0 });
    expect(sweepEventBetween(null, looking)).toBeNull();
    expect(sweepEventBetween(looking, found)).toBe('found');
    expect(sweepEventBetween(found, progress({ covered: 17 }))).toBeNull();
    expect(sweepEventBetween(progress({ covered: 17 }), progress({ covered: 18 }))).toBe('quarter');
    expect(sweepEventBetween(progress({ covered: 18 }), progress({ covered: 19 }))).toBeNull();
    expect(sweepEventBetween(found, progress({ stage: 'lost' }))).toBe('lost');
    expect(sweepEventBetween(progress({ stage: 'lost' }), progress({ stage: 'lost' }))).toBeNull();
    const enough = progress({ covered: 72, enough: true });
    expect(sweepEventBetween(progress({ covered: 71 }), enough)).toBe('enough');
    expect(sweepEventBetween(enough, enough)).toBeNull();
  });
});
