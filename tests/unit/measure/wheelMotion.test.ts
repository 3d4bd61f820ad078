import { describe, expect, it } from 'vitest';

import { drawnSweep } from '../../../samples/drawnWheel/drawnSweep.ts';
import {
  checkClosedTurn,
  coveredDeg,
  widestHoleDeg,
} from '../../../src/measure/sweep/sweepChecks.ts';
import { creepWay } from '../../../src/measure/sweep/wheelMotion.ts';

const BALL_RADIUS_MM = 31.75;
const FRAMES = 721;
const turnDeg = Float64Array.from({ length: FRAMES }, (_, i) => 0.5 * i);
const rad = (deg: number): number => (deg * Math.PI) / 180;
const leanAt = (size: number, azimuthDeg: number) => ({
  liftMm: 0,
  toward: size * Math.cos(rad(azimuthDeg)),
  across: size * Math.sin(rad(azimuthDeg)),
});

describe('creepWay', () => {
  it('walks 2πR·T a turn, a quarter clockwise from the high side of a lean that stays', () => {
    for (const azimuth of [0, 70, 200]) {
      const leans = Array.from({ length: FRAMES }, () => leanAt(0.01, azimuth));
      const { toward, across } = creepWay(leans, turnDeg, BALL_RADIUS_MM);
      const wayMm = 2 * Math.PI * BALL_RADIUS_MM * 0.01;
      expect(toward[FRAMES - 1] - toward[0]).toBeCloseTo(wayMm * Math.cos(rad(azimuth + 90)), 6);
      expect(across[FRAMES - 1] - across[0]).toBeCloseTo(wayMm * Math.sin(rad(azimuth + 90)), 6);
      const back = creepWay(
        leans,
        turnDeg.map((t) => -t),
        BALL_RADIUS_MM,
      );
      expect(back.toward[FRAMES - 1] - back.toward[0]).toBeCloseTo(
        toward[0] - toward[FRAMES - 1],
        6,
      );
    }
  });

  it('does not walk under a lean that turns with the wheel', () => {
    const leans = [...turnDeg].map((t) => leanAt(0.02, 40 + t));
    const { toward, across } = creepWay(leans, turnDeg, BALL_RADIUS_MM);
    // Steps of half a degree: the chord differs from the arc by 10⁻⁵ of it.
    expect(Math.max(...toward.map(Math.abs), ...across.map(Math.abs))).toBeLessThan(1e-4);
  });

  it('rolls by R toward the low side for each radian of lean on a wheel that stands', () => {
    const leans = [leanAt(0, 0), leanAt(0.02, 30)];
    const { toward, across } = creepWay(leans, [5, 5], BALL_RADIUS_MM);
    expect(toward[1] - toward[0]).toBeCloseTo(-BALL_RADIUS_MM * 0.02 * Math.cos(rad(30)), 9);
    expect(across[1] - across[0]).toBeCloseTo(-BALL_RADIUS_MM * 0.02 * Math.sin(rad(30)), 9);
    expect(toward[0] + toward[1]).toBeCloseTo(0, 12);
  });

  it('agrees with the way of the drawn wheel, integrated by small steps', () => {
    const { states } = drawnSweep({ rockingMm: 2, standMrad: 6, frameRateHz: 30 });
    const leans = states.map((s) => ({ liftMm: 0, toward: s.toward, across: s.across }));
    const way = creepWay(
      leans,
      states.map((s) => s.turnDeg),
      BALL_RADIUS_MM,
    );
    const meanMm = states.reduce((sum, s) => sum + s.wayTowardMm, 0) / states.length;
    const missMm = states.map((s, i) => Math.abs(s.wayTowardMm - meanMm - way.toward[i]));
    expect(Math.max(...missMm)).toBeLessThan(0.02);
  });
});

describe('sweepChecks', () => {
  it('counts what was covered, back-and-forth once', () => {
    expect(coveredDeg([10, 200, 120, 370])).toBe(360);
    expect(coveredDeg([-5, -300])).toBe(295);
    expect(coveredDeg([])).toBe(0);
  });

  it('finds the widest hole round the wheel, whatever the start and sense', () => {
    const without = (from: number, to: number): number[] =>
      [...Array(420).keys()].filter((t) => t % 360 <= from || t % 360 >= to);
    for (const start of [0, 77.5, -400]) {
      for (const sense of [1, -1]) {
        const turns = without(100, 145).map((t) => start + sense * t);
        expect(widestHoleDeg(turns)).toBeCloseTo(45, 6);
      }
    }
    expect(widestHoleDeg([])).toBe(360);
    // A film of 250° leaves 110° between its end and its start.
    expect(widestHoleDeg([...Array(251).keys()])).toBeCloseTo(110, 6);
  });

  it('asks for the whole turn after closing', () => {
    expect(checkClosedTurn(360)).toBeNull();
    const short = checkClosedTurn(359.4);
    expect(short && !short.ok && short.failure.code).toBe('turn-incomplete');
  });
});
