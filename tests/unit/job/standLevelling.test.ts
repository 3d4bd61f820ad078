import { describe, expect, it } from 'vitest';

import { levellingAdvice } from '../../../src/job/standLevelling.ts';

const SCREWS = {
  firstAzimuthDeg: 0,
  circleRadiusMm: 120,
  threadPitchMm: 1.25,
  clockwiseLifts: true,
};
const STAND = { ballDiameterMm: 64, pendulumDepthMm: 8 };
const tilt = (standMrad: number, highDeg: number, standMradStandardError?: number) => ({
  edgeRiseMm: 5,
  highSpotDeg: 10,
  standMrad,
  standHighAzimuthDeg: highDeg,
  ...(standMradStandardError === undefined ? {} : { standMradStandardError }),
  covarianceMm2: [
    [0, 0],
    [0, 0],
  ] as const,
});

describe('which screw levels the plate', () => {
  it('turns the screw on the high side down, by the slope and no more', () => {
    // 16 mrad of lean on a ball of R/h = 4 is a slope of 4 mrad: 0.48 mm at the first screw, and
    // 0.24 mm low at both others: all in all 0.72 mm, 0.576 of a turn.
    const advice = levellingAdvice(tilt(16, 0, 0.5), STAND, SCREWS);
    expect(advice).toMatchObject({ kind: 'turn', screws: [{ screw: 1 }] });
    expect(advice?.kind === 'turn' && advice.screws[0]!.clockwiseTurns).toBeCloseTo(-0.576, 3);
    const left = levellingAdvice(tilt(16, 0, 0.5), STAND, { ...SCREWS, clockwiseLifts: false });
    expect(left?.kind === 'turn' && left.screws[0]!.clockwiseTurns).toBeCloseTo(0.576, 3);
  });

  it('numbers the screws clockwise from the first', () => {
    const advice = levellingAdvice(tilt(16, 120, 0.5), STAND, SCREWS);
    expect(advice?.kind === 'turn' && advice.screws.map(({ screw }) => screw)).toEqual([2]);
  });

  it('names no screw where the lean is not known well enough', () => {
    expect(levellingAdvice(tilt(16, 0, 6), STAND, SCREWS)).toEqual({ kind: 'unsure' });
  });

  it('says nothing without a ±, without screws, or of a plate that is level', () => {
    expect(levellingAdvice(tilt(16, 0), STAND, SCREWS)).toBeNull();
    expect(levellingAdvice(tilt(16, 0, 0.5), STAND, null)).toBeNull();
    expect(levellingAdvice(tilt(0.5, 0, 0.05), STAND, SCREWS)).toBeNull();
  });
});
