import { describe, expect, it } from 'vitest';

import { chooseEdge, type StackPeak } from '../../../src/measure/edge/edgeChoice.ts';

const peak = (heightMm: number, strength: number): StackPeak => ({ heightMm, strength });
/** Shoulder groove, its neighbour 29 mm below, and a seam on the sidewall. */
const TREAD = [peak(14, 0.3), peak(-3, 1.5), peak(-32, 1.6)];

const heightOf = (peaks: readonly StackPeak[], tapMm: number | null) => {
  const chosen = chooseEdge(peaks, tapMm);
  return chosen.ok ? (chosen.value?.heightMm ?? null) : chosen.failure.code;
};

describe('which edge is followed', () => {
  it('is the topmost plain one, or the tapped one', () => {
    expect(heightOf(TREAD, null)).toBe(-3);
    expect(heightOf(TREAD, -30)).toBe(-32);
    expect(heightOf(TREAD, 5)).toBeNull();
    expect(heightOf([], null)).toBeNull();
  });

  it('is none while the line hides it, seams and dust being all that shows beside the line', () => {
    const besideLine = [peak(24, 0.45)];
    expect(chooseEdge(besideLine, null, 1.36)).toEqual({ ok: true, value: null });
    expect(chooseEdge([...besideLine, peak(-3, 1.1)], null, 1.4)).toMatchObject({
      value: { heightMm: -3 },
    });
  });

  it('is refused when a tap lies as near to one as to another as plain', () => {
    const two = [...TREAD, peak(-10, 1.45)];
    expect(heightOf(two, -6.2)).toBe('edge-ambiguous');
    // Nearer to one by more than a tap errs, or to one that is much plainer.
    expect(heightOf(two, -4.5)).toBe(-3);
    expect(heightOf([...TREAD, peak(-10, 0.6)], -6.5)).toBe(-3);
  });

  it('is refused when the plainest has a twin so near that blocks would hop', () => {
    expect(heightOf([peak(0, 1), peak(-3, 0.95)], null)).toBe('edge-ambiguous');
    // One rounded edge that falls in two steps, and two grooves a groove's width apart.
    expect(heightOf([peak(0, 1), peak(-2, 0.95)], null)).toBe(0);
    expect(heightOf([peak(0, 1), peak(-8, 0.95)], null)).toBe(0);
  });
});
