import type { ReadingWarning } from '../../contract/reading.ts';
import type { SweepSetup, TurnSense } from '../../contract/setup.ts';
import { READING_WARNINGS, type WarningCode } from '../../contract/warnings.ts';

/**
 * What a reading rests on though nobody confirmed it. Nothing in a picture tells it from its mirror
 * image. The screens ask for a clockwise turn: one that is seen so, by a camera that does not mirror,
 * is no reason for doubt.
 */
export function readingWarnings(
  setup: SweepSetup,
  sense: TurnSense,
  mayMirror: boolean,
): readonly ReadingWarning[] {
  // Said by the person, or tried by hand before the sweep: no open question any more.
  if (setup.turnSense !== undefined || setup.sight.tested?.turn !== undefined) return [];
  const codes: WarningCode[] = [];
  if (mayMirror) codes.push('camera-may-mirror');
  else if (sense === 'counter-clockwise') codes.push('sense-unconfirmed');
  return codes.map((code) => {
    const { cause, remedy } = READING_WARNINGS[code];
    return { code, message: cause, remedy };
  });
}
