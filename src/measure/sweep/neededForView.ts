import { CERTAIN_GAP_S } from '../turn/turnTracker.ts';
import type { SweepRecording } from './sweepRecording.ts';

/** Turn from picture to picture, degrees: short of what is too fast for any sweep (turnSpeed). */
const LONGEST_STEP_DEG = 2;

/**
 * Whether a picture of a film is needed that will be read again with a better view, and is read on for
 * that view alone. Line, edge and the tread's speed across the picture tell it, all of them means over
 * the whole turn: a part of the pictures is enough, as long as the tread can be followed from one to the
 * next. So a picture is needed when, left out, the one after it would come too late for that.
 *
 * @param stepS time between the film's pictures, s
 */
export function isNeededForView(
  { turn, frames }: Pick<SweepRecording, 'turn' | 'frames'>,
  timeS: number,
  stepS: number,
): boolean {
  const last = frames.at(-1);
  // Where the tread is looked for, or stands in doubt, every picture may show it.
  if (!last?.lean || turn.lostSinceS !== null || turn.doubt.sure !== null) return true;
  const gapS = timeS - last.timeS + stepS;
  return gapS > CERTAIN_GAP_S || Math.abs(turn.rateDegPerS) * gapS > LONGEST_STEP_DEG;
}
