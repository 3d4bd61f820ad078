import fc from 'fast-check';
import { expect, it } from 'vitest';
import { BALANCE_FAILURES, type BalanceOutcome } from '../../../src/balance/failures.ts';
import type { PlaneCovariance } from '../../../src/quantities/vector.ts';
import { evenNumber } from './outcomeHelpers.ts';

/** Any number of the type, the nasty ones and plain ones often. */
export const number = fc.oneof(
  { weight: 1, arbitrary: fc.double() },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      0,
      -0,
      1e-300,
      5e-324,
      1e-9,
      1e9,
      -1e9,
      1e18,
      Number.NaN,
      Infinity,
      -Infinity,
      360,
      180,
      90,
    ),
  },
  { weight: 9, arbitrary: evenNumber(0, 500) },
  { weight: 5, arbitrary: evenNumber(0, 1) },
);
export const vector = fc.record({ along0: number, along90: number });
const covariance = fc.oneof(
  fc.tuple(number, number, number).map(([a, b, d]): PlaneCovariance => [
    [a, b],
    [b, d],
  ]),
  fc
    .tuple(evenNumber(0, 9), evenNumber(-1, 1), evenNumber(0, 9))
    .map(([a, r, d]): PlaneCovariance => [
      [a * a, r * a * d],
      [r * a * d, d * d],
    ]),
);
export const rise = fc.record({ riseMm: vector, covarianceMm2: covariance });
export const unbalance = fc.record({ unbalanceGmm: vector, covarianceGmm2: covariance });
export const weight = fc.record({ massG: number, radiusMm: number, angleDeg: number });
export const poissonRatio = fc.oneof(
  { weight: 5, arbitrary: evenNumber(0, 0.5) },
  { weight: 1, arbitrary: number },
);
export const elastic = fc.record({ elasticModulusMpa: number, poissonRatio });
export const arc = fc.record({ fromDeg: number, toDeg: number });
export const text = fc.oneof(
  fc.string(),
  fc.stringMatching(/^[0-9xRLTPC/., :"°¼½¾-]{0,14}$/),
  fc.stringMatching(/^(LT|P)?\d{2,3}\/\d{2}R\d{2}$/),
);
export const list = <T>(of: fc.Arbitrary<T>) => fc.array(of, { maxLength: 5 });
export const named = <T extends string>(...names: T[]) =>
  fc.record(
    Object.fromEntries(names.map((name) => [name, number])) as Record<T, typeof number>,
  ) as unknown as fc.Arbitrary<Record<T, number>>;

/** Paths of all numbers in a value that are not finite, `except` where infinity has a meaning. */
function notFinite(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path}=${value}`];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}.${key}`));
}

export function total<A>(
  name: string,
  inputs: fc.Arbitrary<A>,
  call: (input: A) => BalanceOutcome<unknown>,
  runs = 400,
): void {
  it(name, () => {
    let values = 0;
    fc.assert(
      fc.property(inputs, (input) => {
        const outcome = call(input);
        if (outcome.ok) {
          values += 1;
          expect(notFinite(outcome.value)).toEqual([]);
        } else expect(Object.keys(BALANCE_FAILURES)).toContain(outcome.failure.code);
      }),
      { numRuns: runs, seed: 20 },
    );
    // A generator that never gets past the door would prove nothing.
    expect(values).toBeGreaterThan(0);
  });
}
