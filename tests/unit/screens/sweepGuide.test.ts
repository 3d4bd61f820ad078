import { describe, expect, it } from 'vitest';

import { SECTOR_COUNT, type SweepProgress } from '../../../src/contract/sweep.ts';
import { REFUSALS, type RefusalCode } from '../../../src/contract/refusals.ts';
import { instructionFor } from '../../../src/screens/sweep/instructionFor.ts';
import { signalOf } from '../../../src/screens/sweep/signals.ts';
import { localVoiceFor } from '../../../src/screens/sweep/speech.ts';
import { steadinessOf } from '../../../src/screens/sweep/steadinessOf.ts';
import {
  isJustTold,
  SWEEP_EVENTS,
  sweepEventBetween,
} from '../../../src/screens/sweep/sweepEvents.ts';
import {
  EMPTY_TRACE,
  isLostAfter,
  pointNow,
  tracePoints,
  withReport,
} from '../../../src/screens/sweep/turnTrace.ts';
import { de } from '../../../src/screens/words/de/index.ts';
import { en } from '../../../src/screens/words/en/index.ts';
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
    expect(say(progress({ covered: 20, turningDegPerS: 2 }))).toBe(words.sweep.live.faster);
    expect(say(progress({ covered: 20, turningDegPerS: 0.2 }))).toBe(words.sweep.live.goBackOn);
    expect(say(progress({ covered: 60 }))).toBe(words.sweep.live.almost);
    expect(say(progress({ covered: 72, enough: true }))).toBe(words.sweep.live.enough);
  });

  it('asks for a drag before the practice stand, where nothing is to be aimed', () => {
    const there = (p: SweepProgress) => instructionFor(p, 'practice', null).say;
    expect(there(progress({ stage: 'looking' }))).toBe(words.sweep.practice.lookingFirst);
    // A band of some degrees is seen at once, of a wheel that has not been turned yet.
    expect(there(progress({ covered: 2, coveredDeg: 0, turningDegPerS: 0 }))).toBe(
      words.sweep.practice.begin,
    );
    expect(there(progress({ covered: 20 }))).toBe(words.sweep.live.goOn);
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
  const looking = progress({ stage: 'looking' });
  const found = progress({ covered: 0 });

  it('tells each once', () => {
    expect(sweepEventBetween(null, looking)).toBeNull();
    expect(sweepEventBetween(looking, found)).toBe('found');
    expect(sweepEventBetween(found, progress({ covered: 17 }))).toBeNull();
    expect(sweepEventBetween(progress({ covered: 18 }), progress({ covered: 19 }))).toBeNull();
    expect(sweepEventBetween(found, progress({ stage: 'lost' }))).toBe('lost');
    expect(sweepEventBetween(progress({ stage: 'lost' }), progress({ stage: 'lost' }))).toBeNull();
    expect(sweepEventBetween(progress({ stage: 'lost' }), found)).toBe('found');
    const enough = progress({ covered: 72, enough: true });
    expect(sweepEventBetween(progress({ covered: 71 }), enough)).toBe('enough');
    expect(sweepEventBetween(enough, enough)).toBeNull();
  });

  it('counts the quarters, so that one hears how far it is', () => {
    const at = (covered: number) => progress({ covered });
    const told = [18, 36, 54, 72].map((covered) => sweepEventBetween(at(covered - 1), at(covered)));
    expect(told).toEqual(['quarter', 'half', 'three-quarters', 'whole']);
  });

  it('says when the wheel goes too fast, and again only after it was slower for a while', () => {
    const good = progress({ covered: 5 });
    const fast = progress({ covered: 5, turningDegPerS: 31 });
    expect(sweepEventBetween(good, fast)).toBe('too-fast');
    expect(sweepEventBetween(good, fast, false)).toBeNull();
    expect(sweepEventBetween(fast, fast)).toBeNull();
    expect(isJustTold('too-fast', 12, { event: 'too-fast', atS: 10 })).toBe(true);
    expect(isJustTold('too-fast', 15, { event: 'too-fast', atS: 10 })).toBe(false);
    expect(isJustTold('lost', 12, { event: 'too-fast', atS: 10 })).toBe(false);
  });
});

