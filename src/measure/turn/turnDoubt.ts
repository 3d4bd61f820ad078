/**
 * Whether the turn is followed as surely as usual. How well like frames match hangs on tread, light
 * and noise: a weak match is one that is weak for this film.
 */
export interface TurnDoubt {
  /** Usual correlation of a frame that was followed; 0 before the first. */
  usual: number;
  /** The last frame that was followed as surely as usual while those since were not; null without doubt. */
  sure: number | null;
}

/** A match under this part of the usual is in doubt: half of the view is covered. */
const DOUBT_SHARE = 0.6;
/** Share of a new frame in what is usual: some dozens of frames. */
const USUAL_SHARE = 0.05;
/** Turned so far in doubt, hardly any of what was sure is still in view, degrees. */
const OUT_OF_VIEW_DEG = 45;

export function createTurnDoubt(): TurnDoubt {
  return { usual: 0, sure: null };
}

/** Takes the newest frame's correlation; `turnDeg` of all frames, the newest included. */
export function judgeFrame(
  doubt: TurnDoubt,
  index: number,
  correlation: number,
  turnDeg: readonly number[],
): void {
  const { sure, usual } = doubt;
  if (sure !== null) {
    if (Math.abs(turnDeg[index] - turnDeg[sure]) > OUT_OF_VIEW_DEG) doubt.sure = null;
    return;
  }
  if (correlation < DOUBT_SHARE * usual) doubt.sure = index - 1;
  else doubt.usual = usual === 0 ? correlation : usual + USUAL_SHARE * (correlation - usual);
}
