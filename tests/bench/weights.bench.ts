import { bench, describe } from 'vitest';

import { chooseWeights } from '../../src/balance/weightChoice.ts';
import { COMMON_STOCK, type WeightRing } from '../../src/balance/weightStock.ts';
import { vectorFromPolar } from '../../src/quantities/vector.ts';

/** Limit: 50 ms for six sizes, two radii and three forbidden arcs. */
const RINGS: readonly WeightRing[] = [
  {
    radiusMm: 185,
    accepts: ['adhesive'],
    maxPieces: 6,
    forbidden: [
      { fromDeg: 170, toDeg: 200 },
      { fromDeg: 20, toDeg: 50 },
    ],
  },
  {
    radiusMm: 214,
    accepts: ['clip-on'],
    maxPieces: 3,
    forbidden: [{ fromDeg: 90, toDeg: 225 }],
  },
];

const choose = (massG: number, heavyDeg: number) =>
  chooseWeights({
    unbalanceGmm: vectorFromPolar(massG * 185, heavyDeg),
    kinds: COMMON_STOCK,
    rings: RINGS,
  });

const TIMES = { time: 300, warmupTime: 100, iterations: 5, warmupIterations: 1 };

describe('weights from 6 sizes, 2 radii, 3 forbidden arcs', () => {
  bench(
    '33 g, spot free',
    () => {
      choose(33, 120);
    },
    TIMES,
  );
  bench(
    '33 g, spot blocked',
    () => {
      choose(33, 5);
    },
    TIMES,
  );
  bench(
    '104 g, spot blocked',
    () => {
      choose(104, 5);
    },
    TIMES,
  );
  bench(
    '900 g, more than two places hold',
    () => {
      choose(900, 5);
    },
    TIMES,
  );
  bench(
    '33 g, least residual whatever it takes',
    () => {
      chooseWeights({
        unbalanceGmm: vectorFromPolar(33 * 185, 5),
        kinds: COMMON_STOCK,
        rings: RINGS,
        sameG: 0,
      });
    },
    TIMES,
  );
});
