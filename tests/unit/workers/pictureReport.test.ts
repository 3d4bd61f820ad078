import { afterEach, beforeEach, expect, it, vi } from 'vitest';

import type { SweepProgress } from '../../../src/contract/sweep.ts';
import {
  createLiveReport,
  createPictureReport,
  type PictureReport,
  type SweepListener,
} from '../../../workers/pictureReport.ts';

beforeEach(() => void vi.useFakeTimers({ toFake: ['performance'] }));
afterEach(() => void vi.useRealTimers());

/** Numbers of the pictures that are told of, of one each 10 ms for a second. */
function toldOf(make: (listener: SweepListener) => PictureReport): number[] {
  const told: number[] = [];
  const report = make({
    progress: ({ framesSeen }) => void told.push(framesSeen),
    preview: () => undefined,
  });
  for (let framesSeen = 0; framesSeen < 100; framesSeen++) {
    report.progress({ framesSeen } as SweepProgress, null);
    vi.advanceTimersByTime(10);
  }
  return told;
}

it('tells of a film five times a second, of a camera ten times, and at once of the first picture', () => {
  expect(toldOf((listener) => createPictureReport(listener, (picture) => picture))).toEqual([
    0, 20, 40, 60, 80,
  ]);
  const live = toldOf((listener) => createLiveReport(listener, (picture) => picture, 'sweeping'));
  expect(live).toEqual([0, 10, 20, 30, 40, 50, 60, 70, 80, 90]);
});
