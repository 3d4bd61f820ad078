import { solveSymmetric } from './smallMatrix.ts';

/** Sums of a plain least-squares fit of a few terms, such as a mean and a wave once round. */
export interface TermFit {
  add(terms: readonly number[], value: number): void;
  /** The terms' factors; null where what was added does not tell them apart. */
  solve(): Float64Array | null;
}

export function createTermFit(count: number): TermFit {
  const normal = new Float64Array(count * count);
  const right = new Float64Array(count);
  return {
    add(terms, value) {
      for (let i = 0; i < count; i++) {
        right[i] += terms[i] * value;
        for (let k = 0; k < count; k++) normal[i * count + k] += terms[i] * terms[k];
      }
    },
    solve: () => solveSymmetric(normal, right, count)?.solution ?? null,
  };
}
