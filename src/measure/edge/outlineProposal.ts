import type { SlicedWork } from '../pace/slicedWork.ts';
import type { StackPeak } from './edgeChoice.ts';
import { WITHIN_REACH } from './edgeProposal.ts';
import type { Lean, LeanBasis } from './leanFit.ts';
import { bestLean, stackPeaks, stepScores } from './stepSearch.ts';
import { createStepStack, stackedSteps } from './stepStack.ts';

/** A step of luma that runs through all blocks, and which way it goes. */
export interface OutlineStep extends StackPeak {
  readonly lean: Lean;
  readonly isLighterBehind: boolean;
}

/**
 * The outline parts two even tones: its step is about two standard deviations of the profile, cut off
 * there, and a little less for what is blurred. Slots and dust of the best of all leans make up 0.6,
 * a groove 1 to 1.5: nothing else so plain is left where no groove was found.
 */
const OUTLINE_STRENGTH = 1.3;

/** The plainest step of the profiles at the lean that fits them best; null where none is plain enough. */
export function* outlineStep(
  profiles: Float32Array,
  basis: LeanBasis,
  radiusMm: number,
): SlicedWork<OutlineStep | null> {
  const blocks = basis.gainMm.length;
  const steps = createStepStack(stepScores(profiles, blocks), blocks);
  const { lean } = yield* bestLean(steps, basis, radiusMm, WITHIN_REACH);
  const falls = stackedSteps(steps, basis, lean).slice();
  const plainest = (stack: Float32Array, isLighterBehind: boolean): OutlineStep[] =>
    stackPeaks(stack).map((peak) => ({ ...peak, lean, isLighterBehind }));
  const all = [
    ...plainest(falls, false),
    ...plainest(
      falls.map((step) => -step),
      true,
    ),
  ];
  const best = all.reduce<OutlineStep | null>(
    (a, b) => (a && a.strength >= b.strength ? a : b),
    null,
  );
  return best && best.strength >= OUTLINE_STRENGTH ? best : null;
}

/** What is light becomes dark: an outline before a light background is then a fall of luma, as an edge is. */
export function invertLuma(profiles: Float32Array): void {
  for (let i = 0; i < profiles.length; i++) profiles[i] = WHITE - profiles[i];
}

const WHITE = 255;
