import { build } from 'vite';
import { bench, describe } from 'vitest';

import type { fitTilt as FitTilt } from '../../src/measure/fit/fitTilt.ts';
import { drawConditions, simulateSweep } from '../pipeline/simulatedSweep.ts';

/** One minute at 30 or half a minute at 60 frames a second: about 1,800 frames × 21 azimuths. */
const sweep = simulateSweep(3, {
  ...drawConditions(3),
  style: 'uneven',
  frameRateHz: 60,
  durationS: 31,
  gaps: 0,
});

/**
 * The fit bundled as the app bundles it: the test runner looks up every import anew at each use,
 * which more than doubles the time of small loops and is of no interest to a user.
 */
async function bundledFit(): Promise<typeof FitTilt> {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    build: {
      write: false,
      minify: false,
      target: 'es2022',
      lib: { entry: 'src/measure/fit/fitTilt.ts', formats: ['es'], fileName: 'fit' },
    },
  });
  const output = Array.isArray(built) ? built[0] : built;
  if (!('output' in output)) throw new Error('the bundle was not built');
  const source = encodeURIComponent(output.output[0].code);
  const module = (await import(/* @vite-ignore */ `data:text/javascript,${source}`)) as {
    fitTilt: typeof FitTilt;
  };
  return module.fitTilt;
}

const fitTilt = await bundledFit();

describe(`fit of ${sweep.observations.timeS.length} frames × 21 azimuths`, () => {
  bench(
    'fitTilt',
    () => {
      fitTilt(sweep.observations);
    },
    { warmupIterations: 10, iterations: 30, time: 0 },
  );
});
