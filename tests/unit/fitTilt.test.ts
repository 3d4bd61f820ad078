import { describe, expect, it } from 'vitest';

import type { SweepObservations } from '../../src/contract/observations.ts';
import { SWING_EVIDENCE, type TiltFit } from '../../src/measure/fit/tiltFit.ts';
import { vectorAmount, vectorAngleDeg } from '../../src/quantities/vector.ts';
import { gaussianFrom, seededRandom } from '../pipeline/seededRandom.ts';
import { simulateSweep } from '../pipeline/simulatedSweep.ts';

import { AZIMUTHS, copy, fitted, PLAIN, STILL } from './fitTiltSweeps.ts';

describe('fitTilt finds what was put in', () => {
  it.each([1, -1] as const)('with next to no noise, turned in sense %d', (sense) => {
    const sweep = simulateSweep(7, { ...PLAIN, ...STILL, sense });
    const fit = fitted(sweep.observations, { spinRatioSd: 0 });
    // The turn is good to 0.03°, which is 0.005 mm of 9 mm a frame, less over many.
    expect(fit.tiltMm.along0).toBeCloseTo(sweep.tiltMm[0], 2);
    expect(fit.tiltMm.along90).toBeCloseTo(sweep.tiltMm[1], 2);
    expect(fit.standMm.along0).toBeCloseTo(sweep.standMm[0], 2);
    expect(fit.standMm.along90).toBeCloseTo(sweep.standMm[1], 2);
    expect(fit.offsetMm).toBeCloseTo(sweep.offsetMm, 2);
    sweep.waves.forEach(([cosMm, sinMm], k) => {
      expect(fit.waveCosMm[k + 1]).toBeCloseTo(cosMm, 2);
      expect(fit.waveSinMm[k + 1]).toBeCloseTo(sinMm, 2);
    });
  });

  it('points at the high spot: a + ib is where the edge stands highest on the wheel', () => {
    const sweep = simulateSweep(3, PLAIN);
    const fit = fitted(sweep.observations);
    const truth = (Math.atan2(sweep.tiltMm[1], sweep.tiltMm[0]) * 180) / Math.PI;
    const apart = ((vectorAngleDeg(fit.tiltMm) - truth + 540) % 360) - 180;
    expect(Math.abs(apart)).toBeLessThan(2);
    // The frames in which that spot stands under the sight are the high ones.
    const { turnDeg, heightMm } = sweep.observations;
    const heights = (offDeg: number): number => {
      let sum = 0;
      let count = 0;
      turnDeg.forEach((turn, f) => {
        const beta = -turn - truth - offDeg;
        const y = heightMm[f * AZIMUTHS + 10];
        if (Math.cos((beta * Math.PI) / 180) > 0.9 && y === y) {
          sum += y;
          count++;
        }
      });
      return sum / count;
    };
    expect(heights(0) - heights(180)).toBeGreaterThan(10);
  });

  it('takes the effect of turning out: a fast turn has the still wheel’s rise', () => {
    const fast = { ...PLAIN, ...STILL, periodS: 6, durationS: 16, riseMm: 10 };
    const sweep = simulateSweep(4, fast);
    const right = fitted(sweep.observations, { spinRatio: 1.7, spinRatioSd: 0 });
    const none = fitted(sweep.observations, { spinRatio: 1, spinRatioSd: 0 });
    expect(Math.abs(vectorAmount(right.tiltMm) - 10)).toBeLessThan(0.03);
    // At 30°/s and 6 s the reduction is 17 %: without it the fit must be far off.
    expect(vectorAmount(none.tiltMm)).toBeLessThan(9.5);
  });

  it('finds the swing', () => {
    const sweep = simulateSweep(5, { ...PLAIN, kickMm: 0.8 });
    const { rocking } = fitted(sweep.observations);
    expect(rocking.frequencyHz / sweep.frequencyHz).toBeGreaterThan(0.97);
    expect(rocking.frequencyHz / sweep.frequencyHz).toBeLessThan(1.03);
    expect(rocking.rmsMm / sweep.rockingRmsMm).toBeCloseTo(1, 1);
    expect(rocking.evidence).toBeGreaterThan(5 * SWING_EVIDENCE);
  });

  it('gives each frame’s rocking, and leaves only noise', () => {
    const sweep = simulateSweep(6, { ...PLAIN, kickMm: 0.8, missingShare: 0, gaps: 0 });
    const fit = fitted(sweep.observations);
    let apart = 0;
    sweep.rockingMm.forEach((x, k) => (apart += (fit.rockingMm[k] - x) ** 2));
    const rms = Math.sqrt(apart / sweep.rockingMm.length);
    expect(rms).toBeLessThan(0.2 * sweep.rockingRmsMm);
    const residual = Math.sqrt(
      fit.residualMm.reduce((s, r) => s + r * r, 0) / fit.residualMm.length,
    );
    // Noise 0.15 and 0.03 mm together; a share of the 'running' noise is taken for tilt.
    expect(residual).toBeGreaterThan(0.12);
    expect(residual).toBeLessThan(0.16);
  });

  it('sees no swing where there is none', () => {
    const sweep = simulateSweep(8, { ...PLAIN, ...STILL, noiseMm: 0.15, riseMm: 0 });
    const fit = fitted(sweep.observations);
    expect(fit.rocking.evidence).toBeLessThan(SWING_EVIDENCE);
    expect(fit.rocking.rmsMm).toBeLessThan(0.1);
  });
});

