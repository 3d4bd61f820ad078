import { describe, expect, it } from 'vitest';

import { ringWords } from '../../../src/screens/sweep/ringWords.ts';
import { words } from '../../../src/screens/words/words.ts';
import { progressOf } from '../../browser/gallery/fixtures.ts';
import { SECTOR_DEG } from '../../../src/contract/sweep.ts';

const toGo = (coveredDeg: number): string | null => {
  const progress = progressOf({ covered: coveredDeg / SECTOR_DEG });
  return ringWords({ ...progress, coveredDeg }, 'metric').toGo;
};

describe('words in the ring', () => {
  it('say what is missing to the whole turn that stands above them', () => {
    expect(toGo(150)).toBe(words.sweep.toGo('210°'));
    expect(toGo(359.4)).toBe(words.sweep.toGo('1°'));
  });

  it('ask for a little more until the turn is closed', () => {
    expect(toGo(370)).toBe(words.sweep.littleMore);
    expect(toGo(400)).toBeNull();
  });
});
