import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { measuredResponse, modelResponse, weightVectorGmm } from '../../../src/balance/response.ts';
import { RESPONSE_ANGLE_WORDS } from '../../../src/balance/responseAngle.ts';
import {
  addVectors,
  multiplyAsComplex,
  scaleVector,
  vectorFromPolar,
  type PlaneCovariance,
  type PlaneVector,
} from '../../../src/quantities/vector.ts';
import { evenNumber, valueOf, failureOf } from './outcomeHelpers.ts';

const SMALL: PlaneCovariance = [
  [1e-4, 0],
  [0, 1e-4],
];
const K = 0.0023;
const EXACT = { momentRelativeSd: 0, placeSdDeg: 0 };

const rise = (riseMm: PlaneVector, covarianceMm2 = SMALL) => ({ riseMm, covarianceMm2 });

/** Sweeps before and after a 20 g weight at `placeDeg`, as a stand with response `k` (complex) shows. */
function trialAt(placeDeg: number, k: PlaneVector, covarianceMm2 = SMALL) {
  const before = vectorFromPolar(6, 200);
  const moment = vectorFromPolar(20 * 185, placeDeg);
  const after = addVectors(before, scaleVector(multiplyAsComplex(k, moment), -1));
  return {
    before: rise(before, covarianceMm2),
    after: rise(after, covarianceMm2),
    added: [{ massG: 20, radiusMm: 185, angleDeg: placeDeg }],
    uncertainty: EXACT,
  };
}

describe('modelResponse', () => {
  it('gives the order of magnitude that DESIGN states: 0.43 mm per gram', () => {
    const response = valueOf(
      modelResponse({ massKg: 16.5, edgeRadiusMm: 305, pendulumDepthMm: 8 }),
    );
    expect(response.mmPerGmm * 185).toBeCloseTo(0.4275, 4);
    expect(response.source).toBe('model');
  });

  it('adds the relative errors of its inputs in squares', () => {
    const uncertainty = {
      massRelativeSd: 0.03,
      edgeRadiusRelativeSd: 0,
      pendulumDepthRelativeSd: 0.04,
    };
    const r = valueOf(
      modelResponse({ massKg: 10, edgeRadiusMm: 300, pendulumDepthMm: 6, uncertainty }),
    );
    expect(r.standardError / r.mmPerGmm).toBeCloseTo(0.05, 12);
  });

  it.each([
    ['massKg', { massKg: 0 }],
    ['massKg', { massKg: Number.NaN }],
    ['edgeRadiusMm', { edgeRadiusMm: -300 }],
    ['pendulumDepthMm', { pendulumDepthMm: Infinity }],
  ])('names %s when it cannot be right', (quantity, wrong) => {
    const input = { massKg: 16.5, edgeRadiusMm: 305, pendulumDepthMm: 8, ...wrong };
    expect(failureOf(modelResponse(input))).toMatchObject({
      code: 'input-out-of-range',
      evidence: { quantity },
    });
  });
});