describe('fitTilt keeps its symmetries', () => {
  const sweep = simulateSweep(12, PLAIN);
  const fit = fitted(sweep.observations);

  it('turns with the valve’s mark', () => {
    const moved = copy(sweep.observations);
    moved.turnDeg.forEach((t, f) => (moved.turnDeg[f] = t + 50));
    const turned = fitted(moved);
    const apart = ((vectorAngleDeg(turned.tiltMm) - vectorAngleDeg(fit.tiltMm) + 720) % 360) - 310;
    expect(apart).toBeCloseTo(0, 2);
    expect(vectorAmount(turned.tiltMm)).toBeCloseTo(vectorAmount(fit.tiltMm), 3);
    expect(turned.standMm.along0).toBeCloseTo(fit.standMm.along0, 3);
  });

  it('mirrors with azimuth and turn', () => {
    const { azimuthsDeg, turnDeg } = sweep.observations;
    const mirrored = fitted({
      ...sweep.observations,
      azimuthsDeg: azimuthsDeg.map((a) => -a),
      turnDeg: turnDeg.map((t) => -t),
    });
    expect(mirrored.tiltMm.along0).toBeCloseTo(fit.tiltMm.along0, 3);
    expect(mirrored.tiltMm.along90).toBeCloseTo(-fit.tiltMm.along90, 3);
    expect(mirrored.standMm.along90).toBeCloseTo(-fit.standMm.along90, 3);
  });

  it('moves its offset alone when all heights move', () => {
    const moved = copy(sweep.observations);
    moved.heightMm.forEach((y, k) => (moved.heightMm[k] = y + 3));
    const lifted = fitted(moved);
    expect(lifted.offsetMm - fit.offsetMm).toBeCloseTo(3, 3);
    expect(lifted.tiltMm.along0).toBeCloseTo(fit.tiltMm.along0, 3);
  });
});

describe('fitTilt and what goes wrong in a sweep', () => {
  const conditions = { ...PLAIN, frameRateHz: 30, missingShare: 0 };
  const sweep = simulateSweep(21, conditions);
  const clean = fitted(sweep.observations);
  const during = (o: SweepObservations, fromS: number, forS: number): number[] =>
    [...o.timeS.keys()].filter((f) => o.timeS[f] > fromS && o.timeS[f] < fromS + forS);
  const distance = (fit: TiltFit): number =>
    Math.hypot(fit.tiltMm.along0 - clean.tiltMm.along0, fit.tiltMm.along90 - clean.tiltMm.along90);
  const sd = Math.sqrt(clean.tiltCovarianceMm2[0][0]);

  it('a hand over half of the tread for 1.5 s', () => {
    const o = copy(sweep.observations);
    const gaussian = gaussianFrom(seededRandom(1));
    for (const f of during(o, 9, 1.5)) {
      for (let a = 11; a < AZIMUTHS; a++) o.heightMm[f * AZIMUTHS + a] += 5 + 2 * gaussian();
    }
    const fit = fitted(o);
    expect(distance(fit)).toBeLessThan(2 * sd);
    expect(fit.counts.effectiveFrames).toBeLessThan(clean.counts.effectiveFrames - 20);
  });

  it('the edge lost to the next groove for 1.5 s', () => {
    const o = copy(sweep.observations);
    const wrong = during(o, 9, 1.5);
    for (const f of wrong) {
      for (let a = 0; a < AZIMUTHS; a++) o.heightMm[f * AZIMUTHS + a] += 8;
    }
    const fit = fitted(o);
    expect(distance(fit)).toBeLessThan(2 * sd);
    for (const f of wrong.slice(5, -5)) expect(fit.frameWeight[f]).toBeLessThan(0.05);
  });

  it('single wild frames and wild heights', () => {
    const o = copy(sweep.observations);
    o.timeS.forEach((_, f) => {
      o.heightMm[f * AZIMUTHS + (f % AZIMUTHS)] += 10;
      if (f % 37 === 5) for (let a = 0; a < AZIMUTHS; a++) o.heightMm[f * AZIMUTHS + a] += 6;
    });
    expect(distance(fitted(o))).toBeLessThan(2 * sd);
  });

  it('columns that are never seen, frames that see nothing, turns that are not known', () => {
    const o = copy(sweep.observations);
    o.timeS.forEach((_, f) => {
      for (const a of [0, 1, 10]) o.heightMm[f * AZIMUTHS + a] = NaN;
      if (f % 10 === 0) o.heightMm.fill(NaN, f * AZIMUTHS, (f + 1) * AZIMUTHS);
    });
    o.turnDeg[100] = NaN;
    o.standardErrorMm[55] = 0;
    const fit = fitted(o);
    expect(distance(fit)).toBeLessThan(3 * sd);
    expect(fit.covarianceMm2.every(Number.isFinite)).toBe(true);
    expect(fit.azimuthBiasMm.every(Number.isFinite)).toBe(true);
    expect(fit.frameWeight.every(Number.isFinite)).toBe(true);
    fit.residualMm.forEach((r, k) => {
      const seen = Number.isFinite(o.heightMm[k]) && o.standardErrorMm[k] > 0;
      const known = Number.isFinite(o.turnDeg[Math.floor(k / AZIMUTHS)]);
      expect(Number.isFinite(r)).toBe(seen && known);
    });
  });

  it('heights without any noise or rocking do no harm', () => {
    const o = copy(
      simulateSweep(2, { ...PLAIN, ...STILL, noiseMm: 0, riseMm: 0, standMm: 0 }).observations,
    );
    o.heightMm.fill(-4);
    o.standardErrorMm.fill(0.1);
    const fit = fitted(o);
    expect(fit.offsetMm).toBeCloseTo(-4, 3);
    expect(vectorAmount(fit.tiltMm)).toBeLessThan(1e-3);
    expect(fit.covarianceMm2.every(Number.isFinite)).toBe(true);
  });
});
