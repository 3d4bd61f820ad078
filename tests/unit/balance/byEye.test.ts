import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareByEye, eyeHabit } from '../../../src/balance/byEye.ts';
import { clockFromWheelAngle, wheelAngleFromText } from '../../../src/balance/clock.ts';
import { vectorFromPolar } from '../../../src/quantities/vector.ts';
import { evenNumber, failureOf, seededNormal, valueOf } from './outcomeHelpers.ts';

const angle = evenNumber(0, 360);

describe('by eye', () => {
  it('says how far off in angle and grams, and what would be left', () => {
    const seen = valueOf(
      compareByEye(vectorFromPolar(20 * 185, 30), { lightSpotDeg: 225, massG: 18 }, 185),
    );
    expect(seen.angleOffDeg).toBeCloseTo(15, 9);
    expect(seen.massOffG).toBeCloseTo(-2, 9);
    // Cosine rule: 20² + 18² − 2·20·18·cos 15°.
    expect(seen.leftOverG).toBeCloseTo(Math.sqrt(724 - 720 * Math.cos(Math.PI / 12)), 9);
  });

  it('is null where there is nothing to point at', () => {
    const nothing = { along0: 0, along90: 0 };
    expect(
      valueOf(compareByEye(nothing, { lightSpotDeg: 10, massG: 5 }, 185)).angleOffDeg,
    ).toBeNull();
    expect(
      valueOf(compareByEye(vectorFromPolar(900, 0), { lightSpotDeg: 10, massG: 0 }, 185))
        .angleOffDeg,
    ).toBeNull();
    expect(failureOf(compareByEye(nothing, { lightSpotDeg: 10, massG: -5 }, 185)).code).toBe(
      'input-out-of-range',
    );
  });

  it('learns bias and scatter from a logbook', () => {
    const normal = seededNormal(31);
    const log = Array.from({ length: 2000 }, () => ({
      angleOffDeg: 172 + 12 * normal() > 180 ? 172 - 360 + 12 : 172,
      massOffG: -3 + 2 * normal(),
    }));
    const habit = valueOf(eyeHabit(log));
    expect(habit.massBiasG).toBeCloseTo(-3, 0);
    expect(Math.abs((habit.massScatterG ?? 0) - 2)).toBeLessThan(0.15);
    const turns = Array.from({ length: 4000 }, () => ({
      angleOffDeg: 170 + 15 * normal(),
      massOffG: 0,
    }));
    const wrapped = valueOf(eyeHabit(turns));
    // Across the seam at 180° a plain mean would be useless.
    expect(Math.abs((wrapped.angleBiasDeg ?? 0) - 170)).toBeLessThan(1);
    expect(Math.abs((wrapped.angleScatterDeg ?? 0) - 15)).toBeLessThan(0.8);
  });

  it('says only what the log can tell', () => {
    expect(failureOf(eyeHabit([])).code).toBe('sweeps-too-few');
    expect(valueOf(eyeHabit([{ angleOffDeg: 5, massOffG: 1 }]))).toMatchObject({
      angleScatterDeg: null,
      massScatterG: null,
    });
    expect(valueOf(eyeHabit([{ angleOffDeg: null, massOffG: 1 }])).angleBiasDeg).toBeNull();
    const opposite = [0, 180].map((angleOffDeg) => ({ angleOffDeg, massOffG: 0 }));
    expect(valueOf(eyeHabit(opposite)).angleBiasDeg).toBeNull();
    expect(failureOf(eyeHabit([{ angleOffDeg: 0, massOffG: Number.NaN }])).code).toBe(
      'input-out-of-range',
    );
  });
});

describe('clock positions', () => {
  it.each([
    ['8:30', 255],
    ['12', 0],
    ['12:00', 0],
    ["7 o'clock", 210],
    ['3.15', 97.5],
    ['255°', 255],
    ['-30 deg', 330],
    ['370,5 degrees', 10.5],
  ])('%s is %f°', (text, deg) => {
    expect(valueOf(wheelAngleFromText(text))).toBeCloseTo(deg, 9);
  });

  it.each(['', '13:00', '8:75', 'left', '8:3'])('"%s" is refused', (text) => {
    expect(failureOf(wheelAngleFromText(text)).code).toBe('clock-unreadable');
  });

  it('writes to the half hour and reads it again within a quarter', () => {
    expect(valueOf(clockFromWheelAngle(255))).toBe('8:30');
    expect(valueOf(clockFromWheelAngle(359))).toBe('12:00');
    expect(failureOf(clockFromWheelAngle(Number.NaN)).code).toBe('input-out-of-range');
    expect(failureOf(wheelAngleFromText('9999999999°')).code).toBe('input-out-of-range');
    fc.assert(
      fc.property(angle, (deg) => {
        const again = valueOf(wheelAngleFromText(valueOf(clockFromWheelAngle(deg))));
        expect(Math.abs(((again - deg + 540) % 360) - 180)).toBeLessThanOrEqual(7.5 + 1e-9);
      }),
    );
  });
});
