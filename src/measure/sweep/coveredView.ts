import { failed, type Failure, type Outcome } from '../../contract/outcome.ts';
import type { RefusalCode } from '../../contract/refusals.ts';
import { BAND_ROWS, rowOfZ } from '../band/treadBand.ts';
import type { FrameRecord, SweepRecording } from './sweepRecording.ts';

/**
 * How much of the tread something stood before: a sleeve, a cloth, the stand's own arm. Seen from half
 * of its width a wheel is read otherwise than it is, and what goes wrong first (the line, the turn, the
 * camera's stillness) is not what is to be changed.
 *
 * Two signs, block by block. What stands before the tread for all of the sweep does not change while
 * the wheel turns, and shows no line; where it stands before the ribs below the line alone, that is half a
 * block. What comes and goes matches the tread's profile there as little as it shows the line. Pictures that
 * show no part of the tread are left to other checks: a camera that was knocked looks like that, too.
 */
export interface CoveredView {
  /** Share of the views of all blocks, picture by picture, in which the tread was covered. */
  readonly share: number;
  /** Share of the blocks that were covered all the while. */
  readonly standingShare: number;
}

export function coveredView(recording: SweepRecording): CoveredView {
  const stands = standingParts(recording);
  const { frames } = recording;
  const comes = stands.map((_, b) => frames.filter((frame) => !isHidden(frame, b)).length);
  const isTold = comes.map((seen) => seen >= SEEN_AT_TIMES * frames.length);
  let covered = 0;
  for (const frame of frames) {
    const here = stands.reduce(
      (sum, part, b) => sum + (isTold[b] && isHidden(frame, b) ? 1 : part),
      0,
    );
    if (here < stands.length) covered += here / stands.length;
  }
  return {
    share: covered / Math.max(1, frames.length),
    standingShare: stands.reduce((sum, part) => sum + part, 0) / stands.length,
  };
}

/** A block that shows line or tread in fewer of the pictures is too dark or too slanting, not covered at times. */
const SEEN_AT_TIMES = 0.2;

/**
 * Glare hides up to a twentieth of all the views of a turn's blocks; a sweep that cannot be read with four
 * times as much hidden was spoilt by that.
 */
const COVERED_SHARE = 0.2;

/** What a cover before part of the tread does to a sweep. */
const COVERED_CODES: readonly RefusalCode[] = [
  ...(['line-lost', 'edge-lost', 'edge-ambiguous', 'mark-missing'] as const),
  ...(['turn-incomplete', 'turn-uncertain', 'camera-moved'] as const),
];
/** The same, where a wheel that leans or rocks hard hides parts of its tread by itself. */
const LEANING_CODES: readonly RefusalCode[] = ['rocking-too-strong', 'lean-too-large'];

/** Turned no farther than this a sweep was broken off, and what stands is hardly told from what turns. */
const HALF_TURN_DEG = 180;

/** In place of what a cover did to the sweep; null where no cover is seen, or another reason stands. */
export function behindCover(
  recording: SweepRecording,
  code: RefusalCode,
): Failure<'view-blocked'> | null {
  const leans = LEANING_CODES.includes(code);
  if (!leans && !COVERED_CODES.includes(code)) return null;
  if (code === 'turn-incomplete' && turnedDeg(recording) < HALF_TURN_DEG) return null;
  const { share, standingShare } = coveredView(recording);
  if ((leans ? standingShare : share) < COVERED_SHARE) return null;
  const evidence = { shareOfTreadCovered: round(share) };
  return failed('view-blocked', evidence).failure;
}

function turnedDeg({ turn }: SweepRecording): number {
  const [low, high] = turn.turnDeg.reduce(
    ([least, most], deg) => [Math.min(least, deg), Math.max(most, deg)],
    [0, 0],
  );
  return high - low;
}

/** Two blocks of what stands may be the shed beside a wheel seen from aside, and are outvoted. */
const FOLLOWED_COVER_SHARE = 0.15;

/**
 * What stands before the tread and shows a pattern of its own is followed in its place: a wheel would be
 * read that hardly leans. Null where the lean was told by the tread alone, however much of it is
 * covered.
 */
