import type { SweepObservations } from '../../src/contract/observations.ts';
import { fitTilt } from '../../src/measure/fit/fitTilt.ts';
import type { TiltFit } from '../../src/measure/fit/tiltFit.ts';
import type { SimulatedConditions } from '../pipeline/simulatedSweep.ts';

export const AZIMUTHS = 21;

/** One quiet sweep with plain figures; tests change what they are about. */
export const PLAIN: SimulatedConditions = {
  style: 'uneven',
  sense: 1,
  turnedDeg: 400,
  durationS: 30,
  frameRateHz: 24,
  periodS: 4,
  spinRatio: 1.7,
  dampingRatio: 0.02,
  kickMm: 0.3,
  kicksPerS: 0.3,
  forceMm: 0.03,
  slowMm: 0.02,
  slowTimeS: 4,
  slowActsOn: 'wheel',
  riseMm: 9,
  standMm: 2,
  noiseMm: 0.15,
  offsetNoiseMm: 0.03,
  runningShare: 0.3,
  biasMm: 0.05,
  missingShare: 0.1,
  gaps: 1,
  swayDownMm: 0,
  swayRightMm: 0,
  swayPeriodS: 1.5,
};
export const STILL = {
  kickMm: 0,
  forceMm: 0,
  slowMm: 0,
  noiseMm: 1e-3,
  offsetNoiseMm: 0,
  biasMm: 0,
  missingShare: 0,
  gaps: 0,
};

export function fitted(observations: SweepObservations, options = {}): TiltFit {
  const fit = fitTilt(observations, options);
  if (!fit.ok) throw new Error(`${fit.failure.code} ${JSON.stringify(fit.failure.evidence)}`);
  return fit.value;
}

export const copy = (o: SweepObservations): SweepObservations => ({
  ...o,
  turnDeg: Float64Array.from(o.turnDeg),
  heightMm: Float32Array.from(o.heightMm),
  standardErrorMm: Float32Array.from(o.standardErrorMm),
});
