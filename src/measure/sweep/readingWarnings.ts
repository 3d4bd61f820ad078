import type { ResponseAngleJudgement } from '../../balance/responseAngle.ts';
import type { ReadingWarning } from '../../contract/reading.ts';
import type { SweepSetup, TurnSense } from '../../contract/setup.ts';
import type { SweepReaderOptions } from '../../contract/sweep.ts';
import { READING_WARNINGS, type WarningCode } from '../../contract/warnings.ts';
import type { TiltFit } from '../fit/tiltFit.ts';

/**
 * What a reading rests on though nobody confirmed it. A mirrored film of a wheel is a film of the
 * mirrored wheel, down to its rocking and its lag: nothing in one sweep's pictures tells them apart.
 * So the sense of turning is vouched for by a person, by a trial, or it is said that nobody did.
 */
export function readingWarnings(
  setup: SweepSetup,
  sense: TurnSense,
  { mayMirror = false, askedSense }: Pick<SweepReaderOptions, 'mayMirror' | 'askedSense'>,
  answer: ResponseAngleJudgement | null,
): readonly ReadingWarning[] {
  if (isSenseVouched(setup) || mirrorRuledOut(answer)) return [];
  const code = openQuestion(sense, mayMirror, askedSense);
  if (code === null) return [];
  return [warningOf(code)];
}

/** Sway of a pixel or so, rms, as a rise of the edge: a firm arm stays far below, mm. */
const SWAY_WORTH_SAYING_MM = 0.4;

export function swayWarnings({ downMm, acrossMm }: TiltFit['sway']): readonly ReadingWarning[] {
  return Math.hypot(downMm, acrossMm) > SWAY_WORTH_SAYING_MM ? [warningOf('picture-sways')] : [];
}

export function warningOf(code: WarningCode): ReadingWarning {
  const { cause, remedy } = READING_WARNINGS[code];
  return { code, message: cause, remedy };
}

/** Said by the person, or tried by hand before the sweep. */
function isSenseVouched({ turnSense, sight }: SweepSetup): boolean {
  return turnSense !== undefined || sight.tested?.turn !== undefined;
}

/**
 * In a mirror a weight is answered on the other side of the valve. On the line through the valve
 * both answers are the same: a weight there rules out nothing.
 */
function mirrorRuledOut(answer: ResponseAngleJudgement | null): boolean {
  return answer?.finding === 'sound' && !answer.alsoPossible.includes('turn-sense-wrong');
}

function openQuestion(
  sense: TurnSense,
  mayMirror: boolean,
  askedSense: TurnSense | undefined,
): WarningCode | null {
  if (mayMirror) return 'camera-may-mirror';
  // A mirror would show the asked turn the other way round.
  if (sense === askedSense) return null;
  return sense === 'clockwise' ? 'clockwise-unconfirmed' : 'sense-unconfirmed';
}
