import { describe, expect, it } from 'vitest';

import { REGION_95 } from '../../src/measure/fit/confidence.ts';
import {
  addToRunningTilt,
  createRunningTilt,
  runningTiltNow,
  type RunningTiltNow,
} from '../../src/measure/fit/runningTilt.ts';
import { drawConditions, simulateSweep, type SimulatedSweep } from './simulatedSweep.ts';

/** The running estimate over a simulated sweep's true tilts, asked at each share of its pictures. */
function estimates(sweep: SimulatedSweep, shares: readonly number[]): (RunningTiltNow | null)[] {
  const { timeS, turnDeg } = sweep.observations;
  const [a, b] = sweep.tiltMm;
  const running = createRunningTilt();
  const out: (RunningTiltNow | null)[] = [];
  timeS.forEach((t, i) => {
    const [c, s] = [Math.cos(turnDeg[i] / DEG), Math.sin(turnDeg[i] / DEG)];
    addToRunningTilt(running, t, turnDeg[i], {
      along0: sweep.standMm[0] + a * c - b * s + sweep.rockingMm[2 * i],
      along90: sweep.standMm[1] + a * s + b * c + sweep.rockingMm[2 * i + 1],
    });
    if (shares.some((share) => i === Math.floor(share * (timeS.length - 1)))) {
      out.push(runningTiltNow(running));
    }
  });
  return out;
}

const DEG = 180 / Math.PI;
const SWEEPS = 300;

describe('± of an unfinished sweep', () => {
  it(`holds the truth at least as often as it says at the end of ${SWEEPS} sweeps`, () => {
    let held = 0;
    for (let seed = 1; seed <= SWEEPS; seed++) {
      const sweep = simulateSweep(seed, drawConditions(seed));
      const [now] = estimates(sweep, [1]);
      const miss = Math.hypot(
        now!.tiltMm.along0 - sweep.tiltMm[0],
        now!.tiltMm.along90 - sweep.tiltMm[1],
      );
      if (miss ** 2 <= REGION_95 * now!.tiltSdMm ** 2) held++;
    }
    // 300 of 95 %: one standard deviation is 1.3 %. It may promise too little, not too much.
    expect(held / SWEEPS).toBeGreaterThanOrEqual(0.92);
  });

  it('is smaller after two turns than after one, and by about √2', () => {
    let ratio = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const conditions = { ...drawConditions(seed), style: 'steady' as const };
      const one = simulateSweep(seed, { ...conditions, turnedDeg: 385, durationS: 30 });
      const two = simulateSweep(seed, { ...conditions, turnedDeg: 770, durationS: 60 });
      ratio += estimates(two, [1])[0]!.tiltSdMm / estimates(one, [1])[0]!.tiltSdMm / 40;
    }
    expect(ratio).toBeGreaterThan(0.55);
    expect(ratio).toBeLessThan(0.85);
  });

  it('says nothing before stand and wheel can be told apart', () => {
    const sweep = simulateSweep(5, { ...drawConditions(5), style: 'steady', gaps: 0 });
    expect(estimates(sweep, [0.1])[0]).toBeNull();
    expect(estimates(sweep, [0.9])[0]).not.toBeNull();
  });
});
