import { failed, type Outcome } from '../../contract/outcome.ts';
import type { RefusalCode } from '../../contract/refusals.ts';
import { wrapTurnDeg } from '../../quantities/angle.ts';
import type { EdgeObservations } from './edgeObservations.ts';
import { gapMm } from './gap.ts';
import type { SweepRecording } from './sweepRecording.ts';

/**
 * Whether a recording can be read at all, before any figure is made: what was covered, what was
 * lost and for how long. Never judged by the size of a ±: a bad sweep's looks as good as a good
 * one's.
 */

/** Under so many pictures nothing averages out. */
const MIN_FRAMES = 60;
/** A usual share of columns below this is no line at all. */
const LINE_NEVER_SHARE = 0.05;
/**
 * The edge this far below the line, mm: the line must then lie on the rib's face in full view. The
 * edge's own height is known to 2 or 3 mm where glare hides it.
 */
const LINE_DUE_MM = 4;
/** When the line is due in fewer pictures than this share, its absence everywhere is judged instead. */
const DUE_PICTURES_SHARE = 0.25;
/** Share of columns below which no line is there at all, and how long a groove may hide all of it, s. */
const LINE_NOWHERE_SHARE = 0.03;
const LINE_NOWHERE_LIMIT_S = 8;
/** Blocks in which the line is due before a picture can say that it is gone. */
const LINE_DUE_BLOCKS = 3;
/** The line is gone in a picture that shows it in less than this share of its usual part of the due blocks. */
const LINE_GONE_SHARE = 0.3;
/**
 * Longest time without the line, s, that a passing hand explains, and the share of the sweep that a
 * weak line in dim light may flicker away; a dead battery goes past the first at once.
 */
const LINE_GONE_LIMIT_S = 2.5;
const LINE_GONE_LIMIT_SHARE = 0.45;
/** Share of the pictures that may be blind to the tread or to its turn. */
const BLIND_LIMIT_SHARE = 0.35;
/** One whole turn, and no stretch of it unseen wider than this. */
const WHOLE_TURN_DEG = 360;
const WIDEST_HOLE_DEG = 30;
/** A median step of the turn between pictures near half a tread pitch cannot be followed, degrees. */
const FASTEST_STEP_DEG = 2.2;

export function checkRecording(recording: SweepRecording): Outcome<never, RefusalCode> | null {
  const { frames } = recording;
  if (frames.length < MIN_FRAMES) return failed('too-few-frames', { pictures: frames.length, needed: MIN_FRAMES });
  return lineNeverSeen(recording) ?? blind(recording) ?? tooFast(recording) ?? turnIncomplete(recording);
}

function lineNeverSeen(recording: SweepRecording): Outcome<never, RefusalCode> | null {
  const shares = recording.frames.map((f) => f.lineShare).sort((a, b) => a - b);
  // An upper quantile: the line may be hidden in a groove, or off, for half of the sweep.
  const usual = shares[Math.floor(shares.length * 0.9)];
  return usual < LINE_NEVER_SHARE ? failed('line-lost', { usualShare: round(usual) }) : null;
}

/**
 * Whether the line went out in mid-sweep. From above a groove hides the line, for seconds at a
 * time; only where the edge stands below the line must it be seen.
 */
export function checkLineSeen(
  recording: SweepRecording,
  observations: EdgeObservations,
): Outcome<never, RefusalCode> | null {
  const { timeS } = observations;
  const seenShare = Float64Array.from(timeS, (_, i) => seenShareOfDue(recording, observations, i));
  const known = seenShare.filter((share) => share === share).sort();
  if (known.length < DUE_PICTURES_SHARE * timeS.length) return nowhereLong(recording);
  const usual = known[Math.floor(known.length * 0.75)];
  let goneS = 0;
  let stretchS = 0;
  let longestS = 0;
  for (let i = 1; i < timeS.length; i++) {
    if (seenShare[i] !== seenShare[i]) continue;
    if (seenShare[i] < LINE_GONE_SHARE * usual || seenShare[i] === 0) {
      goneS += timeS[i] - timeS[i - 1];
      stretchS += timeS[i] - timeS[i - 1];
      longestS = Math.max(longestS, stretchS);
    } else stretchS = 0;
  }
  const spanS = timeS[timeS.length - 1] - timeS[0];
  if (longestS <= LINE_GONE_LIMIT_S && goneS <= LINE_GONE_LIMIT_SHARE * spanS) return null;
  return failed('line-lost', { secondsWithoutLine: round(goneS), longestSeconds: round(longestS) });
}

