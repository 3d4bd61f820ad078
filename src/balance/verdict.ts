import { succeeded } from '../contract/outcome.ts';
import type { BalanceOutcome } from './failures.ts';
import { NOT_NEGATIVE, POSITIVE, rejectNumbers } from './inputs.ts';
import { PUBLISHED_LATERAL_RUN_OUT_MM } from './runOutAllowance.ts';

export interface VerdictInput {
  /** What is left, g·mm, and its standard error. */
  readonly residualGmm: number;
  readonly residualSdGmm: number;
  /** U_per by ISO 21940-11, g·mm. */
  readonly permissibleGmm: number;
  readonly weightStepG: number;
  readonly weightRadiusMm: number;
  /** Trims already made on this wheel. */
  readonly trimsDone: number;
  /** Twice-round and higher waves of the edge, mm from peak to peak. */
  readonly edgeWaveMm: number;
  /** Standard deviation of repeats, lifted and seated again, g·mm; 0 when not tried. */
  readonly seatErrorGmm: number;
  readonly plateDents: boolean;
}

export type OtherCause = 'run-out' | 'seat' | 'dents' | 'does-not-converge';

export interface Verdict {
  readonly verdict: 'pass' | 'trim' | 'look-for-another-cause';
  readonly words: string;
  /** What else is the matter, most telling first; worth a word even where the wheel passes. */
  readonly causes: readonly OtherCause[];
  /** The two measures, both to be shown. */
  readonly withinIso: boolean;
  readonly withinOneStep: boolean;
  readonly permissibleGmm: number;
  readonly oneStepGmm: number;
  /** True when the figure's own ± reaches across the step: another sweep would tell. */
  readonly isClose: boolean;
}

/** A wheel that is not done after two trims has something else the matter (common practice). */
const TRIMS_MAX = 2;

export const CAUSE_WORDS: Readonly<Record<OtherCause, string>> = {
  dents: 'The plate is dented: the wheel sticks. Turn or change the plate.',
  seat: 'The wheel rests differently each time: clean bore and ball, look for burrs.',
  'run-out': 'The tread edge is wavy: check rim and tyre for run-out and the bead for its seat.',
  'does-not-converge': 'Two trims did not settle it: check valve mark, weights and radius entered.',
};

const VERDICT_WORDS: Readonly<Record<Verdict['verdict'], string>> = {
  pass: 'Balanced: less than one weight step is left.',
  trim: 'Trim it: more is left than should be.',
  'look-for-another-cause': 'Weights will not cure this. Look for another cause first.',
};

/**
 * Verdict on what is left: pass within one weight step at the weight radius (common practice; far
 * inside ISO 21940-11, but the narrower of the two is asked for where they cross), trim above it,
 * and another cause where more than a step is left and the wheel, its seat or the plate explains it.
 */
export function verdictOn(input: VerdictInput): BalanceOutcome<Verdict> {
  const bad = rejectNumbers({
    residualGmm: [input.residualGmm, NOT_NEGATIVE],
    residualSdGmm: [input.residualSdGmm, NOT_NEGATIVE],
    permissibleGmm: [input.permissibleGmm, POSITIVE],
    weightStepG: [input.weightStepG, POSITIVE],
    weightRadiusMm: [input.weightRadiusMm, POSITIVE],
    trimsDone: [input.trimsDone, NOT_NEGATIVE],
    edgeWaveMm: [input.edgeWaveMm, NOT_NEGATIVE],
    seatErrorGmm: [input.seatErrorGmm, NOT_NEGATIVE],
  });
  if (bad) return bad;
  const { residualGmm, permissibleGmm } = input;
  const oneStepGmm = input.weightStepG * input.weightRadiusMm;
  const withinIso = residualGmm <= permissibleGmm;
  const withinOneStep = residualGmm <= oneStepGmm;
  const isSound = withinIso && withinOneStep;
  const causes = causesOf(input, oneStepGmm, isSound);
  const unsound = causes.length > 0 ? 'look-for-another-cause' : 'trim';
  const verdict = isSound ? 'pass' : unsound;
  const nearestLimit = Math.min(oneStepGmm, permissibleGmm);
  return succeeded({
    verdict,
    words: VERDICT_WORDS[verdict],
    causes,
    withinIso,
    withinOneStep,
    permissibleGmm,
    oneStepGmm,
    isClose: Math.abs(residualGmm - nearestLimit) < 2 * input.residualSdGmm,
  });
}

function causesOf(
  input: VerdictInput,
  oneStepGmm: number,
  isSound: boolean,
): readonly OtherCause[] {
  const causes: OtherCause[] = [];
  if (input.plateDents) causes.push('dents');
  if (input.seatErrorGmm > oneStepGmm / 2) causes.push('seat');
  if (input.edgeWaveMm > PUBLISHED_LATERAL_RUN_OUT_MM) causes.push('run-out');
  if (!isSound && input.trimsDone >= TRIMS_MAX) causes.push('does-not-converge');
  return causes;
}
