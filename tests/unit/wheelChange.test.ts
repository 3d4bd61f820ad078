import { describe, expect, it } from 'vitest';

import { fitTilt } from '../../src/measure/fit/fitTilt.ts';
import { drawConditions, simulateSweep } from '../pipeline/simulatedSweep.ts';
import { PLAIN } from './fitTiltSweeps.ts';

/** A sweep drawn by lot in whose course the wheel's own tilt changes by so much. */
function changedSweep(seed: number, byMm: number, atShare: number) {
  const direction = 2.4 * seed;
  const conditions = drawConditions(seed);
  const change = [byMm * Math.cos(direction), byMm * Math.sin(direction)] as const;
  const { observations } = simulateSweep(seed, {
    ...conditions,
    changed: { atShare, byMm: change },
  });
  return { observations, atS: atShare * conditions.durationS };
}

describe('a weight that comes off in the course of a sweep', () => {
  it.each([1, 2, 3, 4])('is found out, with its time and size (sweep %d)', (seed) => {
    const { observations, atS } = changedSweep(seed, 5, 0.3 + 0.07 * seed);
    const fit = fitTilt(observations);
    expect(!fit.ok && fit.failure.code).toBe('wheel-changed');
    const { aboutSecond, changeMm } = (!fit.ok && fit.failure.evidence) as Record<string, number>;
    expect(Math.abs(aboutSecond! - atS)).toBeLessThan(3);
    expect(Math.abs(changeMm! - 5)).toBeLessThan(1.5);
  });

  it('is read through where it matters less than the eye can tell', () => {
    const fit = fitTilt(changedSweep(3, 0.3, 0.5).observations);
    expect(fit.ok).toBe(true);
  });
});

describe('a wheel that stays the same', () => {
  it.each([11, 12, 13, 14, 15])('is not taken for another (sweep %d)', (seed) => {
    const fit = fitTilt(simulateSweep(seed, drawConditions(seed)).observations);
    expect(fit.ok).toBe(true);
  });

  it.each([1, 2, 3, 4])('nor when it is knocked once in mid-turn (sweep %d)', (seed) => {
    const once = { ...PLAIN, kickMm: 4, kicksPerS: 1 / 20, forceMm: 0.03 };
    const fit = fitTilt(simulateSweep(seed, once).observations);
    expect(fit.ok).toBe(true);
  });
});
