import { describe, expect, it } from 'vitest';

import { createSweepClock } from '../../../workers/sweepClock.ts';

/** Pictures as pairs of the camera's time and the time of arrival, s. */
const timesOf = (pictures: readonly (readonly [number, number])[]) => {
  const clock = createSweepClock();
  return pictures.map(([cameraS, arrivalS]) => {
    const timeS = clock.sweepTimeS(cameraS, arrivalS);
    return timeS === null ? null : Math.round(timeS * 1000) / 1000;
  });
};

describe('a sweep’s own clock', () => {
  it('keeps the camera’s steps, however late pictures arrive', () => {
    const late = [
      [100, 0],
      [100.03, 4],
      [104, 4.01],
      [104.03, 4.04],
    ] as const;
    expect(timesOf(late)).toEqual([0, 0.03, 4, 4.03]);
  });

  it('does not follow a clock that jumps on or back by an hour', () => {
    const on = [
      [100, 0],
      [100.03, 0.03],
      [3700.06, 0.06],
      [3700.09, 0.09],
    ] as const;
    expect(timesOf(on)).toEqual([0, 0.03, 0.06, 0.09]);
    const back = [
      [5000, 0],
      [5000.03, 0.03],
      [1400.06, 0.06],
      [1400.09, 0.09],
    ] as const;
    expect(timesOf(back)).toEqual([0, 0.03, 0.06, 0.09]);
  });

  it('leaves out a picture that was there before', () => {
    expect(
      timesOf([
        [1, 0],
        [1, 0.01],
        [0.9, 0.02],
        [1.5, 0.5],
      ]),
    ).toEqual([0, null, null, 0.5]);
  });
});
