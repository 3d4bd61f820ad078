import { failed, type Outcome } from '../../contract/outcome.ts';
import type { RefusalCode } from '../../contract/refusals.ts';
import type { TurnSense } from '../../contract/setup.ts';
import type { SweepReaderOptions } from '../../contract/sweep.ts';
import { FASTEST_STEP_DEG } from '../../contract/turnSpeed.ts';
import { wrapTurnDeg } from '../../quantities/angle.ts';
import { followsCover } from './coveredView.ts';
import { dueSense } from './dueSense.ts';
import { leanedAway } from './leanReach.ts';
import type { EdgeObservations } from './edgeObservations.ts';
import { witnessTurn } from '../turn/turnWitness.ts';
import { lineDark } from './lineDark.ts';
import { outlineSides } from './outlineSides.ts';
import type { SweepRecording } from './sweepRecording.ts';
import { standsBeforeTread } from './treadBesideEdge.ts';

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
 * A line that comes back in its place vouches for the time between; a third of a turn of half a minute
 * is the most that is taken on trust, s. One that never comes back leaves nothing to show that the
 * camera stood still: a hand before it takes two or three seconds, longer than this it was off.
 */
export const LONGEST_DARK_S = 10;
export const LONGEST_DARK_AT_END_S = 4;
/** Share of the pictures that may be blind to the tread or to its turn. */
const BLIND_LIMIT_SHARE = 0.35;
/** One whole turn, and no stretch of it unseen wider than this. */
const WHOLE_TURN_DEG = 360;
const WIDEST_HOLE_DEG = 30;

export function checkRecording(
  recording: SweepRecording,
  options: SweepReaderOptions = {},
): Outcome<never, RefusalCode> | null {
  const { frames, repeated } = recording;
  const tooFew = () => failed('too-few-frames', { pictures: frames.length, needed: MIN_FRAMES });
  if (frames.length + repeated < MIN_FRAMES) return tooFew();
  return (
    lineNeverSeen(recording) ??
    blind(recording) ??
    followsCover(recording) ??
    tooFast(recording) ??
    turnIncomplete(recording) ??
    (frames.length < MIN_FRAMES ? tooFew() : null) ??
    outlineStands(recording) ??
    standsBeforeTread(recording) ??
    otherSense(recording, options)
  );
}

/** The way the wheel was turned on the whole, as the picture shows it; back and forth cancel. */
export function senseOf(turnDeg: readonly number[]): TurnSense {
  return turnDeg[turnDeg.length - 1] >= turnDeg[0] ? 'clockwise' : 'counter-clockwise';
}

/** A mirrored picture is a picture of the mirrored wheel: only a trial, or the sense that a person vouches for, tells. */
function otherSense(
  recording: SweepRecording,
  options: SweepReaderOptions,
): Outcome<never, RefusalCode> | null {
  const { setup } = recording.view;
  const { sight } = setup;
  // Tried by hand before this sweep, on this camera.
  if (sight.tested?.turn === 'reversed')
    return failed('picture-mirrored', { turnTest: 'reversed' });
  if (sight.tested?.up === 'reversed')
    return failed('picture-upside-down', { pressTest: 'reversed' });
  const seen = senseOf(recording.turn.turnDeg);
  const due = dueSense(setup, options);
  if (due === null || due === seen) return null;
  const evidence = { senseSeen: seen, senseDue: due };
  return failed('picture-mirrored', evidence);
}

function lineNeverSeen(recording: SweepRecording): Outcome<never, RefusalCode> | null {
  const shares = recording.frames.map((f) => f.lineShare).sort((a, b) => a - b);
  // An upper quantile: the line may be hidden in a groove, or off, for half of the sweep.
  const usual = shares[Math.floor(shares.length * 0.9)];
  return usual < LINE_NEVER_SHARE ? failed('line-lost', { usualShare: round(usual) }) : null;
}

