import { describe, expect, it } from 'vitest';

import { growthVerdict, SETTLING_S, type HeldAt } from '../../tools/growthVerdict.ts';

/** Twice a minute, with the ups and downs of a browser that tidies up. */
function watched(minutes: number, growth: { scriptsMbPerHour: number; processMbPerHour: number }) {
  return Array.from({ length: 2 * minutes }, (_, i): HeldAt => {
    const atS = 30 * (i + 1);
    const unrest = i % 3;
    return {
      atS,
      scriptsMb: 45 + 2 * unrest + (growth.scriptsMbPerHour * atS) / 3600,
      processMb: 760 + 30 * unrest + (growth.processMbPerHour * atS) / 3600,
    };
  });
}

describe('growthVerdict', () => {
  it('lets pass what goes up and down', () => {
    const still = { scriptsMbPerHour: 0, processMbPerHour: 0 };
    expect(growthVerdict(watched(60, still)).isFine).toBe(true);
    expect(growthVerdict(watched(10, still)).isFine).toBe(true);
  });

  it('finds one in a hundred pictures that is never forgotten', () => {
    const leak = { scriptsMbPerHour: 0.01 * 30 * 3600 * 0.025, processMbPerHour: 0 };
    const { isFine, words } = growthVerdict(watched(60, leak));
    expect(isFine).toBe(false);
    expect(words).toContain('GROWS');
  });

  it('finds pictures that nobody closes', () => {
    expect(growthVerdict(watched(60, { scriptsMbPerHour: 0, processMbPerHour: 300 })).isFine).toBe(
      false,
    );
  });

  it('leaves out what fills up at first', () => {
    const held = watched(60, { scriptsMbPerHour: 0, processMbPerHour: 0 }).map((one) =>
      one.atS < SETTLING_S ? { ...one, scriptsMb: 20, processMb: 300 } : one,
    );
    expect(growthVerdict(held).isFine).toBe(true);
  });

  it('does not pass what is too short to tell', () => {
    const { isFine, words } = growthVerdict(
      watched(5, { scriptsMbPerHour: 0, processMbPerHour: 0 }),
    );
    expect(isFine).toBe(false);
    expect(words).toContain('too short');
  });
});
