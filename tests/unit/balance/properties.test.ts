import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { ballDiameterFromText } from '../../../src/balance/ballDiameter.ts';
import { correctionAtLightSpot } from '../../../src/balance/correction.ts';
import { modelResponse, measuredResponse } from '../../../src/balance/response.ts';
import { separateRunOut } from '../../../src/balance/runOutSeparation.ts';
import { trialCorrection } from '../../../src/balance/trialCorrection.ts';
import { tyreAndRim } from '../../../src/balance/tyreIndex.ts';
import { unbalanceFromRise } from '../../../src/balance/unbalance.ts';
import { shortWayDeg } from '../../../src/quantities/angle.ts';
import { GRAMS_PER_OUNCE, MM_PER_INCH } from '../../../src/quantities/units.ts';
import {
  scaleVector,
  vectorAmount,
  vectorFromPolar,
  type PlaneCovariance,
  type PlaneVector,
} from '../../../src/quantities/vector.ts';
import { evenNumber, valueOf } from './outcomeHelpers.ts';

const C: PlaneCovariance = [
  [0.04, 0.01],
  [0.01, 0.02],
];
const MIRRORED_C: PlaneCovariance = [
  [0.04, -0.01],
  [-0.01, 0.02],
];
const mirror = (v: PlaneVector): PlaneVector => ({ along0: v.along0, along90: -v.along90 });
const anyVector = fc
  .tuple(evenNumber(0.5, 12), evenNumber(0, 360))
  .map(([amount, angleDeg]) => vectorFromPolar(amount, angleDeg));

function expectSame(a: PlaneVector, b: PlaneVector): void {
  const scale = Math.max(vectorAmount(a), 1e-12);
  expect(Math.abs(a.along0 - b.along0) / scale).toBeLessThan(1e-9);
  expect(Math.abs(a.along90 - b.along90) / scale).toBeLessThan(1e-9);
}

describe('mirroring the wheel mirrors the answer', () => {
  const response = { mmPerGmm: 0.0023, standardError: 4e-5 };

  it('unbalance, its covariance and its interval', () => {
    fc.assert(
      fc.property(anyVector, (riseMm) => {
        const of = (v: PlaneVector, covarianceMm2: PlaneCovariance) =>
          valueOf(
            unbalanceFromRise({ rise: { riseMm: v, covarianceMm2 }, response, runOutSdMm: 0 }),
          );
        const straight = of(riseMm, C);
        const mirrored = of(mirror(riseMm), MIRRORED_C);
        expectSame(mirror(straight.unbalanceGmm), mirrored.unbalanceGmm);
        expect(mirrored.covarianceGmm2[0][1]).toBeCloseTo(-straight.covarianceGmm2[0][1], 4);
        const [from, to] = straight.ci95.angleDeg ?? [0, 0];
        const [mirroredFrom, mirroredTo] = mirrored.ci95.angleDeg ?? [0, 0];
        expect(shortWayDeg(mirroredFrom, -to)).toBeCloseTo(0, 6);
        expect(shortWayDeg(mirroredTo, -from)).toBeCloseTo(0, 6);
      }),
    );
  });

  it('trial correction, tyre on rim, run-out', () => {
    fc.assert(
      fc.property(anyVector, anyVector, anyVector, evenNumber(20, 340), (a, b, t, turnDeg) => {
        fc.pre(vectorAmount({ along0: a.along0 - b.along0, along90: a.along90 - b.along90 }) > 0.1);
        expectSame(
          mirror(valueOf(trialCorrection(a, b, t)).trialRemoved),
          valueOf(trialCorrection(mirror(a), mirror(b), mirror(t))).trialRemoved,
        );
        const swept = (v: PlaneVector, c: PlaneCovariance) => ({
          unbalanceGmm: v,
          covarianceGmm2: c,
        });
        expectSame(
          mirror(valueOf(tyreAndRim(swept(a, C), swept(b, C), turnDeg, 185)).tyreGmm),
          valueOf(
            tyreAndRim(swept(mirror(a), MIRRORED_C), swept(mirror(b), MIRRORED_C), -turnDeg, 185),
          ).tyreGmm,
        );
        const onBall = (riseMm: PlaneVector, covarianceMm2: PlaneCovariance, mmPerGmm: number) => ({
          rise: { riseMm, covarianceMm2 },
          response: { mmPerGmm, standardError: 0 },
        });
        expectSame(
          mirror(valueOf(separateRunOut(onBall(a, C, 0.002), onBall(b, C, 0.001), 0)).runOutMm),
          valueOf(
            separateRunOut(
              onBall(mirror(a), MIRRORED_C, 0.002),
              onBall(mirror(b), MIRRORED_C, 0.001),
              0,
            ),
          ).runOutMm,
        );
      }),
    );
  });
});

