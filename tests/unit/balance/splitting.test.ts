import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unbalanceFromFourRuns } from '../../../src/balance/fourRun.ts';
import { splitCorrection } from '../../../src/balance/splitCorrection.ts';
import { layStrip, stripMomentGmm } from '../../../src/balance/stripArc.ts';
import { trialCorrection } from '../../../src/balance/trialCorrection.ts';
import {
  addVectors,
  subtractVectors,
  vectorAmount,
  vectorFromPolar,
} from '../../../src/quantities/vector.ts';
import { evenNumber, failureOf, valueOf } from './outcomeHelpers.ts';

const angle = evenNumber(0, 360);

describe('splitting, trial and four runs', () => {
  it('the two shares add up to the correction', () => {
    fc.assert(
      fc.property(angle, evenNumber(1, 85), evenNumber(1, 85), (at, back, ahead) => {
        const split = valueOf(
          splitCorrection({
            amount: 40,
            angleDeg: at,
            placeADeg: at - back,
            placeBDeg: at + ahead,
          }),
        );
        const sum = addVectors(
          vectorFromPolar(split.atA, at - back),
          vectorFromPolar(split.atB, at + ahead),
        );
        expect(vectorAmount(subtractVectors(sum, vectorFromPolar(40, at)))).toBeLessThan(1e-9);
      }),
    );
  });

  it('a place on the spot carries all; places on one side are refused', () => {
    expect(
      valueOf(splitCorrection({ amount: 40, angleDeg: 10, placeADeg: 10, placeBDeg: 60 })).atA,
    ).toBeCloseTo(40, 9);
    for (const [placeADeg, placeBDeg] of [
      [20, 60],
      [10, 10],
      [280, 100],
      [200, 0],
    ] as const) {
      expect(
        failureOf(splitCorrection({ amount: 40, angleDeg: 10, placeADeg, placeBDeg })).code,
      ).toBe('places-not-either-side');
    }
    expect(
      failureOf(splitCorrection({ amount: -1, angleDeg: 10, placeADeg: 0, placeBDeg: 60 })).code,
    ).toBe('input-out-of-range');
  });

  it('a trial that changes nothing is refused', () => {
    const v = vectorFromPolar(3, 10);
    expect(failureOf(trialCorrection(v, v, vectorFromPolar(5, 0))).code).toBe('trial-too-small');
    expect(failureOf(trialCorrection(v, { along0: Number.NaN, along90: 0 }, v)).code).toBe(
      'input-out-of-range',
    );
  });

  it('four runs find any unbalance again from its amounts', () => {
    fc.assert(
      fc.property(angle, evenNumber(1, 100), (heavyDeg, amount) => {
        const u = vectorFromPolar(amount, heavyDeg);
        const read = (at: number) => 0.08 * vectorAmount(addVectors(u, vectorFromPolar(20, at)));
        const found = valueOf(
          unbalanceFromFourRuns({
            bare: 0.08 * amount,
            at0: read(0),
            at120: read(120),
            at240: read(240),
            trial: 20,
          }),
        );
        expect(vectorAmount(subtractVectors(found, u))).toBeLessThan(1e-6 * amount + 1e-9);
      }),
    );
  });

  it('four runs of a balanced wheel are nothing; contradicting ones are refused', () => {
    const runs = { bare: 0, at0: 2, at120: 2, at240: 2, trial: 20 };
    expect(vectorAmount(valueOf(unbalanceFromFourRuns(runs)))).toBeCloseTo(0, 9);
    expect(failureOf(unbalanceFromFourRuns({ ...runs, bare: 1 })).code).toBe('amounts-contradict');
    expect(failureOf(unbalanceFromFourRuns({ ...runs, bare: 5 })).code).toBe('amounts-contradict');
    expect(failureOf(unbalanceFromFourRuns({ ...runs, at0: 0, at120: 0, at240: 0 })).code).toBe(
      'amounts-contradict',
    );
    expect(failureOf(unbalanceFromFourRuns({ ...runs, trial: 0 })).code).toBe('input-out-of-range');
  });
});

describe('strips as arcs', () => {
  it('pull sin(x)/x of their moment', () => {
    expect(valueOf(stripMomentGmm(60, 185, 185))).toBeCloseTo(60 * 185 * (Math.sin(0.5) / 0.5), 9);
    expect(valueOf(stripMomentGmm(60, 0, 185))).toBe(60 * 185);
    expect(failureOf(stripMomentGmm(60, -1, 185)).code).toBe('input-out-of-range');
  });

  it('pieces side by side pull as one long strip', () => {
    const laid = layStrip(
      Array.from({ length: 8 }, () => ({ massG: 5, lengthMm: 13 })),
      185,
    );
    expect(laid.momentGmm).toBeCloseTo(valueOf(stripMomentGmm(40, 104, 185)), 9);
    expect(laid.behindDeg).toBeCloseTo(laid.aheadDeg, 9);
    expect(laid.offsetsDeg[0]).toBeCloseTo(-(laid.offsetsDeg[7] ?? 0), 9);
  });

  it('balance nearer to the heavy piece', () => {
    const laid = layStrip(
      [
        { massG: 20, lengthMm: 20 },
        { massG: 5, lengthMm: 20 },
      ],
      185,
    );
    expect(laid.behindDeg).toBeLessThan(laid.aheadDeg);
  });
});