describe('what is heard at an event', () => {
  it('is a tone and a word, each only as far as it is wanted', () => {
    for (const event of SWEEP_EVENTS) {
      const both = signalOf(event, { tones: true, voice: true });
      expect(both).toEqual({ tone: event, say: words.sweep.spoken[event] });
      expect(signalOf(event, { tones: false, voice: true }).tone).toBeNull();
      expect(signalOf(event, { tones: true, voice: false }).say).toBeNull();
    }
  });

  it('is said in a few words', () => {
    for (const spoken of [en, de].map((language) => language.sweep.spoken)) {
      for (const event of SWEEP_EVENTS) expect(spoken[event].split(' ').length).toBeLessThan(5);
    }
  });

  it('is spoken by a voice of this device alone', () => {
    const far = { lang: 'en-GB', localService: false, default: true };
    const near = { lang: 'en-US', localService: true, default: false };
    const german = { lang: 'de-DE', localService: true, default: false };
    expect(localVoiceFor([far, german], 'en')).toBeNull();
    expect(localVoiceFor([far, german, near], 'en')).toBe(near);
    expect(localVoiceFor([far, german, near], 'de')).toBe(german);
    const chosen = { ...near, default: true };
    expect(localVoiceFor([near, chosen], 'en')).toBe(chosen);
  });
});

describe('the trace that grows with the turn', () => {
  const at = (turnDeg: number, edgeHeightMm: number, changes: Partial<SweepProgress> = {}) =>
    progress({ turnDeg, edgeHeightMm, coveredDeg: Math.abs(turnDeg), ...changes });
  const traceOf = (reports: readonly SweepProgress[]) =>
    tracePoints(reports.reduce(withReport, EMPTY_TRACE));

  it('goes on where it was when the tape is found and the turn is counted from there', () => {
    const points = traceOf([
      at(0, 1),
      at(10, 2),
      at(-100, 3, { markSeen: true, coveredDeg: 20 }),
      at(-90, 4, { markSeen: true, coveredDeg: 30 }),
    ]);
    expect(points.map(({ turnDeg }) => turnDeg)).toEqual([0, 10, 20]);
    expect(points.at(-1)!.heightMm).toBe(4);
  });

  it('runs to the right whichever way the wheel is turned', () => {
    expect(traceOf([at(0, 1), at(-10, 2), at(-20, 3)]).map((p) => p.turnDeg)).toEqual([0, 10, 20]);
  });

  it('tells where the sight stands, which is not the end of the trace when turned back', () => {
    const turnedBack = [at(0, 1), at(30, 5), at(10, 2, { coveredDeg: 30 })];
    expect(pointNow(turnedBack.reduce(withReport, EMPTY_TRACE))).toEqual({
      turnDeg: 10,
      heightMm: 2,
    });
    const counterClockwise = [at(0, 1), at(-30, 5)].reduce(withReport, EMPTY_TRACE);
    expect(pointNow(counterClockwise)).toEqual({ turnDeg: 30, heightMm: 5 });
    expect(pointNow(EMPTY_TRACE)).toBeNull();
  });

  it('breaks where line or edge was lost, and not between far points of a film read fast', () => {
    const reports = [at(0, 1), at(60, 2), at(70, 9, { stage: 'lost' }), at(120, 3)];
    const trace = reports.reduce(withReport, EMPTY_TRACE);
    const lost = tracePoints(trace).map((point) => isLostAfter(trace, point));
    expect(lost).toEqual([false, true, false]);
  });

  it('leaves out what was not seen, and begins anew with a new count', () => {
    const lost = at(10, 9, { stage: 'lost' });
    expect(traceOf([at(0, 1), lost, at(20, 3)]).map((p) => p.heightMm)).toEqual([1, 3]);
    expect(traceOf([at(0, 1), at(50, 2), at(0, 7, { coveredDeg: 0 })])).toEqual([
      { turnDeg: 0, heightMm: 7 },
    ]);
  });
});

it('tells rocking by what it hides of the turn', () => {
  expect([0.1, 0.9, 3].map(steadinessOf)).toEqual(['steady', 'little', 'rocking']);
});
