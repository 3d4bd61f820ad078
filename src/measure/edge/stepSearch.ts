import { BAND_ROWS, zOfRowMm } from '../band/treadBand.ts';
import type { SlicedWork } from '../pace/slicedWork.ts';
import type { StackPeak } from './edgeChoice.ts';
import type { Lean, LeanBasis } from './leanFit.ts';
import { stackedSteps, type StepStack } from './stepStack.ts';

/** Steps of luma in the blocks' profiles, and the lean at which they lie over each other. */

/** Leans toward the sight that are tried without a pause: as long as measuring a picture. */
const LEANS_A_STEP_MM = 10;
/** Rows on either side whose difference is the step: 2 mm. */
const STEP_ROWS = 4;
/** Less than this mean step is noise. */
const MIN_STRENGTH = 0.2;

/** Leans that are tried: rises of the rim within a ring, mm. */
export interface LeanSearch {
  readonly fromMm: number;
  readonly toMm: number;
  readonly stepMm: number;
}

/** The lean, with its rise within a ring, whose stack of steps has the most energy. */
export function* bestLean(
  steps: StepStack,
  basis: LeanBasis,
  radiusMm: number,
  { fromMm, toMm, stepMm }: LeanSearch,
): SlicedWork<{ lean: Lean; energy: number }> {
  let best: Lean = { liftMm: 0, toward: 0, across: 0 };
  let most = -1;
  for (let t = -toMm; t <= toMm; t += stepMm) {
    if (t % LEANS_A_STEP_MM === 0) yield;
    for (let a = -toMm; a <= toMm; a += stepMm) {
      const squared = t * t + a * a;
      if (squared > toMm * toMm || squared < fromMm * fromMm) continue;
      const lean: Lean = { liftMm: 0, toward: t / radiusMm, across: a / radiusMm };
      const stack = stackedSteps(steps, basis, lean);
      let energy = 0;
      for (let r = 0; r < stack.length; r++) energy += stack[r] * stack[r];
      if (energy > most) {
        most = energy;
        best = lean;
      }
    }
  }
  return { lean: best, energy: most };
}

/** The falls of luma in a stack that are more than noise. */
export function stackPeaks(stack: Float32Array): StackPeak[] {
  const peaks: StackPeak[] = [];
  for (let r = 1; r < BAND_ROWS - 1; r++) {
    if (stack[r] >= MIN_STRENGTH && stack[r] >= stack[r - 1] && stack[r] > stack[r + 1]) {
      // A step between rows r−1 and r peaks at r; its place is the border between them.
      peaks.push({ heightMm: zOfRowMm(r - 0.5), strength: stack[r] });
    }
  }
  return peaks;
}

/**
 * Fall of luma downward across each row, over the profile's own standard deviation; blocks × rows,
 * NaN where unknown.
 */
export function stepScores(profiles: Float32Array, blocks: number): Float32Array {
  const out = new Float32Array(blocks * BAND_ROWS).fill(NaN);
  for (let b = 0; b < blocks; b++) {
    const start = b * BAND_ROWS;
    const sd = deviation(profiles.subarray(start, start + BAND_ROWS));
    if (!(sd > 0)) continue;
    for (let r = STEP_ROWS; r < BAND_ROWS - STEP_ROWS; r++) {
      const above = knownMean(profiles, start + r - STEP_ROWS, start + r);
      const below = knownMean(profiles, start + r, start + r + STEP_ROWS);
      const step = (above - below) / sd;
      // Clipped: one bright tape must not draw the edge to itself.
      out[start + r] = Math.max(-2, Math.min(2, step));
    }
  }
  return out;
}

/** Mean of the known values in [from, to), NaN when fewer than half are known. */
function knownMean(values: Float32Array, from: number, to: number): number {
  let sum = 0;
  let n = 0;
  for (let i = from; i < to; i++) {
    if (values[i] !== values[i]) continue;
    sum += values[i];
    n++;
  }
  return n * 2 >= to - from ? sum / n : NaN;
}

function deviation(values: Float32Array): number {
  let n = 0;
  let sum = 0;
  let squares = 0;
  for (const value of values) {
    if (value !== value) continue;
    n++;
    sum += value;
    squares += value * value;
  }
  return n > 10 ? Math.sqrt(Math.max(0, squares / n - (sum / n) ** 2)) : 0;
}