describe('units and scale change nothing', () => {
  it('inches and ounces, or millimetres and grams: the same lean', () => {
    fc.assert(
      fc.property(evenNumber(8, 30), evenNumber(3, 20), (massKg, pendulumDepthMm) => {
        const metric = valueOf(modelResponse({ massKg, edgeRadiusMm: 305, pendulumDepthMm }));
        // k in inches per ounce-inch from a mass in thousands of ounces and lengths in inches.
        const inch = valueOf(
          modelResponse({
            massKg: massKg / GRAMS_PER_OUNCE,
            edgeRadiusMm: 305 / MM_PER_INCH,
            pendulumDepthMm: pendulumDepthMm / MM_PER_INCH,
          }),
        );
        const riseInch = inch.mmPerGmm * ((20 / GRAMS_PER_OUNCE) * (185 / MM_PER_INCH));
        expect(riseInch * MM_PER_INCH).toBeCloseTo(metric.mmPerGmm * 20 * 185, 9);
      }),
    );
  });

  it('a ball named in inches is the ball named in millimetres', () => {
    for (let sixteenths = 20; sixteenths < 64; sixteenths += 1) {
      const inches = `${Math.floor(sixteenths / 16)} ${sixteenths % 16}/16 in`;
      const mm = `${(sixteenths * MM_PER_INCH) / 16} mm`;
      expect(valueOf(ballDiameterFromText(inches))).toBeCloseTo(
        valueOf(ballDiameterFromText(mm)),
        9,
      );
    }
  });

  it('twice the rise is twice the unbalance and, stuck on, twice the weight', () => {
    fc.assert(
      fc.property(anyVector, evenNumber(0.5, 4), (riseMm, factor) => {
        const of = (v: PlaneVector) =>
          valueOf(
            unbalanceFromRise({
              rise: { riseMm: v, covarianceMm2: C },
              response: { mmPerGmm: 0.0023, standardError: 0 },
              runOutSdMm: 0,
            }),
          ).unbalanceGmm;
        expectSame(scaleVector(of(riseMm), factor), of(scaleVector(riseMm, factor)));
        const correct = (v: PlaneVector, weightStepG: number) =>
          valueOf(correctionAtLightSpot(v, { weightStepG, weightRadiusMm: 185 }));
        const once = correct(of(riseMm), 5);
        const more = correct(of(scaleVector(riseMm, factor)), 5 * factor);
        expect(Math.abs(more.residualAmountGmm - factor * once.residualAmountGmm)).toBeLessThan(
          1e-6,
        );
      }),
    );
  });

  it('the response does not depend on how heavy the trial was', () => {
    fc.assert(
      fc.property(anyVector, evenNumber(5, 100), evenNumber(0, 360), (bare, massG, angleDeg) => {
        const k = 0.0019;
        const moment = vectorFromPolar(massG * 185, angleDeg);
        const riseMm = {
          along0: bare.along0 - k * moment.along0,
          along90: bare.along90 - k * moment.along90,
        };
        const found = valueOf(
          measuredResponse({
            before: { riseMm: bare, covarianceMm2: C },
            after: { riseMm, covarianceMm2: C },
            added: [{ massG, radiusMm: 185, angleDeg }],
          }),
        );
        expect(found.response.mmPerGmm / k).toBeCloseTo(1, 9);
      }),
    );
  });
});
