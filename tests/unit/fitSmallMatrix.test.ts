import { describe, expect, it } from 'vitest';

import { minimise } from '../../src/measure/fit/minimise.ts';
import { choleskyInPlace, solveSymmetric } from '../../src/measure/fit/smallMatrix.ts';
import { solveLeastSquares } from '../../src/measure/fit/leastSquares.ts';
import { eigenOfSymmetric } from '../../src/measure/fit/symmetricEigen.ts';

describe('solveSymmetric', () => {
  it('solves and inverts unknowns of very different size', () => {
    // diag(1e-6, 1, 1e6)·K·diag(…), K with 0.5 off the diagonal.
    const d = [1e-6, 1, 1e6];
    const a = Float64Array.from({ length: 9 }, (_, k) => {
      const [i, j] = [Math.floor(k / 3), k % 3];
      return d[i] * d[j] * (i === j ? 1 : 0.5);
    });
    const x = [3e6, -2, 5e-6];
    const b = Float64Array.from({ length: 3 }, (_, i) =>
      x.reduce((s, v, j) => s + a[i * 3 + j] * v, 0),
    );
    const solved = solveSymmetric(a, b, 3);
    if (solved === null) throw new Error('not solved');
    x.forEach((v, i) => expect(solved.solution[i] / v).toBeCloseTo(1, 12));
    // det K = 0.5, and the scales multiply to 1.
    expect(solved.logDeterminant).toBeCloseTo(Math.log(0.5), 12);
    expect(solved.inverse[4]).toBeCloseTo(1.5, 12);
  });

  it('says when a matrix is singular, indefinite or not a number', () => {
    expect(solveSymmetric(new Float64Array([1, 1, 1, 1]), new Float64Array(2), 2)).toBeNull();
    expect(solveSymmetric(new Float64Array([1, 2, 2, 1]), new Float64Array(2), 2)).toBeNull();
    expect(choleskyInPlace(new Float64Array([NaN]), 1)).toBe(false);
    expect(() => solveSymmetric(new Float64Array(3), new Float64Array(2), 2)).toThrow(RangeError);
  });
});

describe('solveLeastSquares', () => {
  it('reports the rank and leaves out a column that repeats another', () => {
    const x = Float64Array.from([1, 2, 2, 1, 3, 3, 1, 5, 5, 1, 7, 7]);
    const y = Float64Array.from([5, 7, 11, 15]);
    const fit = solveLeastSquares(x, y, 4, 3);
    expect(fit.rank).toBe(2);
    expect(fit.coefficients[0]).toBeCloseTo(1, 10);
    expect(fit.coefficients[1] + fit.coefficients[2]).toBeCloseTo(2, 10);
    expect(fit.residualSumOfSquares).toBeLessThan(1e-20);
  });

  it('throws on lengths that do not agree and on values that are not finite', () => {
    expect(() => solveLeastSquares(new Float64Array(5), new Float64Array(2), 2, 2)).toThrow(
      RangeError,
    );
    expect(() => solveLeastSquares(new Float64Array([1, NaN]), new Float64Array(2), 2, 1)).toThrow(
      RangeError,
    );
  });
});

describe('eigenOfSymmetric', () => {
  it('takes a matrix apart so that it can be put together again', () => {
    const a = Float64Array.from([4, 1, -2, 1, 2, 0.5, -2, 0.5, 3]);
    const { values, vectors } = eigenOfSymmetric(a, 3);
    for (let i = 0; i < 3; i++) {
      for (let j = 0; j < 3; j++) {
        let sum = 0;
        let dot = 0;
        for (let k = 0; k < 3; k++) {
          sum += vectors[i * 3 + k] * values[k] * vectors[j * 3 + k];
          dot += vectors[k * 3 + i] * vectors[k * 3 + j];
        }
        expect(sum).toBeCloseTo(a[i * 3 + j], 12);
        expect(dot).toBeCloseTo(i === j ? 1 : 0, 12);
      }
    }
  });
});

describe('minimise', () => {
  it('goes down the bent valley of Rosenbrock 1960', () => {
    // Differences take steps h of a thousandth of these; being one-sided they shift the minimum by
    // up to h·f″/2 over the valley's own curvature: 3e-6·802/2/0.4 = 3e-3.
    const SMALL = Float64Array.from([3e-3, 3e-3]);
    const valley = (p: Float64Array) => (1 - p[0]) ** 2 + 100 * (p[1] - p[0] ** 2) ** 2;
    const found = minimise(valley, Float64Array.from([-1.2, 1]), SMALL, 1e-12, 400);
    expect(found.converged).toBe(true);
    expect(Math.abs(found.point[0] - 1)).toBeLessThan(3e-3);
    expect(Math.abs(found.point[1] - 1)).toBeLessThan(6e-3);
  });

  it('keeps out of where the function says no', () => {
    const walled = (p: Float64Array) => (p[0] < 0.5 ? Infinity : (p[0] - 0.6) ** 2);
    const found = minimise(walled, Float64Array.from([2]), Float64Array.from([1]), 1e-10, 50);
    expect(found.point[0]).toBeCloseTo(0.6, 2);
  });
});
