import fc from 'fast-check';
import { describe } from 'vitest';
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
import { unbalanceFromFourRuns } from '../../../src/balance/fourRun.ts';
import * as hertz from '../../../src/balance/hertz.ts';
import * as levelling from '../../../src/balance/levelling.ts';
import { screwTurnsToLevel } from '../../../src/balance/levellingScrews.ts';
import { checkPlate } from '../../../src/balance/plateCheck.ts';
import { poolRepeats } from '../../../src/balance/repeats.ts';
import { residualMeaning } from '../../../src/balance/residualMeaning.ts';
import { centreDepthFromWeighings } from '../../../src/balance/twoWeighings.ts';
import {
  elastic,
  list,
  named,
  number,
  poissonRatio,
  text,
  total,
  unbalance,
  vector,
} from './anyInput.ts';

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
});
