import { describe, expect, it } from 'vitest';

import { readingWarnings } from '../../../src/measure/sweep/readingWarnings.ts';
import { shedSetup } from '../../browser/gallery/fixtures.ts';

describe('what nobody confirmed of a picture', () => {
  it('is said of a counter-clockwise turn and of a camera that may mirror', () => {
    expect(readingWarnings(shedSetup, 'clockwise', false)).toEqual([]);
    const code = (mayMirror: boolean) =>
      readingWarnings(shedSetup, 'counter-clockwise', mayMirror).map((warning) => warning.code);
    expect(code(false)).toEqual(['sense-unconfirmed']);
    expect(code(true)).toEqual(['camera-may-mirror']);
  });

  it('is settled by a turn that was tried by hand before the sweep', () => {
    const tested = { turn: 'confirmed' } as const;
    const setup = { ...shedSetup, sight: { ...shedSetup.sight, tested } };
    expect(readingWarnings(setup, 'counter-clockwise', true)).toEqual([]);
  });
});
