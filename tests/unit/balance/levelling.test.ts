import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { plateAndLaserFromTwoBalls, plateSlopeFromLean } from '../../../src/balance/levelling.ts';
import { screwTurnsToLevel } from '../../../src/balance/levellingScrews.ts';
import { addVectors, scaleVector, vectorFromPolar } from '../../../src/quantities/vector.ts';
import { evenNumber, failureOf, valueOf } from './outcomeHelpers.ts';

const angle = evenNumber(0, 360);

describe('plate slope', () => {
  it('divides the lean by the ball’s amplification; the edge is high uphill', () => {
    const slope = valueOf(
      plateSlopeFromLean({ leanMrad: vectorFromPolar(8, 70), slopeAmplification: 4 }),
    );
    expect(slope.amountMrad).toBeCloseTo(2, 9);
    expect(slope.uphillAzimuthDeg).toBeCloseTo(70, 9);
    expect(slope.downhillAzimuthDeg).toBeCloseTo(250, 9);
    expect(slope.laserShareMrad).toBeCloseTo(0.15 / 4, 9);
    expect(slope.caution).toMatch(/two balls/);
  });

  it('tells plate and laser apart with two balls', () => {
    fc.assert(
      fc.property(angle, angle, (plateDeg, laserDeg) => {
        const plate = vectorFromPolar(2, plateDeg);
        const laser = vectorFromPolar(0.3, laserDeg);
        const lean = (q: number) => ({
          leanMrad: addVectors(scaleVector(plate, q), scaleVector(laser, -1)),
          slopeAmplification: q,
        });
        const found = valueOf(plateAndLaserFromTwoBalls(lean(4), lean(7)));
        expect(found.slopeMrad.along0).toBeCloseTo(plate.along0, 9);
        expect(found.laserMrad.along90).toBeCloseTo(laser.along90, 9);
      }),
    );
  });

  it('names what cannot be told', () => {
    const lean = { leanMrad: vectorFromPolar(1, 0), slopeAmplification: 4 };
    expect(
      failureOf(plateAndLaserFromTwoBalls(lean, { ...lean, slopeAmplification: 4.1 })).code,
    ).toBe('responses-too-alike');
    expect(
      failureOf(plateAndLaserFromTwoBalls(lean, { ...lean, slopeAmplification: 0 })).code,
    ).toBe('input-out-of-range');
    expect(failureOf(plateSlopeFromLean({ ...lean, slopeAmplification: Number.NaN })).code).toBe(
      'input-out-of-range',
    );
  });
});

describe('levelling screws', () => {
  const screws = {
    azimuthsDeg: [0, 120, 240] as const,
    circleRadiusMm: 150,
    threadPitchMm: 1.25,
    clockwiseLifts: true,
  };

  it('lowers the uphill screw and lifts the downhill ones until the plate is level', () => {
    fc.assert(
      fc.property(angle, evenNumber(0.1, 10), (uphillDeg, mrad) => {
        const slope = vectorFromPolar(mrad, uphillDeg);
        const turns = valueOf(screwTurnsToLevel(slope, screws));
        // Height of the plate at each screw after turning: the same at all three.
        const heights = turns.map(({ azimuthDeg, liftMm }) => {
          const x = vectorFromPolar(150, azimuthDeg);
          return (slope.along0 * x.along0 + slope.along90 * x.along90) / 1000 + liftMm;
        });
        expect(heights[1]! - heights[0]!).toBeCloseTo(0, 9);
        expect(heights[2]! - heights[0]!).toBeCloseTo(0, 9);
        expect(turns.some((t) => t.liftMm === 0)).toBe(true);
        for (const t of turns) expect(t.clockwiseTurns).toBeCloseTo(t.liftMm / 1.25, 9);
      }),
    );
  });

  it('says what to do in words of its own, either way the thread runs', () => {
    const slope = vectorFromPolar(5, 0);
    const turns = valueOf(screwTurnsToLevel(slope, { ...screws, clockwiseLifts: false }));
    expect(turns.map((t) => t.action)).toEqual(['lower', 'leave', 'leave']);
    expect(turns[0].clockwiseTurns).toBeGreaterThan(0);
    const other = valueOf(screwTurnsToLevel(vectorFromPolar(5, 180), screws));
    expect(other[0].action).toBe('lift');
  });

  it('names screws in one place and values that cannot be', () => {
    const slope = vectorFromPolar(1, 0);
    expect(failureOf(screwTurnsToLevel(slope, { ...screws, azimuthsDeg: [0, 5, 180] })).code).toBe(
      'screws-too-close',
    );
    expect(failureOf(screwTurnsToLevel(slope, { ...screws, threadPitchMm: 0 })).code).toBe(
      'input-out-of-range',
    );
  });
});
