import type { StandRecord, WheelRecord } from '../contract/logbook.ts';
import { nextSetup } from './sweepSetup.ts';
import type { WheelState } from './wheelState.ts';

/** The steps of one wheel's job, in order. */
export const JOB_STEPS = ['bench', 'sight', 'sweep', 'reading', 'weights', 'proof'] as const;
export type JobStepName = (typeof JOB_STEPS)[number];

/** `skipped`: gone past while values that the grams rest on were only assumed. */
export type StepProgress = 'done' | 'now' | 'later' | 'skipped';

export interface JobStep {
  readonly name: JobStepName;
  readonly progress: StepProgress;
  /** The sweep that the step is about; null where there is none yet. */
  readonly entryId: string | null;
}

/** The one thing to do next. */
export type NextStep =
  /** Measure the wheel: what the grams rest on is still assumed. */
  | { readonly kind: 'bench' }
  | { readonly kind: 'sweep' }
  | { readonly kind: 'weights'; readonly entryId: string }
  /** Sweep again with the weights on. */
  | { readonly kind: 'check' }
  /** A check sweep found more than one weight left: see what it says. */
  | { readonly kind: 'verdict'; readonly entryId: string }
  | { readonly kind: 'proved'; readonly entryId: string };

export interface JobPath {
  readonly steps: readonly JobStep[];
  readonly next: NextStep;
  /** Paths in the next sweep's setup whose values are assumed, as `wheel.massKg`. */
  readonly assumed: readonly string[];
}

/** Where a wheel is on its way, and what comes next. */
export function jobSteps(wheel: WheelRecord, state: WheelState, stand: StandRecord): JobPath {
  const { lastSweep } = state;
  const next = nextStep({
    stage: state.stage,
    isBenchOpen: isBenchOpen(wheel),
    sweepId: lastSweep?.id ?? null,
    isCheck: lastSweep?.setup.after !== undefined,
  });
  const at = JOB_STEPS.indexOf(STEP_OF[next.kind]);
  const steps = JOB_STEPS.map((name, index) => ({
    name,
    progress: progressOf(index, at, next, name === 'bench' && isBenchOpen(wheel)),
    entryId: ABOUT_A_SWEEP.includes(name) ? (lastSweep?.id ?? null) : null,
  }));
  return { steps, next, assumed: nextSetup(wheel, stand, state).assumed };
}

/** The same from the record alone, for a list of many wheels. */
export function nextStepOfRecord(wheel: WheelRecord): NextStep {
  return nextStep({
    stage: wheel.stage,
    isBenchOpen: isBenchOpen(wheel),
    sweepId: wheel.lastReading?.entryId ?? null,
    isCheck: wheel.lastReading?.isCheck ?? false,
  });
}

/**
 * Mass and radii turn a lean into grams and can be had in a minute; as long as one of them is
 * assumed the bench comes first. The depth takes more trouble, and a check sweep measures it.
 */
function isBenchOpen(wheel: WheelRecord): boolean {
  return [wheel.massKg, wheel.edgeRadiusMm, wheel.rings[0]!.radiusMm].some(
    ({ origin }) => origin === 'assumed',
  );
}

const ABOUT_A_SWEEP: readonly JobStepName[] = ['reading', 'weights', 'proof'];

const STEP_OF: Readonly<Record<NextStep['kind'], JobStepName>> = {
  bench: 'bench',
  sweep: 'sight',
  weights: 'weights',
  check: 'proof',
  verdict: 'proof',
  proved: 'proof',
};

interface JobFacts {
  readonly stage: WheelRecord['stage'];
  readonly isBenchOpen: boolean;
  readonly sweepId: string | null;
  readonly isCheck: boolean;
}

function nextStep({ stage, isBenchOpen: benchOpen, sweepId, isCheck }: JobFacts): NextStep {
  // Weights put on by hand before any sweep: there is nothing yet to check them against.
  if (sweepId === null) return benchOpen ? { kind: 'bench' } : { kind: 'sweep' };
  if (stage === 'proved') return { kind: 'proved', entryId: sweepId };
  if (stage === 'weights-on') return { kind: 'check' };
  return { kind: isCheck ? 'verdict' : 'weights', entryId: sweepId };
}

function progressOf(index: number, at: number, next: NextStep, isOpen: boolean): StepProgress {
  if (isOpen && next.kind !== 'bench') return 'skipped';
  if (next.kind === 'proved' || index < at) return 'done';
  return index === at ? 'now' : 'later';
}
