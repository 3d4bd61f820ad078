import { describe, expect, it } from 'vitest';

import { unbalanceFromFourRuns } from '../../../src/balance/fourRun.ts';
import { weightVectorGmm } from '../../../src/balance/response.ts';
import { splitCorrection } from '../../../src/balance/splitCorrection.ts';
import { trialCorrection } from '../../../src/balance/trialCorrection.ts';
import { tyreAndRim } from '../../../src/balance/tyreIndex.ts';
import { wrapTurnDeg } from '../../../src/quantities/angle.ts';
import {
  addVectors,
  divideAsComplex,
  multiplyAsComplex,
  subtractVectors,
  vectorAmount,
  vectorAngleDeg,
  vectorFromPolar,
  type PlaneCovariance,
} from '../../../src/quantities/vector.ts';
import { valueOf } from './helpers.ts';

/** Angles of these sources are counter-clockwise; the algebra is the same in either sense. */
const NONE: PlaneCovariance = [
  [0, 0],
  [0, 0],
];

describe('trial mass, one plane', () => {
  // Recomputed to full precision from the stated inputs; answers in books are rounded.
  it.each([
    [
      'Rao, Mechanical Vibrations, ch. 9, grinding wheel, metric (statement read)',
      [0.2, 40],
      [0.5, 150],
      [0.2, -65],
      0.066815,
      346.704,
    ],
    ['the same in US units (from memory)', [10, 40], [19, 150], [6, -65], 2.46814, 342.26],
    [
      'textbook flywheel problem after Rao (statement read)',
      [0.165, -15],
      [0.225, 35],
      [50, 45],
      47.534,
      128.259,
    ],
  ] as const)('%s', (_, v0, v1, trial, amount, angleDeg) => {
    const before = vectorFromPolar(v0[0], v0[1]);
    const withTrial = vectorFromPolar(v1[0], v1[1]);
    const t = vectorFromPolar(trial[0], trial[1]);
    const { trialRemoved, trialLeftOn } = valueOf(trialCorrection(before, withTrial, t));
    // One unit in the last digit stated.
    expect(Math.abs(vectorAmount(trialRemoved) / amount - 1)).toBeLessThan(2e-5);
    expect(vectorAngleDeg(trialRemoved)).toBeCloseTo(angleDeg, 2);
    // With the correction on, the predicted response is nothing; with the trial left on likewise.
    const perMass = divideAsComplex(subtractVectors(withTrial, before), t);
    expect(vectorAmount(addVectors(before, multiplyAsComplex(perMass, trialRemoved)))).toBeLessThan(
      1e-12 * v1[0],
    );
    expect(
      vectorAmount(addVectors(withTrial, multiplyAsComplex(perMass, trialLeftOn))),
    ).toBeLessThan(1e-12 * v1[0]);
  });
});

describe('vector sum', () => {
  it('Khurmi & Gupta, Theory of Machines, ex. 21.1 (read): 116 kg at about 201.5°', () => {
    const sum = valueOf(
      weightVectorGmm([
        { massG: 200, radiusMm: 0.2, angleDeg: 0 },
        { massG: 300, radiusMm: 0.15, angleDeg: 45 },
        { massG: 240, radiusMm: 0.25, angleDeg: 45 + 75 },
        { massG: 260, radiusMm: 0.3, angleDeg: 45 + 75 + 135 },
      ]),
    );
    expect(vectorAmount(sum) / 0.2).toBeCloseTo(116.099, 3);
    expect(wrapTurnDeg(vectorAngleDeg(sum) + 180)).toBeCloseTo(201.312, 3);
    // The book reads 116 kg and 201.48° off a drawing.
    expect(Math.abs(wrapTurnDeg(vectorAngleDeg(sum) + 180) - 201.48)).toBeLessThan(0.5);
  });
});

describe('splitting a correction', () => {
  it('US Bureau of Reclamation field-balancing manual, ex. 4 (read): drawn 42 and 15', () => {
    const split = valueOf(
      splitCorrection({ amount: 50, angleDeg: 15, placeADeg: 0, placeBDeg: 60 }),
    );
    expect(split.atA).toBeCloseTo(40.825, 3);
    expect(split.atB).toBeCloseTo(14.943, 3);
    expect(Math.abs(split.atA - 42)).toBeLessThan(1.5);
    expect(Math.abs(split.atB - 15)).toBeLessThan(0.5);
  });

  it('recomputed: 35 at 100° onto 72° and 144°', () => {
    const split = valueOf(
      splitCorrection({ amount: 35, angleDeg: 100, placeADeg: 72, placeBDeg: 144 }),
    );
    expect(split.atA).toBeCloseTo(25.564, 3);
    expect(split.atB).toBeCloseTo(17.277, 3);
  });
});

describe('index test (ISO 21940-14; identity recomputed)', () => {
  it('half the sum gives the wheel, half the difference the fixture', () => {
    // The fixture's part turns against the wheel, whose frame the readings are in, as a tyre would.
    const inWheelFrame1 = vectorFromPolar(28.259, 34.229);
    const reading2 = vectorFromPolar(51.86, 27.697);
    const { rimGmm, tyreGmm } = valueOf(
      tyreAndRim(
        { unbalanceGmm: inWheelFrame1, covarianceGmm2: NONE },
        { unbalanceGmm: reading2, covarianceGmm2: NONE },
        180,
        185,
      ),
    );
    // Readings carry five digits.
    expect(vectorAmount(rimGmm)).toBeCloseTo(40, 2);
    expect(vectorAngleDeg(rimGmm)).toBeCloseTo(30, 2);
    expect(vectorAmount(tyreGmm)).toBeCloseTo(12, 2);
    expect(vectorAngleDeg(tyreGmm)).toBeCloseTo(200, 2);
  });
});

describe('four runs without phase (recomputed)', () => {
  it('heavy spot 55 at 137°', () => {
    const u = valueOf(
      unbalanceFromFourRuns({
        bare: 4.4,
        at0: 3.409185,
        at120: 5.94851,
        at240: 4.330438,
        trial: 20,
      }),
    );
    expect(vectorAmount(u)).toBeCloseTo(55, 3);
    expect(vectorAngleDeg(u)).toBeCloseTo(137, 3);
  });
});
