import { describe, expect, it } from 'vitest';

import { FIRST_LOOK, lookAfter } from '../../../src/contract/filmLook.ts';
import type { SecondLook, SightMemory } from '../../../src/contract/sweep.ts';

const TAUGHT: SecondLook = {
  sight: { laserColour: 'red' } as SightMemory,
  seenLine: { curvePx: new Float32Array(0), rows: new Map() },
};

describe('lookAfter', () => {
  it('is none where the reading stands, or was made with a better view', () => {
    expect(lookAfter(FIRST_LOOK, null)).toBeNull();
    expect(lookAfter(TAUGHT, TAUGHT)).toBeNull();
    expect(lookAfter(TAUGHT, 'whole')).toBeNull();
  });

  it('takes along what was taught', () => {
    expect(lookAfter(FIRST_LOOK, TAUGHT)).toEqual(TAUGHT);
    expect(lookAfter({}, TAUGHT)).toEqual(TAUGHT);
  });

  it('leaves nothing out where that was in vain, and asks for all only once', () => {
    expect(lookAfter(FIRST_LOOK, 'whole')).toEqual({});
    expect(lookAfter({}, 'whole')).toBeNull();
  });
});
