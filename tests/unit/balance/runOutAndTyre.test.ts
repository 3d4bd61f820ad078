import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { edgeWaveFromFit } from '../../../src/balance/edgeWave.ts';
import { radialRunOutSdMm, runOutSdMm } from '../../../src/balance/runOutAllowance.ts';
import { separateRunOut } from '../../../src/balance/runOutSeparation.ts';
import { suggestsIndexTest, tyreAndRim } from '../../../src/balance/tyreIndex.ts';
import {
  addVectors,
  multiplyAsComplex,
  scaleVector,
  subtractVectors,
  vectorAmount,
  vectorFromPolar,
  type PlaneCovariance,
  type PlaneVector,
} from '../../../src/quantities/vector.ts';
import { evenNumber, failureOf, seededNormal, valueOf } from './outcomeHelpers.ts';

const NONE: PlaneCovariance = [
  [0, 0],
  [0, 0],
];
const angle = evenNumber(0, 360);

/** Sample covariance of vectors about a truth. */
function scatterOf(found: readonly PlaneVector[], truth: PlaneVector): PlaneCovariance {
  let [a, b, d] = [0, 0, 0];
  for (const v of found) {
    const e = subtractVectors(v, truth);
    a += e.along0 ** 2 / found.length;
    b += (e.along0 * e.along90) / found.length;
    d += e.along90 ** 2 / found.length;
  }
  return [
    [a, b],
    [b, d],
  ];
}

function expectLike(found: PlaneCovariance, stated: PlaneCovariance): void {
  // 3000 runs: a variance scatters by 2.6 %, a covariance by 1.8 % of the geometric mean.
  const scale = Math.sqrt(stated[0][0] * stated[1][1]);
  expect(Math.abs(found[0][0] / stated[0][0] - 1)).toBeLessThan(0.12);
  expect(Math.abs(found[1][1] / stated[1][1] - 1)).toBeLessThan(0.12);
  expect(Math.abs(found[0][1] - stated[0][1]) / scale).toBeLessThan(0.1);
}

describe('edge waves', () => {
  it('reports each wave and their sum from peak to peak, once-round left out', () => {
    const wave = valueOf(edgeWaveFromFit([5, 0.3, 0], [1, 0.4]));
    expect(wave.waves).toEqual([
      { timesRound: 2, peakToPeakMm: 1 },
      { timesRound: 3, peakToPeakMm: 0 },
    ]);
    expect(wave.peakToPeakMm).toBeCloseTo(1, 3);
    expect(valueOf(edgeWaveFromFit([], []))).toEqual({ waves: [], peakToPeakMm: 0 });
    expect(valueOf(edgeWaveFromFit([1], [1, 0, 0.5])).peakToPeakMm).toBeCloseTo(1, 3);
    expect(failureOf(edgeWaveFromFit([0, Number.NaN], [])).evidence['quantity']).toBe('cosMm 2');
  });
});

describe('run-out allowance', () => {
  it('is half the limit at the 95 % radius of a plane normal error', () => {
    expect(valueOf(runOutSdMm(1.2)) * 2.4477468).toBeCloseTo(0.6, 6);
    expect(valueOf(runOutSdMm())).toBe(valueOf(runOutSdMm(1.2)));
    expect(failureOf(runOutSdMm(-1)).code).toBe('input-out-of-range');
  });

  it('takes the radius as the height that it feigns along the line of sight', () => {
    expect(valueOf(radialRunOutSdMm(0.7, 1.2))).toBeCloseTo(0.7 * valueOf(runOutSdMm(1.2)), 9);
    expect(valueOf(radialRunOutSdMm(0))).toBe(0);
    expect(failureOf(radialRunOutSdMm(-0.1)).code).toBe('input-out-of-range');
  });
});

describe('two-ball separation', () => {
  const u = vectorFromPolar(4000, 70);
  const runOut = vectorFromPolar(0.8, 310);
  const ball = (
    k: number,
    sd: number,
    c: PlaneCovariance = NONE,
    noise: PlaneVector = { along0: 0, along90: 0 },
  ) => ({
    rise: { riseMm: addVectors(addVectors(scaleVector(u, -k), runOut), noise), covarianceMm2: c },
    response: { mmPerGmm: k, standardError: sd },
  });

  it('finds both parts exactly from exact sweeps', () => {
    const found = valueOf(separateRunOut(ball(0.0023, 0), ball(0.0014, 0), 0));
    expect(found.unbalance.amountGmm).toBeCloseTo(4000, 6);
    expect(found.unbalance.heavySpotDeg).toBeCloseTo(70, 9);
    expect(found.runOutPeakToPeakMm).toBeCloseTo(1.6, 9);
    expect(found.runOutHighSpotDeg).toBeCloseTo(310, 9);
  });

  it('states the errors that simulated sweeps scatter by', () => {
    const normal = seededNormal(17);
    const [k1, k2, s1, s2, common, sigma] = [0.0023, 0.0014, 2e-5, 1.5e-5, 0.02, 0.05];
    const c: PlaneCovariance = [
      [sigma ** 2, 0],
      [0, sigma ** 2],
    ];
    const us: PlaneVector[] = [];
    const taus: PlaneVector[] = [];
    for (let i = 0; i < 3000; i += 1) {
      const noise = () => ({ along0: sigma * normal(), along90: sigma * normal() });
      const [a, b] = [ball(k1, s1, c, noise()), ball(k2, s2, c, noise())];
      const all = 1 + common * normal();
      const wrong1 = {
        ...a,
        response: { mmPerGmm: (k1 + s1 * normal()) * all, standardError: s1 },
      };
      const wrong2 = {
        ...b,
        response: { mmPerGmm: (k2 + s2 * normal()) * all, standardError: s2 },
      };
      const found = valueOf(separateRunOut(wrong1, wrong2, common));
      us.push(found.unbalance.unbalanceGmm);
      taus.push(found.runOutMm);
    }
    const stated = valueOf(separateRunOut(ball(k1, s1, c), ball(k2, s2, c), common));
    expectLike(scatterOf(us, u), stated.unbalance.covarianceGmm2);
    expectLike(scatterOf(taus, runOut), stated.runOutCovarianceMm2);
  });

  it('names balls that act too much alike', () => {
    expect(failureOf(separateRunOut(ball(0.0023, 0), ball(0.00225, 0), 0)).code).toBe(
      'responses-too-alike',
    );
    expect(failureOf(separateRunOut(ball(0.0023, 3e-4), ball(0.0014, 3e-4), 0)).code).toBe(
      'responses-too-alike',
    );
    expect(failureOf(separateRunOut(ball(0.0023, 0), ball(0, 0), 0)).code).toBe(
      'input-out-of-range',
    );
  });
});

