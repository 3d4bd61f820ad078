import { describe, expect, it } from 'vitest';

import type { AcceptedReading, RefusedReading } from '../../../src/contract/reading.ts';
import { regionHolds, scoreReading, type SweepTruth } from '../../tools/score.ts';

const RADIUS_MM = 200;
const RUN = { weightRadiusMm: RADIUS_MM, seconds: 10, frames: 600 };

function reading(
  amountGmm: number,
  heavySpotDeg: number,
  source: 'model' | 'trial' = 'model',
): AcceptedReading {
  return {
    format: 'tiltsweep.reading/1',
    status: 'ok',
    refusals: [],
    turn: { coveredDeg: 380, sense: 'clockwise', closureDeg: 0.3 },
    tilt: {
      edgeRiseMm: 1,
      highSpotDeg: 0,
      standMrad: 0,
      standHighAzimuthDeg: 0,
      covarianceMm2: [
        [1, 0],
        [0, 1],
      ],
    },
    unbalance: {
      amountGmm,
      heavySpotDeg,
      lightSpotDeg: (heavySpotDeg + 180) % 360,
      covarianceGmm2: [
        [100 ** 2, 0],
        [0, 100 ** 2],
      ],
      ci95: { amountGmm: [0, 1], angleDeg: null },
    },
    response: { mmPerGmm: 0.002, source, standardError: 0 },
    correction: [],
    residualGmm: 0,
  };
}

function truth(
  amountGmm: number,
  heavySpotDeg: number,
  shouldRefuse: SweepTruth['shouldRefuse'] = false,
): SweepTruth {
  return {
    shouldRefuse,
    unbalance: { amountGmm, heavySpotDeg, lightSpotDeg: (heavySpotDeg + 180) % 360 },
  };
}

const refusal = (code: 'turn-incomplete' | 'line-lost'): RefusedReading => ({
  format: 'tiltsweep.reading/1',
  status: 'refused',
  refusals: [{ code, message: '', remedy: '' }],
  turn: null,
});

describe('scoreReading', () => {
  it('gives the error as a vector at the weight radius', () => {
    const score = scoreReading('s', reading(4000, 3), truth(4000, 357), RUN);
    // Two vectors of 20 g, 6° apart.
    expect(score.vectorErrorG).toBeCloseTo(40 * Math.sin((3 * Math.PI) / 180), 9);
    expect(score.angleErrorDeg).toBeCloseTo(6, 9);
    expect(score).toMatchObject({ readG: 20, trueG: 20, framesPerSecond: 60, withinBounds: false });
  });

  it('asks more of a measured response than of the model’s', () => {
    const almost = [reading(4000 + 360, 90), reading(4000 + 360, 90, 'trial')].map(
      (r) => scoreReading('s', r, truth(4000, 90), RUN).withinBounds,
    );
    expect(almost).toEqual([true, false]);
  });

  it('asks for no angle where there is next to nothing to point at', () => {
    expect(scoreReading('s', reading(300, 90), truth(200, 0), RUN)).toMatchObject({
      withinBounds: true,
    });
  });

  it('takes a refusal for right only with the right code', () => {
    const cut = truth(4000, 0, 'turn-incomplete');
    expect(scoreReading('s', refusal('turn-incomplete'), cut, RUN).withinBounds).toBe(true);
    expect(scoreReading('s', refusal('line-lost'), cut, RUN).withinBounds).toBe(false);
    expect(scoreReading('s', refusal('turn-incomplete'), truth(4000, 0), RUN).withinBounds).toBe(
      false,
    );
    expect(scoreReading('s', reading(4000, 0), cut, RUN).withinBounds).toBe(false);
  });
});

describe('regionHolds', () => {
  it('is the ellipse of the covariance', () => {
    const covariance = [
      [4, 0],
      [0, 1],
    ] as const;
    // √5.991 = 2.4477 standard deviations along each axis.
    expect(regionHolds({ along0: 4.89, along90: 0 }, covariance)).toBe(true);
    expect(regionHolds({ along0: 4.9, along90: 0 }, covariance)).toBe(false);
    expect(regionHolds({ along0: 0, along90: 2.45 }, covariance)).toBe(false);
  });

  it('holds nothing when the covariance is none', () => {
    expect(
      regionHolds({ along0: 0, along90: 0 }, [
        [0, 0],
        [0, 0],
      ]),
    ).toBe(false);
  });
});
