import { AZIMUTH_STEP_DEG } from '../band/treadBand.ts';
import { textureShift } from './textureShift.ts';
import { textureView, type TextureView } from './textureView.ts';
import { createTurnDoubt, judgeFrame, type TurnDoubt } from './turnDoubt.ts';

/**
 * Turn of the wheel, frame by frame: each frame's texture is matched against a key frame some
 * degrees back, searched only about the turn that steady turning predicts, so that the tread's
 * repeating pitch cannot be taken for a step. Every frame can serve as a key frame later, so a
 * tracker that lost the tread behind a hand can find its place again.
 */
export interface TurnTracker {
  readonly columns: number;
  /** Cleaned texture, time and turn of each frame that was followed. */
  readonly textures: Int8Array[];
  readonly timeS: number[];
  readonly turnDeg: number[];
  readonly correlation: number[];
  /** Running mean of the textures over the turn: what stands still is light, not tread. */
  readonly standing: Float32Array;
  key: number;
  /** Key frame's texture, and the same made ready for matching. */
  keyView: { readonly texture: Int8Array; readonly view: TextureView } | null;
  rateDegPerS: number;
  lostSinceS: number | null;
  readonly doubt: TurnDoubt;
}

export interface TurnStep {
  readonly turnDeg: number;
  readonly correlation: number;
}

/** A key frame is left behind after so many degrees: it still overlaps by most of the view. */
const KEY_SPACING_DEG = 9;
/** Search about the prediction: well under half a tread pitch (about 5°). */
const SEARCH_DEG = 1.4;
/** A hand changes a wheel's speed by no more than this within a frame or two, °/s per s. */
const HAND_ACCELERATION_DEG_PER_S2 = 150;
/** A match below this is no match; what is seen through dust and noise stays above. */
const MIN_TURN_CORRELATION = 0.2;
/**
 * Over a longer gap between two pictures (dropped, or a camera that stalled) a hand may have changed
 * the turn by half a tread pitch, 2.5° (½·150°/s²·t² = 2.5° − SEARCH_DEG): steady turning then no
 * longer tells one pitch from the next, s.
 */
export const CERTAIN_GAP_S = 0.12;
/**
 * After the tread was lost a hand may have stopped it or turned it back: search on both sides of
 * the last place, wider by this much for each second of absence than the speed it had.
 */
const RELOCK_DEG_PER_S = 30;
const RELOCK_MIN_DEG = 4;
const RELOCK_MAX_DEG = 40;
/** A place found again must stand clear of its rivals one pitch away. */
const RELOCK_MIN_CORRELATION = 0.35;
const RELOCK_LEAD = 0.08;
/** Turn over which the standing pattern is learnt, degrees. */
const STANDING_MEMORY_DEG = 20;
/** Time over which the speed is smoothed, s. */
const RATE_MEMORY_S = 0.15;

export function createTurnTracker(columns: number, strips: number): TurnTracker {
  return {
    ...{ columns, textures: [], timeS: [], turnDeg: [], correlation: [] },
    standing: new Float32Array(columns * strips),
    key: 0,
    keyView: null,
    rateDegPerS: 0,
    lostSinceS: null,
    doubt: createTurnDoubt(),
  };
}

/** Takes one frame's raw texture; null when its turn could not be told. */
export function trackTurn(
  tracker: TurnTracker,
  rawTexture: Int8Array,
  timeS: number,
): TurnStep | null {
  const texture = withoutStanding(tracker, rawTexture);
  const last = tracker.textures.length - 1;
  if (last < 0) {
    return accept(tracker, texture, rawTexture, timeS, { turnDeg: 0, correlation: 1 });
  }
  const elapsedS = Math.max(1e-3, timeS - tracker.timeS[last]);
  const view = textureView(texture, tracker.columns);
  const step =
    (tracker.lostSinceS === null ? followed(tracker, view, elapsedS) : null) ??
    foundAgain(tracker, view, timeS - (tracker.lostSinceS ?? tracker.timeS[last]));
  if (!step) {
    tracker.lostSinceS ??= tracker.timeS[last];
    return null;
  }
  tracker.lostSinceS = null;
  const surely = putInPlace(tracker, view, timeS, step);
  return accept(tracker, texture, rawTexture, timeS, surely);
}

/**
 * A hand that covers half of the view can drag a weak match along with it, a little with each frame.
 * What was sure before it says where the tread is now; the frames between are put back in proportion.
 */
function putInPlace(
  tracker: TurnTracker,
  texture: TextureView,
  timeS: number,
  step: TurnStep,
): TurnStep {
  const { doubt, turnDeg } = tracker;
  const { sure } = doubt;
  if (sure === null) return step;
  const awayS = timeS - tracker.timeS[sure];
  const place = foundAgain(tracker, texture, awayS, sure);
  if (!place) return step;
  doubt.sure = null;
  const draggedDeg = place.turnDeg - step.turnDeg;
  for (let i = sure + 1; i < turnDeg.length; i++) {
    turnDeg[i] += (draggedDeg * (tracker.timeS[i] - tracker.timeS[sure])) / awayS;
  }
  return place;
}

function followed(tracker: TurnTracker, texture: TextureView, elapsedS: number): TurnStep | null {
  const last = tracker.turnDeg.length - 1;
  const predicted = tracker.turnDeg[last] + tracker.rateDegPerS * elapsedS;
  const reach =
    SEARCH_DEG + Math.min(SEARCH_DEG, 0.5 * HAND_ACCELERATION_DEG_PER_S2 * elapsedS * elapsedS);
  const step = matchTo(tracker, tracker.key, texture, predicted, reach);
  // The key frame may have been a bad one (a hand, a blur): then the frame before this one.
  const foreseen = good(step) ?? good(matchTo(tracker, last, texture, predicted, reach));
  if (elapsedS <= CERTAIN_GAP_S) return foreseen;
  const anywhere = foundAgain(tracker, texture, elapsedS);
  if (!foreseen || !anywhere) return foreseen;
  return anywhere.correlation > foreseen.correlation + RELOCK_LEAD ? anywhere : foreseen;
}

