import { AZIMUTH_STEP_DEG } from '../band/treadBand.ts';
import { textureCorrelations } from './textureCorrelation.ts';
import { textureView, type TextureView } from './textureView.ts';
import { CERTAIN_GAP_S, type TurnTracker } from './turnTracker.ts';

/**
 * Whether the turn was followed without slipping by a tread pitch. Closing cannot tell: both views
 * that close the turn lie on either side of the slip, and five degrees in a turn look like an error
 * of scale. But no tyre is the same from pitch to pitch: block lengths are mixed against humming,
 * and dust and wear do the rest. So views some 14 to 27° apart, farther than the tracker's own key
 * frames, are laid over each other anywhere within a pitch and a half: they fit where the tread itself
 * fits, whatever speed and continuity made of it.
 */
export interface TurnWitness {
  /** Worst stretch: how far the tread says the turn there is off, degrees; 0 when it agrees everywhere. */
  readonly slipDeg: number;
  /** By how much the other place fits better, or (negative) the followed one, correlation. */
  readonly lead: number;
  /** Time of that stretch, s. */
  readonly timeS: number;
}

/** Way between the views that are compared, degrees. */
const VIEW_STEP_DEG = 4;
/** Ways apart of two views of a pair: nearer the tracker's own match decides, farther little is common. */
const PAIR_TURNS_DEG = [14, 20, 27];
/** One tread pitch and a half: a tracker that slips, slips by one. */
const REACH_DEG = 7.6;
const STEP_COLUMNS = 2;
/** Scale errors of a turn (3 %) over the widest pair, and half the width of a peak, degrees. */
const SAME_PLACE_DEG = 1.2;
/** The smallest pitch of a car tyre's blocks is about 3.5°: what lies between is the peak's own flank. */
const OTHER_PLACE_DEG = 2;
/** What stands still (a lamp, the laser's glow) fits where nothing has turned: not asked so near to it, degrees. */
const STANDING_DEG = 5;
/** Pairs over a stretch before they are asked. */
const MIN_PAIRS = 3;
/**
 * A pair's correlation of unlike treads scatters by 1/√800 (11 strips of 500 columns, seven of
 * which move together), and a dozen pairs, of which a few are independent, by half of that: three
 * deviations.
 */
const CONTRADICTION_LEAD = 0.05;
/** Where pictures were missing nothing but the tread vouches for the turn: one deviation. */
const VOUCHED_LEAD = 0.017;

interface ViewPair {
  readonly from: number;
  readonly to: number;
  readonly score: Float64Array;
}

export function witnessTurn(tracker: TurnTracker): TurnWitness {
  const views = viewsAlongTheWay(tracker.turnDeg);
  const pairs = views.flatMap((to) => pairsOf(tracker, views, to));
  let worst: TurnWitness = { slipDeg: 0, lead: -1, timeS: tracker.timeS[0] ?? 0 };
  for (let k = 0; k + 1 < views.length; k++) {
    const over = pairs.filter((p) => p.from <= views[k] && p.to >= views[k + 1]);
    if (over.length < MIN_PAIRS) continue;
    const verdict = verdictOf(over);
    const needed = hasGap(tracker, views[k], views[k + 1]) ? -VOUCHED_LEAD : CONTRADICTION_LEAD;
    if (verdict.lead < needed || verdict.lead <= worst.lead) continue;
    worst = { ...verdict, timeS: tracker.timeS[views[k]] };
  }
  return worst;
}

/** Indices of views a few degrees of way apart, back and forth counted. */
function viewsAlongTheWay(turnDeg: readonly number[]): number[] {
  const views: number[] = [];
  let last = Infinity;
  turnDeg.forEach((turn, i) => {
    if (Math.abs(turn - last) < VIEW_STEP_DEG) return;
    views.push(i);
    last = turn;
  });
  return views;
}

function pairsOf(tracker: TurnTracker, views: readonly number[], to: number): ViewPair[] {
  const { turnDeg, textures, columns } = tracker;
  const later = textureView(textures[to], columns);
  return PAIR_TURNS_DEG.flatMap((apartDeg) => {
    const from = views.findLast((v) => v < to && Math.abs(turnDeg[to] - turnDeg[v]) >= apartDeg);
    if (from === undefined || Math.abs(turnDeg[to] - turnDeg[from]) > apartDeg + VIEW_STEP_DEG + 2)
      return [];
    const earlier = textureView(textures[from], columns);
    return [{ from, to, score: scoresAbout(earlier, later, turnDeg[to] - turnDeg[from]) }];
  });
}

/** Correlation of two views at the turn followed between them and at others about it; NaN where not asked. */
function scoresAbout(earlier: TextureView, later: TextureView, turnDeg: number): Float64Array {
  const firstLeft = Math.round(turnDeg / AZIMUTH_STEP_DEG) - HALF_STEPS * STEP_COLUMNS;
  const count = 2 * HALF_STEPS * STEP_COLUMNS + 1;
  const scores = textureCorrelations(earlier, later, firstLeft, count, STEP_COLUMNS);
  return Float64Array.from({ length: 2 * HALF_STEPS + 1 }, (_, k) => {
    const left = firstLeft + k * STEP_COLUMNS;
    return Math.abs(left * AZIMUTH_STEP_DEG) < STANDING_DEG ? NaN : scores[k * STEP_COLUMNS];
  });
}

const STEP_DEG = STEP_COLUMNS * AZIMUTH_STEP_DEG;
const HALF_STEPS = Math.round(REACH_DEG / STEP_DEG);

/** What the pairs over one stretch say together. */
function verdictOf(pairs: readonly ViewPair[]): { slipDeg: number; lead: number } {
  let here = -2;
  let elsewhere = -2;
  let slipDeg = 0;
  for (let k = 0; k <= 2 * HALF_STEPS; k++) {
    const offDeg = (k - HALF_STEPS) * STEP_DEG;
    const asked = pairs.filter((p) => p.score[k] === p.score[k]);
    if (asked.length < MIN_PAIRS) continue;
    const mean = asked.reduce((sum, p) => sum + p.score[k], 0) / asked.length;
    if (Math.abs(offDeg) <= SAME_PLACE_DEG) here = Math.max(here, mean);
    else if (Math.abs(offDeg) >= OTHER_PLACE_DEG && mean > elsewhere) {
      elsewhere = mean;
      slipDeg = offDeg;
    }
  }
  return { slipDeg, lead: elsewhere - here };
}

function hasGap(tracker: TurnTracker, from: number, to: number): boolean {
  for (let i = from + 1; i <= to; i++) {
    if (tracker.timeS[i] - tracker.timeS[i - 1] > CERTAIN_GAP_S) return true;
  }
  return false;
}