/** Whether the line went out in mid-sweep: away for seconds where it was due. */
export function checkLineSeen(
  recording: SweepRecording,
  observations: EdgeObservations,
): Outcome<never, RefusalCode> | null {
  const { longestS, fromS, atEndS } = lineDark(recording, observations);
  if (longestS <= LONGEST_DARK_S && atEndS <= LONGEST_DARK_AT_END_S) return null;
  return failed('line-lost', {
    secondsWithoutLine: Math.round(longestS),
    aboutSecond: Math.round(fromS),
  });
}

function blind(recording: SweepRecording): Outcome<never, RefusalCode> | null {
  const { frames } = recording;
  const noLean = frames.filter((f) => f.lean === null).length / frames.length;
  if (noLean > BLIND_LIMIT_SHARE) {
    const evidence = { shareOfPicturesWithoutTread: round(noLean) };
    return (
      leanedAway(recording) ??
      failed(treadShows(recording) ? 'edge-lost' : 'view-blocked', evidence)
    );
  }
  const noTurn = frames.filter((f) => f.turnIndex === null).length / frames.length;
  if (noTurn > BLIND_LIMIT_SHARE)
    return failed('turn-uncertain', { shareOfPicturesWithoutTurn: round(noTurn) });
  return null;
}

/** A line that shows in so much of what is watched lies on a tread with nothing before it. */
const UNCOVERED_LINE_SHARE = 0.7;

/** Whether the tread was in view where no lean was told: then it has nothing to be followed by. */
function treadShows({ frames }: SweepRecording): boolean {
  const shares = frames.flatMap(({ lean, lineShare }) => (lean === null ? [lineShare] : []));
  return shares.sort((a, b) => a - b)[shares.length >> 1] > UNCOVERED_LINE_SHARE;
}

/**
 * Above the tyre's outline everything turns, behind it nothing does: by 15 to 1 on films of treads of
 * cross grooves, as slots go by. With less between the sides it is no outline.
 */
const OUTLINE_SIDES_RATIO = 3;

function outlineStands(recording: SweepRecording): Outcome<never, RefusalCode> | null {
  if (!recording.edge.outline) return null;
  const { above, below } = outlineSides(recording);
  if (above >= OUTLINE_SIDES_RATIO * below) return null;
  return failed('edge-lost', { changeAboveOutline: round(above), changeBelowIt: round(below) });
}

/** By the median step between pictures: a hand that was quick for a moment spoils nothing. */
function tooFast(recording: SweepRecording): Outcome<never, RefusalCode> | null {
  const { turnDeg } = recording.turn;
  const steps = turnDeg.slice(1).map((t, i) => Math.abs(t - turnDeg[i]));
  const median = steps.sort((a, b) => a - b)[steps.length >> 1] ?? 0;
  return median > FASTEST_STEP_DEG
    ? failed('too-fast', { degreesBetweenPictures: round(median) })
    : null;
}

/** By the raw turn: its scale is known to some per cent before closing, so the check leans that way. */
function turnIncomplete(recording: SweepRecording): Outcome<never, RefusalCode> | null {
  const covered = coveredDeg(recording.turn.turnDeg);
  const hole = widestHoleDeg(recording.turn.turnDeg);
  if (!isWholeTurn(covered) || hole > WIDEST_HOLE_DEG) {
    return failed('turn-incomplete', { coveredDeg: round(covered), widestHoleDeg: round(hole) });
  }
  return null;
}

/** 7 % short in the raw sum may still be a whole turn; the closed turn is checked again. */
export function isWholeTurn(rawDeg: number): boolean {
  return rawDeg >= 0.93 * WHOLE_TURN_DEG;
}

/** Closing alone cannot see a slip by one tread pitch: the tread farther apart must agree. */
export function checkTurnWitness(recording: SweepRecording): Outcome<never, RefusalCode> | null {
  const { slipDeg, timeS } = witnessTurn(recording.turn);
  if (slipDeg === 0) return null;
  return failed('turn-uncertain', { slipDeg: round(slipDeg), aboutSecond: Math.round(timeS) });
}

/** After closing, in true degrees. */
export function checkClosedTurn(coveredTrueDeg: number): Outcome<never, RefusalCode> | null {
  return coveredTrueDeg < WHOLE_TURN_DEG
    ? failed('turn-incomplete', { coveredDeg: round(coveredTrueDeg) })
    : null;
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
