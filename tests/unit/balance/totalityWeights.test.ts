import fc from 'fast-check';
import { describe } from 'vitest';
import { measuredResponse, modelResponse, weightVectorGmm } from '../../../src/balance/response.ts';
import { pooledResponse } from '../../../src/balance/responsePool.ts';
import { runOutSdMm } from '../../../src/balance/runOutAllowance.ts';
import { separateRunOut } from '../../../src/balance/runOutSeparation.ts';
import { splitCorrection } from '../../../src/balance/splitCorrection.ts';
import { stripMomentGmm } from '../../../src/balance/stripArc.ts';
import * as tolerance from '../../../src/balance/tolerance.ts';
import { trialCorrection } from '../../../src/balance/trialCorrection.ts';
import { tyreDimensions } from '../../../src/balance/tyreDimensions.ts';
import { suggestsIndexTest, tyreAndRim } from '../../../src/balance/tyreIndex.ts';
import { tyreSizeFromText } from '../../../src/balance/tyreSize.ts';
import { unbalanceFromRise } from '../../../src/balance/unbalance.ts';
import { verdictOn } from '../../../src/balance/verdict.ts';
import { chooseWeights } from '../../../src/balance/weightChoice.ts';
import { evenNumber } from './outcomeHelpers.ts';
import {
  arc,
  list,
  named,
  number,
  rise,
  text,
  total,
  unbalance,
  vector,
  weight,
} from './anyInput.ts';

describe('whatever comes in, a finite value or a named reason comes out', () => {
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
