import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';

import type { WheelPose } from '../../../samples/stand/motion/wheelPose.ts';
import { standClock } from '../../../src/session/practice/standClock.ts';

const STEP_S = 0.1;
const EVERY_MS = 1000 * STEP_S;

/** A stand whose pose is nothing but how far its own time has gone. */
function makeStand() {
  let goneS = 0;
  const drawn: number[] = [];
  const clock = standClock(
    {
      everyMs: EVERY_MS,
      draw: () => drawn.push(goneS),
      taken: () => Promise.resolve({} as ImageBitmap),
    },
    (stepS) => {
      goneS += stepS;
      return {} as WheelPose;
    },
  );
  return { clock, drawn };
}

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] });
});

afterEach(() => {
  vi.useRealTimers();
});

describe('the practice stand’s clock', () => {
  it.each([10, 1500])('steps evenly while measuring takes %d ms a picture', async (measureMs) => {
    const { clock, drawn } = makeStand();
    const times: number[] = [];
    let measuring = 0;
    clock.feed(async (_, timeS) => {
      expect((measuring += 1)).toBe(1);
      times.push(timeS);
      await new Promise((resolve) => setTimeout(resolve, measureMs));
      measuring -= 1;
      return true;
    });
    await vi.advanceTimersByTimeAsync(20 * Math.max(EVERY_MS, measureMs));
    clock.stop();
    expect(times.length).toBeGreaterThan(15);
    for (let i = 1; i < times.length; i++) {
      // Times and motion keep together, however slow the machine is.
      expect(times[i]! - times[i - 1]!).toBeCloseTo(STEP_S, 9);
      expect(drawn[i]! - drawn[i - 1]!).toBeCloseTo(STEP_S, 9);
    }
  });

  it('moves by the clock on the wall while it is looked at, not far after a sleep, and else rests', async () => {
    const { clock, drawn } = makeStand();
    await vi.advanceTimersByTimeAsync(2000);
    expect(drawn).toEqual([]);
    clock.look(true);
    await vi.advanceTimersByTimeAsync(2000);
    expect(drawn.at(-1)).toBeCloseTo(2, 1);
    const before = drawn.at(-1)!;
    vi.setSystemTime(Date.now() + 60_000);
    await vi.advanceTimersByTimeAsync(EVERY_MS);
    expect(drawn.at(-1)! - before).toBeLessThan(1);
    clock.look(false);
    await vi.advanceTimersByTimeAsync(2 * EVERY_MS);
    const pictures = drawn.length;
    await vi.advanceTimersByTimeAsync(2000);
    expect(drawn).toHaveLength(pictures);
    clock.stop();
  });

  it('gives no more once the taker wants no more, or cannot', async () => {
    for (const answer of [() => Promise.resolve(false), () => Promise.reject(new Error('gone'))]) {
      const { clock, drawn } = makeStand();
      const take = vi.fn(answer);
      clock.look(true);
      clock.feed(take);
      await vi.advanceTimersByTimeAsync(1000);
      expect(take).toHaveBeenCalledTimes(1);
      expect(drawn.length).toBeGreaterThan(5);
      clock.stop();
    }
  });
});
