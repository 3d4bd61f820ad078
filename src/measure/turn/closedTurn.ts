import { AZIMUTH_STEP_DEG } from '../band/treadBand.ts';
import { textureShift } from './textureShift.ts';
import { textureView } from './textureView.ts';
import type { TurnTracker } from './turnTracker.ts';

/**
 * Closes the turn: the same tread seen one revolution apart must be 360° apart. What the texture's
 * own sum says instead is an error of scale (a wrong focal length, the tread's radius), so the
 * whole turn is scaled by it.
 */
export interface TurnClosure {
  /** True degrees for each degree that the texture summed. */
  readonly scale: number;
  /** Raw sum minus 360° between matching views, before closing, degrees. */
  readonly closureDeg: number;
  /** Pairs of views that agree on it. */
  readonly pairs: number;
  /** Median correlation of those pairs. */
  readonly correlation: number;
  /** Standard error of one revolution after closing, degrees. */
  readonly standardErrorDeg: number;
}

/** Turn between two later views that are tried, degrees. */
const PAIR_SPACING_DEG = 2;
/**
 * Views that are tried at most: as many as one whole turn has. Each takes milliseconds, and of a wheel
 * that was turned for minutes more of them would say the same.
 */
const MOST_VIEWS = 180;
/**
 * The raw sum of a revolution is within this of 360°: 7 % of error in scale. With the sight far aside a
 * first look's focal length can be 17 % short, and the sum too long by more than half of that: where nothing
 * agrees nearby, matches are looked for as far off as that error goes.
 */
const CLOSURE_REACHES_DEG = [25, 50];
/** Earlier views about the right place that are tried for each later one: so far apart, to so near the reach, degrees. */
const EARLIER_EVERY_DEG = 10;
const EARLIER_SHORT_DEG = 5;
/** Matches one revolution apart reach 0.6 to 0.9 where right and 0.1 to 0.2 where wrong. */
const MIN_PAIR_CORRELATION = 0.33;
const MIN_PAIR_LEAD = 0.1;
/** Pairs agree when they lie this close to the middle of all, degrees: a quarter of a tread pitch. */
const AGREEMENT_DEG = 1.2;
const MIN_PAIRS = 3;
const MIN_AGREEING_SHARE = 0.6;

export function closeTurn(tracker: TurnTracker): TurnClosure | null {
  const byTurn = sortedByTurn(tracker.turnDeg);
  for (const reachDeg of CLOSURE_REACHES_DEG) {
    const closure = closedWithin(tracker, byTurn, 360, reachDeg);
    if (closure) return closure;
  }
  return null;
}

/** The same where a better camera has told what the raw sum of a revolution should be, degrees. */
export function closeTurnNear(tracker: TurnTracker, revolutionDeg: number): TurnClosure | null {
  const byTurn = sortedByTurn(tracker.turnDeg);
  return closedWithin(tracker, byTurn, revolutionDeg, CLOSURE_REACHES_DEG[0]);
}

function closedWithin(
  tracker: TurnTracker,
  byTurn: readonly number[],
  revolutionDeg: number,
  reachDeg: number,
): TurnClosure | null {
  const { turnDeg } = tracker;
  const pairs: Pair[] = [];
  const offsetDeg = earliestOffsetDeg(reachDeg);
  const firstDeg = turnDeg[byTurn[0]] + revolutionDeg - reachDeg - offsetDeg;
  const spanDeg = turnDeg[byTurn[byTurn.length - 1]] - firstDeg;
  const spacingDeg = Math.max(PAIR_SPACING_DEG, spanDeg / MOST_VIEWS);
  let nextAt = firstDeg;
  for (const index of byTurn) {
    if (turnDeg[index] < nextAt) continue;
    nextAt = turnDeg[index] + spacingDeg;
    const pair = bestEarlier(tracker, byTurn, index, revolutionDeg, reachDeg);
    if (pair) pairs.push(pair);
  }
  if (pairs.length < MIN_PAIRS) return null;
  const middle = median(pairs.map((p) => p.excessDeg));
  const agreeing = pairs.filter((p) => Math.abs(p.excessDeg - middle) < AGREEMENT_DEG);
  if (agreeing.length < MIN_PAIRS || agreeing.length < MIN_AGREEING_SHARE * pairs.length)
    return null;
  return closureOf(agreeing);
}

function closureOf(agreeing: readonly Pair[]): TurnClosure {
  const closureDeg = mean(agreeing.map((p) => p.excessDeg));
  const spread = Math.sqrt(mean(agreeing.map((p) => (p.excessDeg - closureDeg) ** 2)));
  return {
    scale: 360 / (360 + closureDeg),
    closureDeg,
    pairs: agreeing.length,
    correlation: median(agreeing.map((p) => p.correlation)),
    standardErrorDeg: Math.hypot(spread / Math.sqrt(Math.min(agreeing.length, 6)), 0.05),
  };
}

function sortedByTurn(turnDeg: readonly number[]): number[] {
  return turnDeg.map((_, i) => i).sort((a, b) => turnDeg[a] - turnDeg[b]);
}

/** Of the views tried for a later one, how far from 360° before it the outermost stand, degrees. */
function earliestOffsetDeg(reachDeg: number): number {
  return EARLIER_EVERY_DEG * Math.floor((reachDeg - EARLIER_SHORT_DEG) / EARLIER_EVERY_DEG);
}

interface Pair {
  readonly excessDeg: number;
  readonly correlation: number;
}

/** The best match of a view with one about a revolution of the raw sum lower. */
function bestEarlier(
  tracker: TurnTracker,
  byTurn: readonly number[],
  index: number,
  revolutionDeg: number,
  reachDeg: number,
): Pair | null {
  let best: (Pair & { lead: number }) | null = null;
  const outermostDeg = earliestOffsetDeg(reachDeg);
  const { textures, columns } = tracker;
  const later = textureView(textures[index], columns);
  for (let offset = -outermostDeg; offset <= outermostDeg; offset += EARLIER_EVERY_DEG) {
    const earlier = nearestInTurn(
      tracker.turnDeg,
      byTurn,
      tracker.turnDeg[index] - revolutionDeg + offset,
    );
    if (earlier === null) continue;
    const raw = tracker.turnDeg[index] - tracker.turnDeg[earlier];
    const match = textureShift(textureView(textures[earlier], columns), later, {
      centreColumns: (raw - revolutionDeg) / AZIMUTH_STEP_DEG,
      reachColumns: reachDeg / AZIMUTH_STEP_DEG,
    });
    if (!match || match.correlation < MIN_PAIR_CORRELATION) continue;
    const lead = match.correlation - match.rivalCorrelation;
    if (!best || match.correlation > best.correlation) {
      best = {
        excessDeg: raw - 360 - match.leftColumns * AZIMUTH_STEP_DEG,
        correlation: match.correlation,
        lead,
      };
    }
  }
  return best && best.lead >= MIN_PAIR_LEAD ? best : null;
}

function nearestInTurn(
  turnDeg: readonly number[],
  byTurn: readonly number[],
  wantedDeg: number,
): number | null {
  let low = 0;
  let high = byTurn.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (turnDeg[byTurn[middle]] < wantedDeg) low = middle + 1;
    else high = middle;
  }
  const index = byTurn[low];
  return Math.abs(turnDeg[index] - wantedDeg) <= 5 ? index : null;
}

function mean(values: readonly number[]): number {
  return values.reduce((a, b) => a + b, 0) / values.length;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1];
}
