import { describe, expect, it } from 'vitest';

import { isNeededForView } from '../../../src/measure/sweep/neededForView.ts';
import type { FrameRecord } from '../../../src/measure/sweep/sweepRecording.ts';
import {
  CERTAIN_GAP_S,
  createTurnTracker,
  type TurnTracker,
} from '../../../src/measure/turn/turnTracker.ts';

/** Pictures of a wheel turned steadily that are asked for, by their number. */
function needed(hz: number, rateDegPerS: number, seconds = 2): number[] {
  const turn = { ...createTurnTracker(10, 1), rateDegPerS };
  const frames: FrameRecord[] = [frameAt(0)];
  const taken: number[] = [];
  for (let n = 1; n <= hz * seconds; n++) {
    if (!isNeededForView({ turn, frames }, n / hz, 1 / hz)) continue;
    frames.push(frameAt(n / hz));
    taken.push(n);
  }
  return taken;
}

function frameAt(timeS: number, lean: object | null = {}): FrameRecord {
  return { timeS, lean } as FrameRecord;
}

const stepsOf = (taken: readonly number[]) => taken.map((n, i) => n - (taken[i - 1] ?? 0));

describe('isNeededForView', () => {
  it.each([
    [12, 1],
    [24, 2],
    [30, 3],
    [60, 7],
  ])('of %d pictures a second turned slowly takes each %d.', (hz, every) => {
    expect(new Set(stepsOf(needed(hz, 8)))).toEqual(new Set([every]));
    expect(every / hz).toBeLessThanOrEqual(CERTAIN_GAP_S);
  });

  it('takes more of a wheel turned fast, so that no step is too long to follow', () => {
    const steps = stepsOf(needed(60, 38));
    expect(new Set(steps)).toEqual(new Set([3]));
    expect(new Set(stepsOf(needed(24, 30)))).toEqual(new Set([1]));
    // The sense does not matter.
    expect(needed(60, -38)).toEqual(needed(60, 38));
  });

  it('takes every picture while tread or turn are not seen, or in doubt', () => {
    const turn = createTurnTracker(10, 1);
    const askSoon = (frame: FrameRecord, now: TurnTracker) =>
      isNeededForView({ turn: now, frames: [frame] }, 1 / 60, 1 / 60);
    expect(askSoon(frameAt(0), turn)).toBe(false);
    expect(askSoon(frameAt(0, null), turn)).toBe(true);
    expect(askSoon(frameAt(0), { ...turn, lostSinceS: 0 })).toBe(true);
    expect(askSoon(frameAt(0), { ...turn, doubt: { ...turn.doubt, sure: 0 } })).toBe(true);
    expect(isNeededForView({ turn, frames: [] }, 0, 1 / 60)).toBe(true);
  });
});