/** A frame's texture made ready; the key frame's is kept, since every frame is matched to it. */
function viewOf(tracker: TurnTracker, index: number): TextureView {
  const texture = tracker.textures[index];
  if (tracker.keyView?.texture === texture) return tracker.keyView.view;
  const view = textureView(texture, tracker.columns);
  if (index === tracker.key) tracker.keyView = { texture, view };
  return view;
}

function good(step: TurnStep | null): TurnStep | null {
  return step && step.correlation >= MIN_TURN_CORRELATION ? step : null;
}

function matchTo(
  tracker: TurnTracker,
  index: number,
  texture: TextureView,
  predictedDeg: number,
  reachDeg: number,
): TurnStep | null {
  const keyTurn = tracker.turnDeg[index];
  const match = textureShift(viewOf(tracker, index), texture, {
    centreColumns: (predictedDeg - keyTurn) / AZIMUTH_STEP_DEG,
    reachColumns: reachDeg / AZIMUTH_STEP_DEG,
  });
  if (!match) return null;
  return {
    turnDeg: keyTurn + match.leftColumns * AZIMUTH_STEP_DEG,
    correlation: match.correlation,
  };
}

/** After a loss: the best place over a wider range against several frames from before it, `from` the latest. */
function foundAgain(
  tracker: TurnTracker,
  texture: TextureView,
  absentS: number,
  from = tracker.turnDeg.length - 1,
): TurnStep | null {
  const last = tracker.turnDeg.length - 1;
  const wideDeg = (RELOCK_DEG_PER_S + Math.abs(tracker.rateDegPerS)) * absentS;
  const reach = Math.min(RELOCK_MAX_DEG, Math.max(RELOCK_MIN_DEG, wideDeg));
  const predicted = tracker.turnDeg[last];
  let best: TurnStep | null = null;
  for (const index of framesBack(tracker, from, [0, 4, 10, 20])) {
    const keyTurn = tracker.turnDeg[index];
    const match = textureShift(viewOf(tracker, index), texture, {
      centreColumns: (predicted - keyTurn) / AZIMUTH_STEP_DEG,
      reachColumns: reach / AZIMUTH_STEP_DEG,
    });
    if (!match || match.correlation < RELOCK_MIN_CORRELATION) continue;
    if (match.correlation - match.rivalCorrelation < RELOCK_LEAD) continue;
    if (!best || match.correlation > best.correlation) {
      best = {
        turnDeg: keyTurn + match.leftColumns * AZIMUTH_STEP_DEG,
        correlation: match.correlation,
      };
    }
  }
  return best;
}

/** Indices of the latest frames at least so many degrees of turn before a frame. */
function framesBack(tracker: TurnTracker, last: number, degreesBack: readonly number[]): number[] {
  const found: number[] = [];
  let k = 0;
  for (let i = last; i >= 0 && k < degreesBack.length; i--) {
    if (Math.abs(tracker.turnDeg[i] - tracker.turnDeg[last]) >= degreesBack[k]) {
      found.push(i);
      k++;
    }
  }
  return found;
}

function accept(
  tracker: TurnTracker,
  texture: Int8Array,
  rawTexture: Int8Array,
  timeS: number,
  step: TurnStep,
): TurnStep {
  const last = tracker.turnDeg.length - 1;
  const moved = last < 0 ? 0 : step.turnDeg - tracker.turnDeg[last];
  if (last >= 0) {
    const elapsedS = Math.max(1e-3, timeS - tracker.timeS[last]);
    const share = 1 - Math.exp(-elapsedS / RATE_MEMORY_S);
    tracker.rateDegPerS += share * (moved / elapsedS - tracker.rateDegPerS);
  }
  learnStanding(tracker, rawTexture, Math.abs(moved));
  tracker.textures.push(texture);
  tracker.timeS.push(timeS);
  tracker.turnDeg.push(step.turnDeg);
  tracker.correlation.push(step.correlation);
  const index = tracker.turnDeg.length - 1;
  judgeFrame(tracker.doubt, index, step.correlation, tracker.turnDeg);
  if (tracker.doubt.sure !== null) return step;
  if (Math.abs(step.turnDeg - tracker.turnDeg[tracker.key]) >= KEY_SPACING_DEG) tracker.key = index;
  return step;
}

/** While the wheel stands still nothing is learnt: the tread itself would be taken for standing. */
function learnStanding(tracker: TurnTracker, rawTexture: Int8Array, movedDeg: number): void {
  const share = Math.min(0.2, movedDeg / STANDING_MEMORY_DEG);
  if (share <= 0) return;
  const { standing } = tracker;
  for (let i = 0; i < standing.length; i++) standing[i] += share * (rawTexture[i] - standing[i]);
}

function withoutStanding(tracker: TurnTracker, rawTexture: Int8Array): Int8Array {
  const { standing } = tracker;
  const out = new Int8Array(rawTexture.length);
  for (let i = 0; i < out.length; i++) {
    // Zero stands for unknown and stays so; a known cell that comes to zero is moved off it.
    if (rawTexture[i] === 0) continue;
    out[i] = Math.max(-127, Math.min(127, Math.round(rawTexture[i] - standing[i]) || 1));
  }
  return out;
}
