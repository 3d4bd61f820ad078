import { describe, expect, it } from 'vitest';

import type { SweepObservations } from '../../src/contract/observations.ts';
import { fitTilt } from '../../src/measure/fit/fitTilt.ts';
import { simulateSweep } from '../pipeline/simulatedSweep.ts';
import { AZIMUTHS, copy, PLAIN } from './fitTiltSweeps.ts';

describe('fitTilt refuses', () => {
  const code = (o: SweepObservations): string => {
    const fit = fitTilt(o);
    return fit.ok ? 'ok' : fit.failure.code;
  };

  it('a turn that is not one', () => {
    expect(code(simulateSweep(1, { ...PLAIN, turnedDeg: 250 }).observations)).toBe(
      'turn-incomplete',
    );
    expect(code(simulateSweep(1, { ...PLAIN, turnedDeg: 0 }).observations)).toBe('turn-incomplete');
  });

  it('a turn with a third of it unseen', () => {
    const o = copy(simulateSweep(1, { ...PLAIN, turnedDeg: 375 }).observations);
    const first = o.turnDeg[0];
    o.turnDeg.forEach((t, f) => {
      if (t > first + 120 && t < first + 250)
        o.heightMm.fill(NaN, f * AZIMUTHS, (f + 1) * AZIMUTHS);
    });
    expect(code(o)).toBe('turn-incomplete');
  });

  it('too few frames, or too few heights in them', () => {
    const o = copy(simulateSweep(1, PLAIN).observations);
    o.heightMm.fill(NaN, 50 * AZIMUTHS);
    expect(code(o)).toBe('too-few-frames');
    const thin = copy(simulateSweep(1, PLAIN).observations);
    thin.heightMm.forEach((_, k) => {
      if (k % AZIMUTHS > 3) thin.heightMm[k] = NaN;
    });
    expect(code(thin)).toBe('too-few-frames');
    expect(
      code({
        ...o,
        timeS: new Float64Array(0),
        turnDeg: new Float64Array(0),
        heightMm: new Float32Array(0),
        standardErrorMm: new Float32Array(0),
      }),
    ).toBe('too-few-frames');
  });

  it('rocking that no camera follows', () => {
    const wild = simulateSweep(9, { ...PLAIN, kickMm: 14, kicksPerS: 1 });
    expect(code(wild.observations)).toBe('rocking-too-strong');
  });

  it('misuse, by throwing', () => {
    const o = simulateSweep(1, PLAIN).observations;
    expect(() => fitTilt({ ...o, turnDeg: o.turnDeg.slice(1) })).toThrow(RangeError);
    expect(() => fitTilt({ ...o, heightMm: o.heightMm.slice(1) })).toThrow(RangeError);
    expect(() => fitTilt({ ...o, timeS: o.timeS.toReversed() })).toThrow(RangeError);
    expect(() => fitTilt({ ...o, azimuthBiasSdMm: -1 })).toThrow(RangeError);
    expect(() => fitTilt(o, { rockingPeriod: { periodS: 0, logSd: 1 } })).toThrow(RangeError);
  });
});
