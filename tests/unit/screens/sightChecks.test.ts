import { describe, expect, it } from 'vitest';

import type { SightTests } from '../../../src/contract/setup.ts';
import type { SweepProgress } from '../../../src/contract/sweep.ts';
import { firstTodo, sightChecks, type SightCheck } from '../../../src/screens/sight/sightChecks.ts';
import { words } from '../../../src/screens/words/words.ts';

const seen = (part: Partial<SweepProgress>) =>
  sightChecks({ stage: 'looking', trouble: null, ...part } as SweepProgress);
const goods = (checks: readonly SightCheck[]) => checks.filter((c) => c.state === 'good').length;

describe('what is seen before a sweep', () => {
  it('names only the first thing that is not good, with what to do', () => {
    expect(goods(sightChecks(null))).toBe(0);
    const dark = seen({ trouble: 'too-dark' });
    expect(goods(dark)).toBe(1);
    expect(dark.slice(0, 4).map(({ todo }) => todo)).toEqual([
      null,
      words.troubleNow['too-dark'],
      null,
      null,
    ]);
    expect(goods(seen({ trouble: 'line-lost' }))).toBe(2);
    expect(goods(seen({ stage: 'lost', trouble: 'view-blocked' }))).toBe(3);
  });

  it('is all good once the wheel is followed', () => {
    const checks = seen({ stage: 'following' });
    expect(goods(checks)).toBe(4);
    expect(firstTodo(checks)).toBeNull();
  });
});

describe('what was tried by hand', () => {
  const following = { stage: 'following', trouble: null } as SweepProgress;

  it('may stay untried, and counts as good when it was confirmed', () => {
    const states = (tests: SightTests) =>
      sightChecks(following, tests)
        .slice(4)
        .map(({ state }) => state);
    expect(states({})).toEqual(['not-tried', 'not-tried']);
    expect(states({ up: 'confirmed' })).toEqual(['good', 'not-tried']);
    expect(states({ up: 'confirmed', turn: 'confirmed' })).toEqual(['good', 'good']);
  });

  it('is asked for before a camera that may mirror, until it was tried', () => {
    expect(firstTodo(sightChecks(following, {}, true))).toBe(words.sight.tryMirror);
    expect(firstTodo(sightChecks(following, { turn: 'confirmed' }, true))).toBeNull();
  });

  it('is what to mend when it came out the wrong way round, but after what is not seen', () => {
    const tests = { up: 'reversed', turn: 'reversed' } as const;
    expect(firstTodo(sightChecks(following, tests))).toBe(words.sight.reversed.up);
    const dark = { stage: 'looking', trouble: 'too-dark' } as SweepProgress;
    expect(firstTodo(sightChecks(dark, tests))).toBe(words.troubleNow['too-dark']);
  });
});
