import { describe, expect, it } from 'vitest';

import { levenbergMarquardt } from '../../src/measure/fit/levenbergMarquardt.ts';

/** Small seeded generator (mulberry32) so that a failure can be repeated. */
function seeded(seed: number): () => number {
  let s = seed >>> 0;
  return () => {
    s = (s + 0x6d2b79f5) >>> 0;
    let t = Math.imul(s ^ (s >>> 15), 1 | s);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function gaussian(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

const decayAt = (p: ArrayLike<number>, t: number): number => p[0] * Math.exp(-p[1] * t) + p[2];

describe('levenbergMarquardt', () => {
  it('finds the parameters of noise-free data', () => {
    const truth = [3, 0.7, -0.5];
    const residuals = (p: Float64Array) =>
      Array.from({ length: 40 }, (_, i) => decayAt(p, i / 8) - decayAt(truth, i / 8));
    const fit = levenbergMarquardt(residuals, [1, 0.2, 0]);
    if (!fit.ok) throw new Error(fit.failure.code);
    truth.forEach((value, j) => expect(fit.value.parameters[j]).toBeCloseTo(value, 8));
    expect(fit.value.residualRms).toBeLessThan(1e-8);
  });

  it('states a covariance that matches the spread over many noisy repeats', () => {
    const truth = [3, 0.7, -0.5];
    const random = seeded(11);
    const repeats = 400;
    let sumOfSquares = 0;
    let stated = 0;
    for (let k = 0; k < repeats; k++) {
      const data = Array.from(
        { length: 60 },
        (_, i) => decayAt(truth, i / 10) + 0.05 * gaussian(random),
      );
      const fit = levenbergMarquardt(
        (p) => data.map((y, i) => decayAt(p, i / 10) - y),
        [1, 0.3, 0],
      );
      if (!fit.ok) throw new Error(fit.failure.code);
      sumOfSquares += (fit.value.parameters[1] - truth[1]) ** 2;
      stated += fit.value.covariance[4];
    }
    // The spread of a variance over 400 repeats is √(2/400) = 7 %; three of them are 21 %.
    expect(sumOfSquares / stated).toBeGreaterThan(0.79);
    expect(sumOfSquares / stated).toBeLessThan(1.21);
  });

  it('is not led astray by a fifth of wild values when the loss is robust', () => {
    const random = seeded(5);
    const data = Array.from({ length: 100 }, (_, i) =>
      i % 5 === 0 ? 30 : 2 + 0.5 * i * 0.1 + 0.02 * gaussian(random),
    );
    const residuals = (p: Float64Array) => data.map((y, i) => p[0] + p[1] * i * 0.1 - y);
    const robust = levenbergMarquardt(residuals, [0, 0], {
      loss: { kind: 'cauchy' },
      residualSd: 0.02,
    });
    const plain = levenbergMarquardt(residuals, [0, 0]);
    if (!robust.ok || !plain.ok) throw new Error('no fit');
    expect(robust.value.parameters[0]).toBeCloseTo(2, 1);
    expect(robust.value.parameters[1]).toBeCloseTo(0.5, 2);
    expect(Math.abs(plain.value.parameters[0] - 2)).toBeGreaterThan(1);
    expect(robust.value.weights[0]).toBeLessThan(1e-4);
  });

  it('weighs a prior against the data as their standard deviations say', () => {
    // One unknown seen once with sd 1 and believed with sd 1: the answer is half way, sd 1/√2.
    const fit = levenbergMarquardt((p) => [p[0] - 4], [0], {
      priors: [{ index: 0, mean: 0, sd: 1 }],
      residualSdIs: 'given',
    });
    if (!fit.ok) throw new Error(fit.failure.code);
    expect(fit.value.parameters[0]).toBeCloseTo(2, 9);
    expect(fit.value.covariance[0]).toBeCloseTo(0.5, 9);
  });

  it('names its failures', () => {
    const notFinite = levenbergMarquardt(() => [NaN], [0]);
    expect(notFinite.ok ? '' : notFinite.failure.code).toBe('start-not-finite');
    const few = levenbergMarquardt((p) => [p[0] + p[1]], [0, 0]);
    expect(few.ok ? '' : few.failure.code).toBe('too-few-residuals');
    const twins = levenbergMarquardt(
      (p) => [p[0] + p[1] - 1, p[0] + p[1] - 2, p[0] + p[1]],
      [0, 0],
    );
    expect(twins.ok ? '' : twins.failure.code).toBe('parameters-not-determined');
    const slow = levenbergMarquardt((p) => [Math.exp(-p[0])], [0], { maxIterations: 2 });
    expect(slow.ok ? '' : slow.failure.code).toBe('no-convergence');
  });

  it('throws when it is misused', () => {
    let calls = 0;
    expect(() => levenbergMarquardt(() => new Array(2 + calls++).fill(1), [0])).toThrow(RangeError);
    expect(() => levenbergMarquardt((p) => [p[0]], [0], { residualSd: 0 })).toThrow(RangeError);
    const priors = [{ index: 3, mean: 0, sd: 1 }];
    expect(() => levenbergMarquardt((p) => [p[0]], [0], { priors })).toThrow(RangeError);
  });
});
