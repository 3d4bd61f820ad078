import { describe, expect, it } from 'vitest';

import { ballBehaviour } from '../../../src/balance/ballBehaviour.ts';
import { chooseBall } from '../../../src/balance/ballChoice.ts';
import { modelResponse } from '../../../src/balance/response.ts';
import { GRAMS_PER_OUNCE } from '../../../src/quantities/units.ts';
import { valueOf } from './helpers.ts';

/** Common practice as check values: no source but the shed. */
const shedWheel = {
  massKg: 16.5,
  boreDiameterMm: 60.1,
  centreDepthMm: 18.25,
  edgeRadiusMm: 305,
  weightRadiusMm: 185,
  cameraRangeMm: 25,
};
const wishes = { centreDepthSdMm: 1, weightStepG: 5, expectedUnbalanceGmm: 60 * 185 };

describe('common practice', () => {
  it('a wheel that will not stand on an 80 mm ball stands on a 63.5 mm one', () => {
    // Seat depth: centre of mass 18.25 mm below the bore's seating edge.
    expect(ballBehaviour(shedWheel, 80)).toMatchObject({
      ok: false,
      failure: { code: 'wheel-tips-over' },
    });
    const small = valueOf(ballBehaviour(shedWheel, 63.5));
    expect(small.pendulumDepthMm).toBeCloseTo(8, 1);
    const choice = valueOf(chooseBall(shedWheel, [80, 63.5], wishes));
    expect(choice.recommended?.ballDiameterMm).toBe(63.5);
    expect(choice.ranked[1]?.finding).toBe('tips-over');
  });

  it('a quarter ounce is seen plainly by eye: 2 to 4 mm of edge rise', () => {
    const { mmPerGmm } = valueOf(
      modelResponse({ massKg: 16.5, edgeRadiusMm: 305, pendulumDepthMm: 8 }),
    );
    const rise = mmPerGmm * 185 * (GRAMS_PER_OUNCE / 4);
    expect(rise).toBeGreaterThan(2);
    expect(rise).toBeLessThan(4);
  });

  it('rocks in 3 to 8 s and amplifies slopes four to ten times', () => {
    const ball = valueOf(ballBehaviour(shedWheel, 63.5));
    expect(ball.rockingPeriodS).toBeGreaterThan(3);
    expect(ball.rockingPeriodS).toBeLessThan(8);
    // R/h = 31.75/8: four, to the rounding of the example.
    expect(ball.slopeAmplification).toBeGreaterThan(3.9);
    expect(ball.slopeAmplification).toBeLessThan(10);
  });
});
