import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import type { MarkColour } from '../../contract/setup.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';
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
  const sized = tapes.filter(fits);
  const exact = sized.filter((t) => t.colour === wanted.colour);
  const pool =
    exact.length > 0 ? exact : sized.filter((t) => LOOKALIKES[wanted.colour].includes(t.colour));
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