/** A wheel near balance with its edge on the line: nowhere is the line due, but it cannot hide for long. */
function nowhereLong(recording: SweepRecording): Outcome<never, RefusalCode> | null {
  let sinceS = recording.frames[0].timeS;
  let longestS = 0;
  for (const frame of recording.frames) {
    if (frame.lineShare >= LINE_NOWHERE_SHARE) sinceS = frame.timeS;
    longestS = Math.max(longestS, frame.timeS - sinceS);
  }
  return longestS > LINE_NOWHERE_LIMIT_S ? failed('line-lost', { longestSeconds: round(longestS) }) : null;
}

/** Of the blocks where the line is due in one picture, the share that shows it; NaN where it is due nowhere. */
function seenShareOfDue(recording: SweepRecording, observations: EdgeObservations, i: number): number {
  const rows = recording.frames[observations.frameIndex[i]].lineOffsetPx;
  let due = 0;
  let seen = 0;
  for (let b = 0; b < rows.length; b++) {
    if (gapMm(observations, i, b) > -LINE_DUE_MM) continue;
    due++;
    if (rows[b] === rows[b]) seen++;
  }
  return due >= LINE_DUE_BLOCKS ? seen / due : NaN;
}

function blind(recording: SweepRecording): Outcome<never, RefusalCode> | null {
  const { frames } = recording;
  const noLean = frames.filter((f) => f.lean === null).length / frames.length;
  if (noLean > BLIND_LIMIT_SHARE) return failed('view-blocked', { shareOfPicturesWithoutTread: round(noLean) });
  const noTurn = frames.filter((f) => f.turnIndex === null).length / frames.length;
  if (noTurn > BLIND_LIMIT_SHARE) return failed('turn-uncertain', { shareOfPicturesWithoutTurn: round(noTurn) });
  return null;
}

function tooFast(recording: SweepRecording): Outcome<never, RefusalCode> | null {
  const { turnDeg } = recording.turn;
  const steps = turnDeg.slice(1).map((t, i) => Math.abs(t - turnDeg[i]));
  const median = steps.sort((a, b) => a - b)[steps.length >> 1] ?? 0;
  return median > FASTEST_STEP_DEG ? failed('too-fast', { degreesBetweenPictures: round(median) }) : null;
}

/** By the raw turn: its scale is known to some per cent before closing, so the check leans that way. */
function turnIncomplete(recording: SweepRecording): Outcome<never, RefusalCode> | null {
  const covered = coveredDeg(recording.turn.turnDeg);
  const hole = widestHoleDeg(recording.turn.turnDeg);
  // 7 % short in the raw sum may still be a whole turn; the closed turn is checked again.
  if (covered < 0.93 * WHOLE_TURN_DEG || hole > WIDEST_HOLE_DEG) {
    return failed('turn-incomplete', { coveredDeg: round(covered), widestHoleDeg: round(hole) });
  }
  return null;
}

/** After closing, in true degrees. */
export function checkClosedTurn(coveredTrueDeg: number): Outcome<never, RefusalCode> | null {
  return coveredTrueDeg < WHOLE_TURN_DEG ? failed('turn-incomplete', { coveredDeg: round(coveredTrueDeg) }) : null;
}

export function coveredDeg(turnDeg: readonly number[]): number {
  let low = Infinity;
  let high = -Infinity;
  for (const t of turnDeg) {
    if (t < low) low = t;
    if (t > high) high = t;
  }
  return high >= low ? high - low : 0;
}

/** Widest stretch of the turn, modulo one revolution, in which no picture was followed. */
export function widestHoleDeg(turnDeg: readonly number[]): number {
  if (turnDeg.length === 0) return 360;
  const sorted = turnDeg.map(wrapTurnDeg).sort((a, b) => a - b);
  let widest = sorted[0] + 360 - sorted[sorted.length - 1];
  for (let i = 1; i < sorted.length; i++) widest = Math.max(widest, sorted[i] - sorted[i - 1]);
  return widest;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
