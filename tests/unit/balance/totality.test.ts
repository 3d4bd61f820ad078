import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { ballBehaviour } from '../../../src/balance/ballBehaviour.ts';
import { chooseBall } from '../../../src/balance/ballChoice.ts';
import { ballDiameterFromText } from '../../../src/balance/ballDiameter.ts';
import * as seat from '../../../src/balance/ballSeat.ts';
import { compareByEye, eyeHabit } from '../../../src/balance/byEye.ts';
import * as clock from '../../../src/balance/clock.ts';
import { correctionAtLightSpot } from '../../../src/balance/correction.ts';
import { addedCouple } from '../../../src/balance/couple.ts';
import * as deadBand from '../../../src/balance/deadBand.ts';
import { edgeWaveFromFit } from '../../../src/balance/edgeWave.ts';
import { BALANCE_FAILURES, type BalanceOutcome } from '../../../src/balance/failures.ts';
import { unbalanceFromFourRuns } from '../../../src/balance/fourRun.ts';
import * as hertz from '../../../src/balance/hertz.ts';
import * as levelling from '../../../src/balance/levelling.ts';
import { screwTurnsToLevel } from '../../../src/balance/levellingScrews.ts';
import { checkPlate } from '../../../src/balance/plateCheck.ts';
import { poolRepeats } from '../../../src/balance/repeats.ts';
import { residualMeaning } from '../../../src/balance/residualMeaning.ts';
import { measuredResponse, modelResponse, weightVectorGmm } from '../../../src/balance/response.ts';
import { pooledResponse } from '../../../src/balance/responsePool.ts';
import { runOutSdMm } from '../../../src/balance/runOutAllowance.ts';
import { separateRunOut } from '../../../src/balance/runOutSeparation.ts';
import { splitCorrection } from '../../../src/balance/splitCorrection.ts';
import { stripMomentGmm } from '../../../src/balance/stripArc.ts';
import * as tolerance from '../../../src/balance/tolerance.ts';
import { trialCorrection } from '../../../src/balance/trialCorrection.ts';
import { centreDepthFromWeighings } from '../../../src/balance/twoWeighings.ts';
import { tyreDimensions } from '../../../src/balance/tyreDimensions.ts';
import { suggestsIndexTest, tyreAndRim } from '../../../src/balance/tyreIndex.ts';
import { tyreSizeFromText } from '../../../src/balance/tyreSize.ts';
import { unbalanceFromRise } from '../../../src/balance/unbalance.ts';
import { verdictOn } from '../../../src/balance/verdict.ts';
import { chooseWeights } from '../../../src/balance/weightChoice.ts';
import type { PlaneCovariance } from '../../../src/quantities/vector.ts';
import { evenNumber } from './outcomeHelpers.ts';

/** Any number of the type, the nasty ones and plain ones often. */
const number = fc.oneof(
  { weight: 1, arbitrary: fc.double() },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      0,
      -0,
      1e-300,
      5e-324,
      1e-9,
      1e9,
      -1e9,
      1e18,
      Number.NaN,
      Infinity,
      -Infinity,
      360,
      180,
      90,
    ),
  },
  { weight: 9, arbitrary: evenNumber(0, 500) },
  { weight: 5, arbitrary: evenNumber(0, 1) },
);
const vector = fc.record({ along0: number, along90: number });
const covariance = fc.oneof(
  fc.tuple(number, number, number).map(([a, b, d]): PlaneCovariance => [
    [a, b],
    [b, d],
  ]),
  fc
    .tuple(evenNumber(0, 9), evenNumber(-1, 1), evenNumber(0, 9))
    .map(([a, r, d]): PlaneCovariance => [
      [a * a, r * a * d],
      [r * a * d, d * d],
    ]),
);
const rise = fc.record({ riseMm: vector, covarianceMm2: covariance });
const unbalance = fc.record({ unbalanceGmm: vector, covarianceGmm2: covariance });
const weight = fc.record({ massG: number, radiusMm: number, angleDeg: number });
const poissonRatio = fc.oneof(
  { weight: 5, arbitrary: evenNumber(0, 0.5) },
  { weight: 1, arbitrary: number },
);
const elastic = fc.record({ elasticModulusMpa: number, poissonRatio });
const arc = fc.record({ fromDeg: number, toDeg: number });
const text = fc.oneof(
  fc.string(),
  fc.stringMatching(/^[0-9xRLTPC/., :"°¼½¾-]{0,14}$/),
  fc.stringMatching(/^(LT|P)?\d{2,3}\/\d{2}R\d{2}$/),
);
const list = <T>(of: fc.Arbitrary<T>) => fc.array(of, { maxLength: 5 });
const named = <T extends string>(...names: T[]) =>
  fc.record(
    Object.fromEntries(names.map((name) => [name, number])) as Record<T, typeof number>,
  ) as unknown as fc.Arbitrary<Record<T, number>>;

/** Paths of all numbers in a value that are not finite, `except` where infinity has a meaning. */
function notFinite(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path}=${value}`];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}.${key}`));
}

