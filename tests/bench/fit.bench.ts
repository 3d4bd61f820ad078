import { bench, describe } from 'vitest';

import { fitTilt } from '../../src/measure/fit/fitTilt.ts';
import { drawConditions, simulateSweep } from '../pipeline/simulatedSweep.ts';

/** One minute at 30 or half a minute at 60 frames a second: about 1,800 frames × 21 azimuths. */
const sweep = simulateSweep(3, {
  ...drawConditions(3),
  style: 'uneven',
  frameRateHz: 60,
  durationS: 31,
  gaps: 0,
});

describe(`fit of ${sweep.observations.timeS.length} frames × 21 azimuths`, () => {
  bench(
    'fitTilt',
    () => {
      fitTilt(sweep.observations);
    },
    { warmupIterations: 10, iterations: 30, time: 0 },
  );
});
