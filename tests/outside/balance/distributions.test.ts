import { describe, expect, it } from 'vitest';

import { chiSquare99, fPointTwoAbove } from '../../../src/balance/quantiles.ts';

/** Values of R's qchisq and qf, written by `distributions.R` beside this file. */
describe('points of distributions against R', () => {
  it.each([
    [2, 9.21034],
    [4, 13.276704],
    [6, 16.811894],
    [10, 23.209251],
    [20, 37.566235],
  ])('χ² with %i degrees of freedom', (degrees, point) => {
    expect(Math.abs(chiSquare99(degrees) / point - 1)).toBeLessThan(0.005);
  });

  it.each([
    [2, 19, 399],
    [4, 6.944272, 38],
    [6, 5.143253, 19.104189],
    [10, 4.102821, 11.57227],
  ])('F with 2 and %i degrees of freedom, exact', (degrees, at95, at9975) => {
    expect(fPointTwoAbove(degrees, 0.05)).toBeCloseTo(at95, 5);
    expect(fPointTwoAbove(degrees, 0.0025)).toBeCloseTo(at9975, 5);
  });
});
