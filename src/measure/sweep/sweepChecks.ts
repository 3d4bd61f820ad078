import { failed, type Outcome } from '../../contract/outcome.ts';
import type { RefusalCode } from '../../contract/refusals.ts';
import { wrapTurnDeg } from '../../quantities/angle.ts';
import type { EdgeObservations } from './edgeObservations.ts';
import { wayTurnedDeg } from './cameraStill.ts';
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
 * From above a groove hides the line, while the wheel's high side passes: for some 90° of turn at
 * most. In so much of the turn, degrees, the line must come back.
 */
const LINE_WINDOW_DEG = 130;
const LINE_WINDOW_STEP_DEG = 10;
/** Come back: one picture in ten shows it in at least this part of its usual columns. */
const LINE_BACK_QUANTILE = 0.9;
const LINE_BACK_PART = 0.3;
/** Share of the pictures that may be blind to the tread or to its turn. */
const BLIND_LIMIT_SHARE = 0.35;
/** One whole turn, and no stretch of it unseen wider than this. */
const WHOLE_TURN_DEG = 360;
const WIDEST_HOLE_DEG = 30;
/** A median step of the turn between pictures near half a tread pitch cannot be followed, degrees. */
const FASTEST_STEP_DEG = 2.2;

export function checkRecording(recording: SweepRecording): Outcome<never, RefusalCode> | null {
  const { frames, repeated } = recording;
  const tooFew = () => failed('too-few-frames', { pictures: frames.length, needed: MIN_FRAMES });
  if (frames.length + repeated < MIN_FRAMES) return tooFew();
  return (
    lineNeverSeen(recording) ??
    blind(recording) ??
    tooFast(recording) ??
    turnIncomplete(recording) ??
    (frames.length < MIN_FRAMES ? tooFew() : null)
  );
}

function lineNeverSeen(recording: SweepRecording): Outcome<never, RefusalCode> | null {
  const shares = recording.frames.map((f) => f.lineShare).sort((a, b) => a - b);
  // An upper quantile: the line may be hidden in a groove, or off, for half of the sweep.
  const usual = shares[Math.floor(shares.length * 0.9)];
  return usual < LINE_NEVER_SHARE ? failed('line-lost', { usualShare: round(usual) }) : null;
}

/** Whether the line went out in mid-sweep: a good part of the turn in which it never shows. */
export function checkLineSeen(
  recording: SweepRecording,
  observations: EdgeObservations,
): Outcome<never, RefusalCode> | null {
  const shares = Float64Array.from(observations.frameIndex, (f) => recording.frames[f].lineShare);
  const usual = quantile(shares, LINE_BACK_QUANTILE);
  const way = wayTurnedDeg(observations.turnDeg);
  const last = way[way.length - 1] ?? 0;
  for (let from = 0; from + LINE_WINDOW_DEG <= last; from += LINE_WINDOW_STEP_DEG) {
    const inside = shares.filter((_, i) => way[i] >= from && way[i] < from + LINE_WINDOW_DEG);
    const back = quantile(inside, LINE_BACK_QUANTILE);
    if (back >= LINE_BACK_PART * usual) continue;
    return failed('line-lost', {
      turnWithoutLineDeg: LINE_WINDOW_DEG,
      aboutSecond: Math.round(observations.timeS[way.findIndex((w) => w >= from)]),
    });
  }
  return null;
}

function quantile(values: Float64Array, share: number): number {
  if (values.length === 0) return 0;
  return Float64Array.from(values).sort()[
    Math.min(values.length - 1, Math.floor(values.length * share))
  ];
}

function blind(recording: SweepRecording): Outcome<never, RefusalCode> | null {
  const { frames } = recording;
  const noLean = frames.filter((f) => f.lean === null).length / frames.length;
  if (noLean > BLIND_LIMIT_SHARE)
    return failed('view-blocked', { shareOfPicturesWithoutTread: round(noLean) });
  const noTurn = frames.filter((f) => f.turnIndex === null).length / frames.length;
  if (noTurn > BLIND_LIMIT_SHARE)
    return failed('turn-uncertain', { shareOfPicturesWithoutTurn: round(noTurn) });
  return null;
}

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
  // 7 % short in the raw sum may still be a whole turn; the closed turn is checked again.
  if (covered < 0.93 * WHOLE_TURN_DEG || hole > WIDEST_HOLE_DEG) {
    return failed('turn-incomplete', { coveredDeg: round(covered), widestHoleDeg: round(hole) });
  }
  return null;
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
