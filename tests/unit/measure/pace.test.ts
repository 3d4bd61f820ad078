import { describe, expect, it } from 'vitest';

import { cameraPace } from '../../../src/measure/pace/pace.ts';
import { finished, nothingLeft, type SlicedWork } from '../../../src/measure/pace/slicedWork.ts';

describe('cameraPace', () => {
  it('does one step beside a picture at 60 a second, more where pictures come slower', () => {
    expect(cameraPace(1 / 60).steps).toBe(1);
    expect(cameraPace(1 / 30).steps).toBe(2);
    expect(cameraPace(1 / 24).steps).toBe(3);
  });

  it('always goes on, and never does much at once', () => {
    for (const elapsedS of [0, 1e-6, 0.01, 0.1, 3, Infinity]) {
      const { steps, again } = cameraPace(elapsedS);
      expect(steps).toBeGreaterThanOrEqual(1);
      expect(steps).toBeLessThanOrEqual(4);
      // More than one kept picture for each that comes, or it would never catch up.
      expect(again).toBeGreaterThan(1);
    }
  });
});

describe('finished', () => {
  it('takes every step and gives what the work came to', () => {
    const taken: number[] = [];
    function* work(): SlicedWork<string> {
      for (let step = 0; step < 3; step++) {
        taken.push(step);
        yield;
      }
      return yield* nothingLeft('done');
    }
    expect(finished(work())).toBe('done');
    expect(taken).toEqual([0, 1, 2]);
  });
});
