import { describe, expect, it } from 'vitest';

import { vectorAngleDeg } from '../../src/quantities/vector.ts';
import { simulateSweep } from '../pipeline/simulatedSweep.ts';
import { fitted, PLAIN } from './fitTiltSweeps.ts';

const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8];

/** Angle of the fitted rise from the true one, degrees in (−180, 180]. */
function angleOff(seed: number, change: Partial<typeof PLAIN>) {
  const sweep = simulateSweep(seed, { ...PLAIN, ...change });
  const fit = fitted(sweep.observations);
  const truth = (Math.atan2(sweep.tiltMm[1], sweep.tiltMm[0]) * 180) / Math.PI;
  return { offDeg: ((vectorAngleDeg(fit.tiltMm) - truth + 540) % 360) - 180, fit, sweep };
}

describe('fitTilt and a picture that sways on its arm', () => {
  it.each([
    ['down', { swayDownMm: 0.7, swayPeriodS: 1.8 }],
    ['to the right', { swayRightMm: 0.5, swayPeriodS: 1.3 }],
    ['both ways', { swayDownMm: 0.5, swayRightMm: 0.5, swayPeriodS: 1 }],
  ])('%s: takes it for no swing of the wheel', (_way, sway) => {
    const runs = SEEDS.map((seed) => angleOff(seed, sway));
    for (const { fit, sweep } of runs) {
      // A sway taken for a swing had a rate a third too high and a damping of 0.3.
      expect(Math.abs(Math.log(fit.rocking.frequencyHz / sweep.frequencyHz))).toBeLessThan(0.15);
      expect(fit.rocking.dampingRatio).toBeLessThan(0.12);
    }
    // Its lag turned all readings the same way: their mean tells it from what is random.
    const mean = runs.reduce((sum, { offDeg }) => sum + offDeg, 0) / runs.length;
    expect(Math.abs(mean)).toBeLessThan(1);
  });

  it('says how much it sways, and that a picture on a firm arm does not', () => {
    const swayed = angleOff(5, { swayDownMm: 0.6, swayRightMm: 0.6 }).fit.sway;
    expect(swayed.downMm).toBeGreaterThan(0.3);
    expect(swayed.acrossMm).toBeGreaterThan(0.3);
    const still = angleOff(5, {}).fit.sway;
    expect(still.downMm).toBeLessThan(0.06);
    expect(still.acrossMm).toBeLessThan(0.06);
  });
});
