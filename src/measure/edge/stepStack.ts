import { BAND_ROWS, Z_STEP_MM } from '../band/treadBand.ts';
import { riseAt, type Lean, type LeanBasis } from './leanFit.ts';

/** Rows of the stack that at least half of the blocks must show. */
const MIN_STACK_SHARE = 0.5;

/**
 * The blocks' steps, to be laid over each other at many leans: unknown ones stand as 0 beside a mark,
 * so that the sums need not ask.
 */
export interface StepStack {
  readonly blocks: number;
  /** Blocks × rows; 0 where unknown. */
  readonly steps: Float32Array;
  readonly known: Uint8Array;
  /** Sum and number of the steps at each height, then their mean: work of one lean at a time. */
  readonly mean: Float32Array;
  readonly count: Uint8Array;
}

/** `steps`: blocks × rows, NaN where unknown. */
export function createStepStack(steps: Float32Array, blocks: number): StepStack {
  return {
    blocks,
    steps: steps.map((step) => (step === step ? step : 0)),
    known: Uint8Array.from(steps, (step) => (step === step ? 1 : 0)),
    mean: new Float32Array(BAND_ROWS),
    count: new Uint8Array(BAND_ROWS),
  };
}

/**
 * Mean step over the blocks at each height, a lean taken out; 0 where too few blocks show it. Holds
 * until the stack is laid for another lean.
 */
export function stackedSteps(stack: StepStack, basis: LeanBasis, lean: Lean): Float32Array {
  const { blocks, steps, known, mean, count } = stack;
  mean.fill(0);
  count.fill(0);
  for (let b = 0; b < blocks; b++) {
    const down = Math.round(riseAt(basis, lean, b) / Z_STEP_MM);
    const start = b * BAND_ROWS - down;
    const end = Math.min(BAND_ROWS, BAND_ROWS + down);
    for (let r = Math.max(0, down); r < end; r++) {
      mean[r] += steps[start + r];
      count[r] += known[start + r];
    }
  }
  for (let r = 0; r < BAND_ROWS; r++)
    mean[r] = count[r] >= MIN_STACK_SHARE * blocks ? mean[r] / count[r] : 0;
  return mean;
}
