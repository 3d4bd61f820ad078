import { describe, expect, it } from 'vitest';

import { drawConditions, simulateSweep } from '../pipeline/simulatedSweep.ts';
import { fitted } from './fitTiltSweeps.ts';

describe('fitTilt at random', () => {
  it('is finite and near the truth whatever is drawn', () => {
    for (let seed = 501; seed < 521; seed++) {
      const sweep = simulateSweep(seed, drawConditions(seed));
      const fit = fitted(sweep.observations);
      expect(fit.covarianceMm2.every(Number.isFinite)).toBe(true);
      const apart = Math.hypot(
        fit.tiltMm.along0 - sweep.tiltMm[0],
        fit.tiltMm.along90 - sweep.tiltMm[1],
      );
      // Half a millimetre is 1.2 g on the wheel of DESIGN section 3.
      expect(apart, sweep.description).toBeLessThan(0.5);
    }
  });
});