describe('measuredResponse', () => {
  it('finds the response and a sound angle wherever the trial sits', () => {
    fc.assert(
      fc.property(evenNumber(0, 360), (placeDeg) => {
        const found = valueOf(measuredResponse(trialAt(placeDeg, { along0: K, along90: 0 })));
        expect(found.response.mmPerGmm).toBeCloseTo(K, 12);
        expect(found.angle.finding).toBe('sound');
      }),
    );
  });

  it('propagates the reading errors: √2·σ over the moment', () => {
    const found = valueOf(measuredResponse(trialAt(70, { along0: K, along90: 0 })));
    expect(found.response.standardError).toBeCloseTo((Math.SQRT2 * 0.01) / 3700, 12);
  });

  it('carries a tilted covariance through the turn by the trial’s angle', () => {
    const tilted: PlaneCovariance = [
      [4e-4, 1e-4],
      [1e-4, 1e-4],
    ];
    // At 90° the real part of k̂ comes from the change along 90°.
    const found = valueOf(measuredResponse(trialAt(90, { along0: K, along90: 0 }, tilted)));
    expect(found.covariance[0][0]).toBeCloseTo(2e-4 / 3700 ** 2, 18);
    expect(found.covariance[1][1]).toBeCloseTo(8e-4 / 3700 ** 2, 18);
    expect(found.covariance[0][1]).toBeCloseTo(-2e-4 / 3700 ** 2, 18);
  });

  it('adds the trial’s own error along and across', () => {
    const trial = trialAt(0, { along0: K, along90: 0 }, [
      [0, 0],
      [0, 0],
    ]);
    const { covariance } = valueOf(
      measuredResponse({ ...trial, uncertainty: { momentRelativeSd: 0.02, placeSdDeg: 3 } }),
    );
    expect(Math.sqrt(covariance[0][0]) / K).toBeCloseTo(0.02, 9);
    expect(Math.sqrt(covariance[1][1]) / K).toBeCloseTo((3 * Math.PI) / 180, 9);
  });

  it('tells a reversed side, a mirror and a moved mark apart', () => {
    const finding = (placeDeg: number, argDeg: number) =>
      valueOf(measuredResponse(trialAt(placeDeg, vectorFromPolar(K, argDeg)))).angle;
    expect(finding(40, 180).finding).toBe('side-reversed');
    expect(finding(40, -80).finding).toBe('turn-sense-wrong');
    expect(finding(40, 60).finding).toBe('valve-mark-moved');
    // With the trial at 90° a mirror looks like a reversed side: both are named.
    expect(finding(90, 180)).toMatchObject({
      finding: 'side-reversed',
      alsoPossible: ['turn-sense-wrong'],
    });
    // At 0° the mirror cannot show at all.
    expect(finding(0, 3)).toMatchObject({ finding: 'sound', alsoPossible: ['turn-sense-wrong'] });
  });

  it('really sees a mirror when all angles of both sweeps are negated', () => {
    const trial = trialAt(50, { along0: K, along90: 0 });
    const mirror = (v: PlaneVector) => ({ along0: v.along0, along90: -v.along90 });
    const found = measuredResponse({
      ...trial,
      before: rise(mirror(trial.before.riseMm)),
      after: rise(mirror(trial.after.riseMm)),
    });
    expect(valueOf(found).angle.finding).toBe('turn-sense-wrong');
  });

  it('does not judge an angle drowned in noise, nor no answer at all', () => {
    const noisy = trialAt(50, { along0: K, along90: 0 }, [
      [100, 0],
      [0, 100],
    ]);
    expect(valueOf(measuredResponse(noisy)).angle.finding).toBe('not-known');
    const still = trialAt(50, { along0: 0, along90: 0 });
    const dead = valueOf(measuredResponse(still));
    expect(dead.angle).toMatchObject({ finding: 'not-known', standardErrorDeg: 180 });
    expect(dead.response.mmPerGmm).toBe(0);
    expect(RESPONSE_ANGLE_WORDS[dead.angle.finding]).toMatch(/heavier/);
  });

  it('refuses a trial whose parts cancel, and broken inputs by name', () => {
    const trial = trialAt(0, { along0: K, along90: 0 });
    const one = { massG: 10, radiusMm: 185, angleDeg: 0 };
    const cancelled = [one, { ...one, massG: -10 }];
    expect(failureOf(measuredResponse({ ...trial, added: cancelled })).code).toBe(
      'trial-too-small',
    );
    expect(failureOf(measuredResponse({ ...trial, added: [] })).code).toBe('trial-too-small');
    expect(
      failureOf(measuredResponse({ ...trial, added: [{ ...one, massG: Number.NaN }] })).evidence,
    ).toMatchObject({ quantity: 'massG' });
    expect(
      failureOf(measuredResponse({ ...trial, before: rise({ along0: Number.NaN, along90: 0 }) }))
        .code,
    ).toBe('input-out-of-range');
    const lopsided: PlaneCovariance = [
      [1, 2],
      [2, 1],
    ];
    expect(
      failureOf(measuredResponse({ ...trial, after: rise(trial.after.riseMm, lopsided) })),
    ).toEqual({ code: 'covariance-invalid', evidence: { quantity: 'after' } });
    expect(
      failureOf(measuredResponse({ ...trial, uncertainty: { momentRelativeSd: 2, placeSdDeg: 0 } }))
        .code,
    ).toBe('input-out-of-range');
  });

  it('assumes a trial good to about a per cent when nothing is said', () => {
    const { uncertainty: _, ...trial } = trialAt(10, { along0: K, along90: 0 });
    const found = valueOf(measuredResponse(trial));
    expect(found.response.standardError / K).toBeGreaterThan(0.01);
    expect(found.response.standardError / K).toBeLessThan(0.02);
  });
});

describe('weightVectorGmm', () => {
  it('adds weights as vectors, taken-off ones negative', () => {
    const sum = valueOf(
      weightVectorGmm([
        { massG: 10, radiusMm: 200, angleDeg: 0 },
        { massG: -5, radiusMm: 100, angleDeg: 90 },
      ]),
    );
    expect(sum.along0).toBeCloseTo(2000, 9);
    expect(sum.along90).toBeCloseTo(-500, 9);
  });
});
