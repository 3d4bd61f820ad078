import { describe, expect, it } from 'vitest';

import { levenbergMarquardt } from '../../src/measure/fit/levenbergMarquardt.ts';

/**
 * Gander, Golub & Strebel, "Least-squares fitting of circles and ellipses", BIT 34 (1994): the six
 * points of their example. The paper's printed answer for the geometric fit is centre
 * (4.7398, 2.9835), radius 4.7142 (from memory); below it is checked against the condition of the
 * minimum itself as well, which needs no memory.
 */
const POINTS = [
  [1, 7],
  [2, 6],
  [5, 8],
  [7, 7],
  [9, 5],
  [3, 7],
] as const;

describe('circle of Gander, Golub & Strebel 1994', () => {
  const residuals = (p: Float64Array) =>
    POINTS.map(([x, y]) => Math.hypot(x - p[0], y - p[1]) - p[2]);
  const fit = levenbergMarquardt(residuals, [5.3794, 7.2532, 3.037]);
  if (!fit.ok) throw new Error(fit.failure.code);
  const [x, y, r] = fit.value.parameters;

  it('has the printed centre and radius', () => {
    expect(x).toBeCloseTo(4.7398, 4);
    expect(y).toBeCloseTo(2.9835, 4);
    expect(r).toBeCloseTo(4.7142, 4);
  });

  it('has no slope left: gradient of the summed squares is zero', () => {
    const gradient = [0, 0, 0];
    for (const [px, py] of POINTS) {
      const d = Math.hypot(px - x, py - y);
      gradient[0] += ((x - px) / d) * (d - r);
      gradient[1] += ((y - py) / d) * (d - r);
      gradient[2] -= d - r;
    }
    gradient.forEach((g) => expect(Math.abs(g)).toBeLessThan(1e-7));
  });

  it('moves and turns with the points', () => {
    const angle = 0.9;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const moved = POINTS.map(([px, py]) => [c * px - s * py + 100, s * px + c * py - 40] as const);
    const turned = levenbergMarquardt(
      (p) => moved.map(([px, py]) => Math.hypot(px - p[0], py - p[1]) - p[2]),
      [97, -32, 3],
    );
    if (!turned.ok) throw new Error(turned.failure.code);
    expect(turned.value.parameters[0]).toBeCloseTo(c * x - s * y + 100, 6);
    expect(turned.value.parameters[1]).toBeCloseTo(s * x + c * y - 40, 6);
    expect(turned.value.parameters[2]).toBeCloseTo(r, 6);
  });
});
