import { describe, expect, it } from 'vitest';

import type { SweepProgress } from '../../../src/contract/sweep.ts';
import { sightChecks } from '../../../src/screens/sight/sightChecks.ts';
import { words } from '../../../src/screens/words/words.ts';

const seen = (part: Partial<SweepProgress>) =>
  sightChecks({ stage: 'looking', trouble: null, ...part } as SweepProgress);
const goods = (checks: ReturnType<typeof sightChecks>) => checks.filter((c) => c.isGood).length;

describe('what is seen before a sweep', () => {
  it('names only the first thing that is not good, with what to do', () => {
    expect(goods(sightChecks(null))).toBe(0);
    const dark = seen({ trouble: 'too-dark' });
    expect(goods(dark)).toBe(1);
    expect(dark.map(({ todo }) => todo)).toEqual([null, words.troubleNow['too-dark'], null, null]);
    expect(goods(seen({ trouble: 'line-lost' }))).toBe(2);
    expect(goods(seen({ stage: 'lost', trouble: 'view-blocked' }))).toBe(3);
  });

  it('is all good once the wheel is followed', () => {
    expect(goods(seen({ stage: 'following' }))).toBe(4);
  });
});
