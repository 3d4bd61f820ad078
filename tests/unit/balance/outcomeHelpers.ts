import fc from 'fast-check';

import type { Failure, Outcome } from '../../../src/contract/outcome.ts';

/** The value of an outcome that must be there; the failure is shown when it is not. */
export function valueOf<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`failed: ${JSON.stringify(outcome.failure)}`);
  return outcome.value;
}

/** The failure of an outcome that must not be there. */
export function failureOf<Code extends string>(outcome: Outcome<unknown, Code>): Failure<Code> {
  if (outcome.ok) throw new Error(`unexpected value: ${JSON.stringify(outcome.value)}`);
  return outcome.failure;
}

/** Seeded uniform numbers in [0, 1) (mulberry32), so that a simulation is the same every run. */
export function seededUniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Standard normal numbers from a seeded uniform source (Box–Muller). */
export function seededNormal(seed: number): () => number {
  const uniform = seededUniform(seed);
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

/**
 * Numbers even over a range, to a millionth of it; fast-check's own doubles are even over bit
 * patterns, most of them tiny.
 */
export function evenNumber(low: number, high: number): fc.Arbitrary<number> {
  return fc.integer({ min: 0, max: 1_000_000 }).map((i) => low + ((high - low) * i) / 1_000_000);
}
