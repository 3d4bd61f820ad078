import { describe, expect, it } from 'vitest';

import type { ResponseAngleJudgement } from '../../../src/balance/responseAngle.ts';
import type { SweepSetup, TurnSense } from '../../../src/contract/setup.ts';
import type { SweepReaderOptions } from '../../../src/contract/sweep.ts';
import { dueSense } from '../../../src/measure/sweep/dueSense.ts';
import { readingWarnings } from '../../../src/measure/sweep/readingWarnings.ts';
import { shedSetup } from '../../browser/gallery/fixtures.ts';

const tried: SweepSetup = {
  ...shedSetup,
  sight: { ...shedSetup.sight, tested: { turn: 'confirmed' } },
};
const codes = (
  sense: TurnSense,
  options: SweepReaderOptions = {},
  setup = shedSetup,
  answer: ResponseAngleJudgement | null = null,
) => readingWarnings(setup, sense, options, answer).map((warning) => warning.code);

describe('what nobody confirmed of a picture', () => {
  it('is said of every film, whichever way the wheel is seen turning', () => {
    expect(codes('clockwise')).toEqual(['clockwise-unconfirmed']);
    expect(codes('counter-clockwise')).toEqual(['sense-unconfirmed']);
  });

  it('is said before a camera where the wheel is not seen turning as was asked', () => {
    expect(codes('clockwise', { askedSense: 'clockwise' })).toEqual([]);
    expect(codes('counter-clockwise', { askedSense: 'clockwise' })).toEqual(['sense-unconfirmed']);
  });

  it('is said of a camera that may mirror', () => {
    const options = { askedSense: 'clockwise', mayMirror: true } as const;
    expect(codes('clockwise', options)).toEqual(['camera-may-mirror']);
  });

  it('is settled by a person’s word, or a turn that was tried by hand', () => {
    for (const sense of ['clockwise', 'counter-clockwise'] as const) {
      expect(codes(sense, {}, { ...shedSetup, turnSense: sense })).toEqual([]);
      expect(codes(sense, { mayMirror: true }, tried)).toEqual([]);
    }
  });

  it('is settled by the answer to a weight, unless a mirror would show the same answer', () => {
    const sound = { finding: 'sound', angleDeg: 3, standardErrorDeg: 4, alsoPossible: [] } as const;
    expect(codes('clockwise', {}, shedSetup, sound)).toEqual([]);
    const atTheValve = { ...sound, alsoPossible: ['turn-sense-wrong'] } as const;
    expect(codes('clockwise', {}, shedSetup, atTheValve)).toEqual(['clockwise-unconfirmed']);
  });
});

describe('the sense that a picture must show', () => {
  const front = { mayMirror: true, askedSense: 'clockwise' } as const;

  it('is the one that was entered, else the one that was asked before a camera that may mirror', () => {
    expect(dueSense({ ...shedSetup, turnSense: 'counter-clockwise' }, front)).toBe(
      'counter-clockwise',
    );
    expect(dueSense(shedSetup, front)).toBe('clockwise');
  });

  it('is free where a camera does not mirror, or was tried', () => {
    expect(dueSense(shedSetup, { askedSense: 'clockwise' })).toBeNull();
    expect(dueSense(tried, front)).toBeNull();
  });
});
