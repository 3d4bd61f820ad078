import { describe, expect, it } from 'vitest';

import type { EdgeObservations } from '../../../src/measure/sweep/edgeObservations.ts';
import { lineDark } from '../../../src/measure/sweep/lineDark.ts';
import type { SweepRecording } from '../../../src/measure/sweep/sweepRecording.ts';

const BLOCKS = 15;
const PICTURES_PER_S = 12;

/** A sweep whose edge stands at `heightMm` everywhere at once; the line shows where it is on and not hidden. */
function sweep(
  lengthS: number,
  heightMm: (s: number) => number,
  isOn: (s: number) => boolean,
  isHidden: (heightMm: number) => boolean = () => false,
): ReturnType<typeof lineDark> {
  const timeS = Float64Array.from(
    { length: lengthS * PICTURES_PER_S },
    (_, i) => i / PICTURES_PER_S,
  );
  const frames = Array.from(timeS, (s) => ({
    lineOffsetPx: new Float32Array(BLOCKS).fill(isOn(s) && !isHidden(heightMm(s)) ? 0 : NaN),
  }));
  const observations = {
    timeS,
    frameIndex: Array.from(timeS, (_, i) => i),
    azimuthsDeg: Float64Array.from({ length: BLOCKS }, (_, b) => 5 * (b - 7)),
    heightMm: Float64Array.from({ length: timeS.length * BLOCKS }, (_, k) =>
      heightMm(timeS[Math.floor(k / BLOCKS)]),
    ),
  };
  return lineDark(
    { frames } as unknown as SweepRecording,
    observations as unknown as EdgeObservations,
  );
}

const offFrom = (fromS: number, toS: number) => (s: number) => s < fromS || s >= toS;
/** Up 5 mm and down again in 12 s. */
const swing = (s: number) => 5 * Math.sin((2 * Math.PI * s) / 12);

describe('how long the line stayed away', () => {
  it('is no time at all in a whole sweep, nor while a groove hides it', () => {
    expect(sweep(30, swing, () => true).longestS).toBe(0);
    const hidden = sweep(
      30,
      swing,
      () => true,
      (mm) => mm > 2,
    );
    expect(hidden.longestS).toBeLessThan(1);
  });

  it('is as long as the laser was off', () => {
    const { longestS, fromS, atEndS } = sweep(36, swing, offFrom(12, 24));
    expect(longestS).toBeGreaterThan(11);
    expect(longestS).toBeLessThan(14);
    expect(Math.abs(fromS - 12)).toBeLessThan(1.1);
    expect(atEndS).toBe(0);
  });

  it('goes on over heights that came up only while it was off', () => {
    // Between 15 and 20 s the edge stands where it never was before or after.
    const aside = (s: number) => (s > 15 && s < 20 ? 20 : swing(s));
    expect(sweep(36, aside, offFrom(12, 24)).longestS).toBeGreaterThan(11);
  });

  it('does not go on over them when the line shows there', () => {
    const aside = (s: number) => (s > 15 && s < 20 ? 20 : swing(s));
    const flickers = (s: number) => offFrom(12, 24)(s) || (s > 17 && s < 18);
    expect(sweep(36, aside, flickers).longestS).toBeLessThan(7);
  });

  it('a groove right after a hand adds nothing unless the line is still away when it is due', () => {
    const hidden = (mm: number) => mm > 2;
    // A hand covers from 11 s to the moment at which the groove hides the line, for 4 s.
    const hand = sweep(30, swing, offFrom(11, 12.8), hidden);
    expect(hand.longestS).toBeLessThan(3.5);
  });

  it('lasts to the end where the laser died', () => {
    expect(sweep(30, swing, offFrom(22, 99)).atEndS).toBeGreaterThan(7);
  });
});