describe('tyre on rim', () => {
  const rim = vectorFromPolar(3000, 25);
  const tyre = vectorFromPolar(5000, 190);
  const sweep = (
    turnDeg: number,
    c: PlaneCovariance = NONE,
    noise: PlaneVector = { along0: 0, along90: 0 },
  ) => ({
    unbalanceGmm: addVectors(
      addVectors(rim, multiplyAsComplex(tyre, vectorFromPolar(1, turnDeg))),
      noise,
    ),
    covarianceGmm2: c,
  });

  it('separates for any index turn, and the turn advised leaves what was promised', () => {
    fc.assert(
      fc.property(evenNumber(15, 345), (turnDeg) => {
        const found = valueOf(tyreAndRim(sweep(0), sweep(turnDeg), turnDeg, 185));
        expect(found.rimGmm.along0).toBeCloseTo(rim.along0, 5);
        expect(found.tyreGmm.along90).toBeCloseTo(tyre.along90, 5);
        expect(vectorAmount(sweep(found.bestTurnDeg).unbalanceGmm)).toBeCloseTo(found.leastGmm, 5);
        expect(vectorAmount(sweep(turnDeg + found.turnFromNowDeg).unbalanceGmm)).toBeCloseTo(
          2000,
          5,
        );
        const tried = Math.min(
          vectorAmount(sweep(0).unbalanceGmm),
          vectorAmount(sweep(turnDeg).unbalanceGmm),
        );
        expect(found.savedG).toBeCloseTo((tried - 2000) / 185, 6);
      }),
    );
  });

  it('states the errors that simulated sweeps scatter by', () => {
    const normal = seededNormal(23);
    const c: PlaneCovariance = [
      [900, 0],
      [0, 400],
    ];
    const rims: PlaneVector[] = [];
    const tyres: PlaneVector[] = [];
    const noise = () => ({ along0: 30 * normal(), along90: 20 * normal() });
    for (let i = 0; i < 3000; i += 1) {
      const found = valueOf(tyreAndRim(sweep(0, c, noise()), sweep(100, c, noise()), 100, 185));
      rims.push(found.rimGmm);
      tyres.push(found.tyreGmm);
    }
    const stated = valueOf(tyreAndRim(sweep(0, c), sweep(100, c), 100, 185));
    expectLike(scatterOf(rims, rim), stated.rimCovarianceGmm2);
    expectLike(scatterOf(tyres, tyre), stated.tyreCovarianceGmm2);
  });

  it('turns with the wheel', () => {
    fc.assert(
      fc.property(angle, (byDeg) => {
        const turned = (s: { unbalanceGmm: PlaneVector; covarianceGmm2: PlaneCovariance }) => ({
          ...s,
          unbalanceGmm: multiplyAsComplex(s.unbalanceGmm, vectorFromPolar(1, byDeg)),
        });
        const found = valueOf(tyreAndRim(turned(sweep(0)), turned(sweep(90)), 90, 185));
        expect(found.leastGmm).toBeCloseTo(2000, 5);
        expect(found.bestTurnDeg).toBeCloseTo(15, 6);
      }),
    );
  });

  it('refuses too small a turn, and suggests the test for much weight', () => {
    expect(failureOf(tyreAndRim(sweep(0), sweep(5), 5, 185)).code).toBe('tyre-turn-too-small');
    expect(failureOf(tyreAndRim(sweep(0), sweep(5), 357, 185)).code).toBe('tyre-turn-too-small');
    expect(failureOf(tyreAndRim(sweep(0), sweep(90), 90, 0)).code).toBe('input-out-of-range');
    expect(valueOf(suggestsIndexTest(80))).toBe(true);
    expect(valueOf(suggestsIndexTest(30))).toBe(false);
    expect(failureOf(suggestsIndexTest(Number.NaN)).code).toBe('input-out-of-range');
  });
});
