import { describe, expect, it } from 'vitest';

import { stepMotion, turningTilt } from '../../src/measure/fit/rockingMotion.ts';

const RATE = 1.4;
const DAMPING = 0.03;

/** z̈ + (2ζω₀ − i·gyro)·ż + ω₀²·z = force, complex, by the classical Runge–Kutta rule. */
function integrate(
  start: readonly number[],
  gyro: number,
  spanS: number,
  force: (t: number) => readonly [number, number] = () => [0, 0],
): number[] {
  const steps = Math.ceil(spanS * 2000);
  const h = spanS / steps;
  const slope = (s: readonly number[], t: number): number[] => {
    const [fx, fy] = force(t);
    return [
      s[2],
      s[3],
      fx - 2 * DAMPING * RATE * s[2] - gyro * s[3] - RATE * RATE * s[0],
      fy - 2 * DAMPING * RATE * s[3] + gyro * s[2] - RATE * RATE * s[1],
    ];
  };
  let s = [...start];
  for (let k = 0; k < steps; k++) {
    const t = k * h;
    const k1 = slope(s, t);
    const k2 = slope(
      s.map((x, i) => x + (h / 2) * k1[i]),
      t + h / 2,
    );
    const k3 = slope(
      s.map((x, i) => x + (h / 2) * k2[i]),
      t + h / 2,
    );
    const k4 = slope(
      s.map((x, i) => x + h * k3[i]),
      t + h,
    );
    s = s.map((x, i) => x + (h / 6) * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]));
  }
  return s;
}

describe('stepMotion', () => {
  it.each([
    [0.1, 0],
    [0.1, 0.5],
    [2.3, -0.7],
  ])('moves as the equation does over %d s at gyro %d', (stepS, gyro) => {
    const m = new Float64Array(12);
    stepMotion(RATE, DAMPING, gyro, stepS, m);
    const [z, w] = [
      [0.7, -0.4],
      [1.1, 0.3],
    ];
    const end = integrate([...z, ...w], gyro, stepS);
    const times = (at: number, v: readonly number[]) => [
      m[at] * v[0] - m[at + 1] * v[1],
      m[at] * v[1] + m[at + 1] * v[0],
    ];
    for (let axis = 0; axis < 2; axis++) {
      expect(times(0, z)[axis] + times(2, w)[axis]).toBeCloseTo(end[axis], 9);
      expect(times(4, z)[axis] + times(6, w)[axis]).toBeCloseTo(end[2 + axis], 9);
    }
  });

  it('brings in the noise of a unit white force', () => {
    const [stepS, gyro] = [1.7, 0.6];
    const m = new Float64Array(12);
    stepMotion(RATE, DAMPING, gyro, stepS, m);
    // ∫ g·gᴴ over the step, g the answer to a unit push, by the midpoint rule.
    const pieces = 400;
    let [zz, re, im, vv] = [0, 0, 0, 0];
    for (let k = 0; k < pieces; k++) {
      const g = integrate([0, 0, 1, 0], gyro, ((k + 0.5) / pieces) * stepS);
      zz += g[0] ** 2 + g[1] ** 2;
      vv += g[2] ** 2 + g[3] ** 2;
      re += g[0] * g[2] + g[1] * g[3];
      im += g[1] * g[2] - g[0] * g[3];
    }
    const h = stepS / pieces;
    expect(m[8]).toBeCloseTo(zz * h, 4);
    expect(m[9]).toBeCloseTo(re * h, 4);
    expect(m[10]).toBeCloseTo(im * h, 4);
    expect(m[11]).toBeCloseTo(vv * h, 4);
  });
});

describe('turningTilt', () => {
  const chain = (timeS: Float64Array, turnRad: Float64Array, spin: number): Float64Array => {
    const transitions = new Float64Array(timeS.length * 12);
    const step = new Float64Array(12);
    for (let k = 1; k < timeS.length; k++) {
      const stepS = timeS[k] - timeS[k - 1];
      stepMotion(RATE, DAMPING, (spin * (turnRad[k] - turnRad[k - 1])) / stepS, stepS, step);
      transitions.set(step, k * 12);
    }
    return turningTilt(timeS, turnRad, spin, RATE, DAMPING, transitions, 12);
  };

  it('in a steady turn is smaller by 1/(1 + (s−1)(Ω/ω₀)²) and lags by 2ζΩ/ω₀', () => {
    const timeS = Float64Array.from({ length: 50 }, (_, k) => k * 0.1);
    const omega = 0.3;
    const out = chain(
      timeS,
      timeS.map((t) => omega * t),
      1.7,
    );
    const x = omega / RATE;
    const last = 49;
    const size = Math.hypot(out[4 * last], out[4 * last + 1]);
    const lag = omega * timeS[last] - Math.atan2(out[4 * last + 1], out[4 * last]);
    expect(size).toBeCloseTo(1 / (1 + 0.7 * x * x), 3);
    expect(lag).toBeCloseTo(2 * DAMPING * x, 3);
  });

  it('swings after a sudden start as the equation does', () => {
    const omega = 0.5;
    const spin = 1.7;
    const turnAt = (t: number): number => (t < 1 ? 0 : omega * (t - 1));
    const timeS = Float64Array.from({ length: 41 }, (_, k) => k * 0.1);
    const out = chain(timeS, timeS.map(turnAt), spin);
    // At rest for the first second; then the force turns and the spin couples the axes.
    const end = integrate([1, 0, 0, 0], spin * omega, 3, (t) => [
      RATE * RATE * Math.cos(omega * t),
      RATE * RATE * Math.sin(omega * t),
    ]);
    for (let i = 0; i < 4; i++) expect(out[4 * 40 + i]).toBeCloseTo(end[i], 9);
  });
});