function total<A>(
  name: string,
  inputs: fc.Arbitrary<A>,
  call: (input: A) => BalanceOutcome<unknown>,
  runs = 400,
): void {
  it(name, () => {
    let values = 0;
    fc.assert(
      fc.property(inputs, (input) => {
        const outcome = call(input);
        if (outcome.ok) {
          values += 1;
          expect(notFinite(outcome.value)).toEqual([]);
        } else expect(Object.keys(BALANCE_FAILURES)).toContain(outcome.failure.code);
      }),
      { numRuns: runs, seed: 20 },
    );
    // A generator that never gets past the door would prove nothing.
    expect(values).toBeGreaterThan(0);
  });
}

describe('whatever comes in, a finite value or a named reason comes out', () => {
  const wheelNames = [
    'massKg',
    'boreDiameterMm',
    'centreDepthMm',
    'edgeRadiusMm',
    'weightRadiusMm',
    'transverseGyrationMm',
    'cameraRangeMm',
  ] as const;
  const wheel = named(...wheelNames);
  total('ballBehaviour', fc.tuple(wheel, number), ([w, d]) => ballBehaviour(w, d), 3000);
  total(
    'chooseBall',
    fc.tuple(wheel, list(number), named('centreDepthSdMm', 'weightStepG', 'expectedUnbalanceGmm')),
    ([w, d, s]) => chooseBall(w, d, s),
    1000,
  );
  total('ballDiameterFromText', text, ballDiameterFromText, 3000);
  total('seatHeightMm', named('ballDiameterMm', 'boreDiameterMm'), seat.seatHeightMm);
  total('pendulumDepthMm', fc.tuple(named('ballDiameterMm', 'boreDiameterMm'), number), ([s, d]) =>
    seat.pendulumDepthMm(s, d),
  );
  total('centreDepthMm', fc.tuple(named('ballDiameterMm', 'boreDiameterMm'), number), ([s, d]) =>
    seat.centreDepthMm(s, d),
  );
  total(
    'pendulumDepthFromResponse',
    named(
      'mmPerGmm',
      'mmPerGmmStandardError',
      'massKg',
      'massSdKg',
      'edgeRadiusMm',
      'edgeRadiusSdMm',
    ),
    seat.pendulumDepthFromResponse,
    1000,
  );
  total(
    'centreDepthFromWeighings',
    named(
      'upperRailLoadKg',
      'lowerRailLoadKg',
      'scaleSdKg',
      'railSpacingMm',
      'seatFromUpperRailMm',
      'rulerSdMm',
    ),
    centreDepthFromWeighings,
    1000,
  );
  total(
    'compareByEye',
    fc.tuple(vector, named('lightSpotDeg', 'massG'), number),
    ([u, e, r]) => compareByEye(u, e, r),
    1000,
  );
  total(
    'eyeHabit',
    list(fc.record({ angleOffDeg: fc.option(number), massOffG: number })),
    eyeHabit,
  );
  total('wheelAngleFromText', text, clock.wheelAngleFromText, 3000);
  total('clockFromWheelAngle', number, clock.clockFromWheelAngle);
  total(
    'correctionAtLightSpot',
    fc.tuple(vector, named('weightStepG', 'weightRadiusMm')),
    ([u, s]) => correctionAtLightSpot(u, s),
    1000,
  );
  total(
    'addedCouple',
    named('correctionGmm', 'axialDistanceMm', 'permissibleGmm', 'planeSpacingMm'),
    addedCouple,
    1000,
  );
  total(
    'deadBandFromFriction',
    named('massKg', 'ballDiameterMm', 'rollingShare', 'weightRadiusMm'),
    deadBand.deadBandFromFriction,
    1000,
  );
  total(
    'deadBandFromRepeats',
    fc.tuple(unbalance, unbalance, number),
    ([a, b, r]) => deadBand.deadBandFromRepeats(a, b, r),
    2000,
  );
  total(
    'deadBandFromWeights',
    named('largestStillG', 'smallestMovedG', 'weightRadiusMm'),
    deadBand.deadBandFromWeights,
  );
  total('edgeWaveFromFit', fc.tuple(list(number), list(number)), ([c, s]) => edgeWaveFromFit(c, s));
  total(
    'unbalanceFromFourRuns',
    named('bare', 'at0', 'at120', 'at240', 'trial'),
    unbalanceFromFourRuns,
    1000,
  );
  total(
    'hertzContact',
    fc.record({ forceN: number, sphereRadiusMm: number, sphere: elastic, flat: elastic }),
    hertz.hertzContact,
    3000,
  );
  total(
    'loadAtPressureN',
    fc.record({ pressureMpa: number, sphereRadiusMm: number, sphere: elastic, flat: elastic }),
    hertz.loadAtPressureN,
    3000,
  );
  total(
    'checkPlate',
    fc.record({
      massKg: number,
      ballDiameterMm: number,
      plate: fc.record({
        label: fc.string(),
        kind: fc.constantFrom('yields' as const, 'cracks' as const),
        strengthMpa: number,
        elasticModulusMpa: number,
        poissonRatio,
      }),
    }),
    checkPlate,
    3000,
  );
  const lean = fc.record({ leanMrad: vector, slopeAmplification: number });
  total(
    'plateSlopeFromLean',
    fc.tuple(lean, number),
    ([l, s]) => levelling.plateSlopeFromLean(l, s),
    1000,
  );
  total(
    'plateAndLaserFromTwoBalls',
    fc.tuple(lean, lean),
    ([a, b]) => levelling.plateAndLaserFromTwoBalls(a, b),
    3000,
  );
  total(
    'screwTurnsToLevel',
    fc.tuple(
      vector,
      fc.record({
        azimuthsDeg: fc.tuple(number, number, number),
        circleRadiusMm: number,
        threadPitchMm: number,
        clockwiseLifts: fc.boolean(),
      }),
    ),
    ([v, s]) => screwTurnsToLevel(v, s),
    3000,
  );
  total('poolRepeats', list(unbalance), poolRepeats, 3000);
  total(
    'residualMeaning',
    fc.record({
      residualGmm: vector,
      weightRadiusMm: number,
      massKg: number,
      roadSpeedKmh: number,
      overallDiameterMm: number,
    }),
    residualMeaning,
    2000,
  );
  total('modelResponse', named('massKg', 'edgeRadiusMm', 'pendulumDepthMm'), modelResponse);
  total(
    'measuredResponse',
    fc.record({ before: rise, after: rise, added: list(weight) }),
    measuredResponse,
    3000,
  );
  total('weightVectorGmm', list(weight), weightVectorGmm);
  total(
    'pooledResponse',
    list(fc.record({ rise, addedGmm: vector })),
    (s) => pooledResponse(s),
    6000,
  );
  total('runOutSdMm', number, runOutSdMm);
  const response = named('mmPerGmm', 'standardError');
  total(
    'unbalanceFromRise',
    fc.record({ rise, response, runOutSdMm: number }),
    unbalanceFromRise,
    2000,
  );
  total(
    'separateRunOut',
    fc.tuple(fc.record({ rise, response }), fc.record({ rise, response }), number),
    ([a, b, c]) => separateRunOut(a, b, c),
    12000,
  );
  total(
    'splitCorrection',
    named('amount', 'angleDeg', 'placeADeg', 'placeBDeg'),
    splitCorrection,
    1000,
  );
  total('stripMomentGmm', fc.tuple(number, number, number), ([m, l, r]) => stripMomentGmm(m, l, r));
  total(
    'permissibleUnbalanceGmm',
    named('gradeMmPerS', 'massKg', 'speedPerMin'),
    tolerance.permissibleUnbalanceGmm,
  );
  total(
    'gradeOfUnbalanceMmPerS',
    named('amountGmm', 'massKg', 'speedPerMin'),
    tolerance.gradeOfUnbalanceMmPerS,
  );
  total('unbalanceForceN', fc.tuple(number, number), ([u, n]) => tolerance.unbalanceForceN(u, n));
  total('wheelSpeedPerMin', fc.tuple(number, number), ([v, d]) => tolerance.wheelSpeedPerMin(v, d));
  total(
    'permissibleByPlane',
    named('permissibleGmm', 'centreToPlaneAMm', 'centreToPlaneBMm'),
    tolerance.permissibleByPlane,
  );
  total(
    'trialCorrection',
    fc.tuple(vector, vector, vector),
    ([a, b, t]) => trialCorrection(a, b, t),
    1000,
  );
  total(
    'tyreAndRim',
    fc.tuple(unbalance, unbalance, number, number),
    ([a, b, d, r]) => tyreAndRim(a, b, d, r),
    3000,
  );
  total('suggestsIndexTest', number, suggestsIndexTest);
  total('tyreSizeFromText', text, tyreSizeFromText, 4000);
  total(
    'tyreDimensions of what is read',
    text,
    (t) => {
      const size = tyreSizeFromText(t);
      return size.ok ? tyreDimensions(size.value) : size;
    },
    4000,
  );
  total(
    'verdictOn',
    fc.tuple(
      named(
        'residualGmm',
        'residualSdGmm',
        'permissibleGmm',
        'weightStepG',
        'weightRadiusMm',
        'trimsDone',
        'edgeWaveMm',
        'seatErrorGmm',
      ),
      fc.boolean(),
    ),
    ([n, plateDents]) => verdictOn({ ...n, plateDents }),
    2000,
  );
  const plain = evenNumber(0.5, 300);
  const mostly = fc.oneof({ weight: 8, arbitrary: plain }, { weight: 1, arbitrary: number });
  total(
    'chooseWeights',
    fc.record({
      unbalanceGmm: vector,
      kinds: fc.array(
        fc.record({
          label: fc.string(),
          massG: mostly,
          lengthMm: mostly,
          fitting: fc.constantFrom('adhesive' as const, 'clip-on' as const),
          onHand: mostly,
        }),
        { maxLength: 3 },
      ),
      rings: fc.array(
        fc.record({
          radiusMm: mostly,
          accepts: fc.constant(['adhesive', 'clip-on'] as const),
          forbidden: fc.array(arc, { maxLength: 2 }),
          maxPieces: fc.constantFrom(0, 1, 2, 2.5, 3, Number.NaN),
        }),
        { maxLength: 2 },
      ),
      takenOff: fc.array(weight, { maxLength: 1 }),
      angleStepDeg: fc.constantFrom(1, 7, 45, Number.NaN),
    }),
    chooseWeights,
    600,
  );
});