export function followsCover(recording: SweepRecording): Outcome<never, 'view-blocked'> | null {
  const { frames } = recording;
  const parts = standingParts(recording);
  const followed = parts.filter((part, b) => {
    const matches = frames.filter((frame) => isMatched(frame, b)).length;
    return part === 1 && 2 * matches > frames.length;
  });
  const share = followed.length / parts.length;
  if (share <= FOLLOWED_COVER_SHARE) return null;
  return failed('view-blocked', { shareOfTreadCovered: round(share) });
}

function upperQuartile(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(TURNING_QUANTILE * values.length)];
}

function round(share: number): number {
  return Math.round(100 * share) / 100;
}

function isMatched({ lean }: FrameRecord, block: number): boolean {
  return lean !== null && lean.shiftMm[block] === lean.shiftMm[block];
}

function isHidden(frame: FrameRecord, block: number): boolean {
  const { lineOffsetPx } = frame;
  return !isMatched(frame, block) && !(lineOffsetPx[block] === lineOffsetPx[block]);
}

/** Turned by so much a block shows other slots, degrees. */
const TURNED_DEG = 3;
/** What stands changes less than this part of what turns, from picture to picture; noise alone does. */
const STANDING_PART = 0.25;
/** The blocks that change most turn, whatever covers the rest. */
const TURNING_QUANTILE = 0.75;
/** A line that shows in more of the pictures lies on the tread. */
const LINE_SHARE = 0.05;

/** Rows of the band that show the tread on both sides of the line, and those of the ribs below it. */
const WHOLE = rowsBetween(30, -45);
const BELOW = rowsBetween(-5, -45);

/** For each block the part of it before which something stood all the while: none, its lower half, all. */
function standingParts(recording: SweepRecording): number[] {
  const { frames, tilt, edge } = recording;
  // Behind an outline all stands; that it is the tyre's is looked at elsewhere.
  if (edge.outline) return new Array<number>(tilt.blocks).fill(0);
  const pairs = turnedPairs(recording);
  const blocks = Array.from({ length: tilt.blocks }, (_, b) => b);
  const whole = blocks.map((b) => changeAsItTurns(pairs, b, WHOLE));
  const below = blocks.map((b) => changeAsItTurns(pairs, b, BELOW));
  const usual = upperQuartile(whole);
  // Where nothing below the line turns its own usual change says nothing.
  const usualBelow = Math.max(upperQuartile(below), usual / 2);
  return blocks.map((b) => {
    const lit = frames.filter(({ lineOffsetPx }) => lineOffsetPx[b] === lineOffsetPx[b]).length;
    if (whole[b] < STANDING_PART * usual && lit < LINE_SHARE * frames.length) return 1;
    return below[b] < STANDING_PART * usualBelow ? LOWER_PART : 0;
  });
}

/** Without what lies below the line half of what tells the lean is gone. */
const LOWER_PART = 0.5;

type Pair = readonly [FrameRecord, FrameRecord];

/** Pictures between which the wheel turned far enough. */
function turnedPairs({ frames, turn }: SweepRecording): Pair[] {
  const pairs: Pair[] = [];
  let before: FrameRecord | null = null;
  for (const frame of frames) {
    if (frame.turnIndex === null) continue;
    const turnedDeg = before ? turn.turnDeg[frame.turnIndex] - turn.turnDeg[before.turnIndex!] : 0;
    if (before && Math.abs(turnedDeg) < TURNED_DEG) continue;
    if (before) pairs.push([before, frame]);
    before = frame;
  }
  return pairs;
}

/** How much some rows of a block's profile change as the wheel turns, RMS, luma; infinite where that is not known. */
function changeAsItTurns(
  pairs: readonly Pair[],
  block: number,
  { first, last }: { readonly first: number; readonly last: number },
): number {
  let squares = 0;
  let count = 0;
  for (const [before, after] of pairs) {
    for (let at = block * BAND_ROWS + first; at <= block * BAND_ROWS + last; at++) {
      const step = after.profiles[at] - before.profiles[at];
      if (step !== step) continue;
      squares += step * step;
      count++;
    }
  }
  return count > 0 ? Math.sqrt(squares / count) : Infinity;
}

function rowsBetween(topMm: number, bottomMm: number): { first: number; last: number } {
  return { first: Math.round(rowOfZ(topMm)), last: Math.round(rowOfZ(bottomMm)) };
}
