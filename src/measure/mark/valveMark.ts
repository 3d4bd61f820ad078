import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import type { MarkColour } from '../../contract/setup.ts';
import { RAD_PER_DEG, wrapTurnDeg } from '../../quantities/angle.ts';
import type { Tape } from './tapes.ts';

/** Which of the tapes on the wheel is the valve's: the one of the entered colour and width. */
export interface MarkWanted {
  readonly widthMm: number;
  readonly colour: MarkColour;
  readonly edgeRadiusMm: number;
}

/** A tape's width is entered to some millimetres and read with its ragged borders. */
const WIDTH_RATIO_LOW = 0.6;
const WIDTH_RATIO_HIGH = 1.6;
/** Where two of the right colour fit, one must fit the width better by this factor to be it. */
const CLEARLY_BETTER = 0.25;
/** Colours that lamps and cameras may turn into each other. */
const LOOKALIKES: Readonly<Record<MarkColour, readonly string[]>> = {
  white: ['white'],
  yellow: ['yellow', 'orange'],
  orange: ['orange', 'red', 'yellow'],
  red: ['red', 'orange'],
  green: ['green'],
  blue: ['blue'],
};

export function valveMark(
  tapes: readonly Tape[],
  wanted: MarkWanted,
): Outcome<Tape, 'mark-missing' | 'mark-ambiguous'> {
  const widthDeg = wanted.widthMm / wanted.edgeRadiusMm / RAD_PER_DEG;
  const misfit = (t: Tape) => Math.abs(Math.log(t.widthDeg / widthDeg));
  const fits = (t: Tape) => {
    const ratio = t.widthDeg / widthDeg;
    return ratio > WIDTH_RATIO_LOW && ratio < WIDTH_RATIO_HIGH;
  };
  const ofColour = (sized: readonly Tape[]) => {
    const exact = sized.filter((t) => t.colour === wanted.colour);
    return exact.length > 0
      ? exact
      : sized.filter((t) => LOOKALIKES[wanted.colour].includes(t.colour));
  };
  const whole = ofColour(tapes.filter(fits));
  // Dirt or a tear across a tape leaves two pieces of it.
  const pool = whole.length > 0 ? whole : ofColour(mended(tapes).filter(fits));
  if (pool.length === 0) {
    return failed('mark-missing', {
      tapesSeen: tapes.length,
      wantedColour: wanted.colour,
      wantedWidthMm: wanted.widthMm,
    });
  }
  const ranked = [...pool].sort((a, b) => misfit(a) - misfit(b));
  if (ranked.length > 1 && misfit(ranked[1]) - misfit(ranked[0]) < CLEARLY_BETTER) {
    return failed('mark-ambiguous', { tapesThatFit: ranked.length });
  }
  return succeeded(ranked[0]);
}

/** Neighbours of one colour with less than this between them may be one tape under dirt, degrees. */
const MENDED_GAP_DEG = 2;

/** Each pair of neighbouring pieces as the one tape that they may be. */
function mended(tapes: readonly Tape[]): Tape[] {
  return tapes.flatMap((a) =>
    tapes.flatMap((b) => {
      const apartDeg = wrapTurnDeg(b.middleDeg - a.middleDeg);
      const gapDeg = apartDeg - (a.widthDeg + b.widthDeg) / 2;
      if (a === b || a.colour !== b.colour || gapDeg < 0 || gapDeg > MENDED_GAP_DEG) return [];
      const widthDeg = a.widthDeg + gapDeg + b.widthDeg;
      const middleDeg = wrapTurnDeg(a.middleDeg + (widthDeg - a.widthDeg) / 2);
      return [{ ...a, middleDeg, widthDeg, contrast: Math.min(a.contrast, b.contrast) }];
    }),
  );
}
