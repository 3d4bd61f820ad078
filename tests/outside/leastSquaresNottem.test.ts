import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

import { solveLeastSquares } from '../../src/measure/fit/leastSquares.ts';
import { solveSymmetric } from '../../src/measure/fit/smallMatrix.ts';

/** R's series nottem fitted by R's lm (data/makeNottem.R): one harmonic, as a wheel's wave is. */
const NOTTEM = JSON.parse(readFileSync(new URL('data/nottem.json', import.meta.url), 'utf8')) as {
  readonly y: readonly number[];
  readonly coefficients: readonly number[];
  readonly residualVariance: number;
  readonly covariance: readonly number[];
};

const m = NOTTEM.y.length;
const x = new Float64Array(m * 3);
for (let i = 0; i < m; i++) {
  const angle = (2 * Math.PI * i) / 12;
  x.set([1, Math.cos(angle), Math.sin(angle)], i * 3);
}

describe('yearly wave of nottem against R lm', () => {
  const fit = solveLeastSquares(x, Float64Array.from(NOTTEM.y), m, 3);
  const variance = fit.residualSumOfSquares / (m - 3);

  it('agrees in mean, cosine and sine', () => {
    NOTTEM.coefficients.forEach((b, j) => {
      expect(Math.abs(fit.coefficients[j] - b)).toBeLessThan(1e-11);
    });
  });

  it('agrees in residual variance and covariance', () => {
    expect(Math.abs(variance / NOTTEM.residualVariance - 1)).toBeLessThan(1e-12);
    NOTTEM.covariance.forEach((c, k) => {
      expect(Math.abs(variance * fit.unscaledCovariance[k] - c)).toBeLessThan(1e-14);
    });
  });

  it('agrees by normal equations too, which the fit of sweeps uses', () => {
    const normal = new Float64Array(9);
    const right = new Float64Array(3);
    for (let i = 0; i < m; i++) {
      for (let j = 0; j < 3; j++) {
        right[j] += x[i * 3 + j] * NOTTEM.y[i];
        for (let k = 0; k < 3; k++) normal[j * 3 + k] += x[i * 3 + j] * x[i * 3 + k];
      }
    }
    const solved = solveSymmetric(normal, right, 3);
    NOTTEM.coefficients.forEach((b, j) => {
      expect(Math.abs((solved?.solution[j] ?? NaN) - b)).toBeLessThan(1e-10);
    });
  });
});
