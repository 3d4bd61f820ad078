import { AZIMUTH_STEP_DEG } from '../band/treadBand.ts';
import { FASTEST_STEP_DEG } from '../../contract/turnSpeed.ts';
import type { Lean } from '../edge/leanFit.ts';
import { projectPoint } from '../geometry/camera.ts';
import type { TurnedSpan } from '../geometry/turnedSpans.ts';
import { STRIP_HEIGHTS_MM } from '../turn/treadTexture.ts';
import type { TurnedSoFar } from '../sight/sightFinder.ts';
import { START_CROWN_SLOPE } from './faceLine.ts';
import { absoluteLean, treadEdgeMm, type SweepRecording } from './sweepRecording.ts';
import { roomPoint } from './wheelView.ts';

/**
 * The wheel calibrates the camera: how fast the tread moves across each part of the picture, against
 * the turn, which a whole revolution makes exact. Where the band's azimuths are stretched the
 * texture seems to move too slowly. Pairs of views some degrees apart are matched in windows of
 * the band, apart for the ribs above and below the edge's groove.
 */

/** Turn between the two views of a pair: much against the error of a match, little against a window. */
const PAIR_DEG = 8;
const PAIR_SLACK_DEG = 1;
/**
 * The same with the sight far aside: steps of over 2° from picture to picture are refused
 * (`FASTEST_STEP_DEG`), so one of two neighbours is always so near, and no sweep goes without pairs.
 * Elsewhere a sweep of such steps is better off by its line alone: a first look that took a groove's
 * floor for the face bends the rows along which texture is followed, and few coarse pairs outweigh the line.
 */
const ASIDE_SLACK_DEG = FASTEST_STEP_DEG / 2;
/** Pairs begin so far apart in turn. */
const PAIR_EVERY_DEG = 3;
/** Windows' middles and half width, as parts of the band's reach. */
const WINDOW_MIDDLES = [-0.66, -0.33, 0, 0.33, 0.66];
const WINDOW_HALF = 0.2;
/** Strips that are matched together: those above the edge's groove, and the first rib below it. */
const STRIP_GROUPS = [
  [0, 1, 2, 3, 4],
  [5, 6, 7, 8],
];
/** A speed off by a tenth is searched: well under half a tread pitch over a pair. */
const REACH_COLUMNS = 6;
const MIN_CORRELATION = 0.45;
const MIN_PAIRS = 12;
/**
 * What a window's speed cannot know, as a part of it: the tread's radius there (2 mm are 1 %), and
 * that a slot shows more of one wall and less of the other as it passes, which moves its look beside
 * itself. The first counts everywhere and more on the lower rib, the second toward the flanks.
 */
const RADIUS_SD = [0.006, 0.009];
const WALL_SD_AT_REACH = 0.025;

/** How fast one group of strips moved in one window, against the tracker's own sum of the turn. */
export interface WindowSpeed {
  readonly group: number;
  /** Middle of the window, part of the band's reach. */
  readonly middle: number;
  /** Way of the texture over the turn, and its standard error. */
  readonly ratio: number;
  readonly standardError: number;
}

/** Speeds of all windows in which enough pairs of views match: what the camera is asked for with each round. */
export function windowSpeeds(recording: SweepRecording): WindowSpeed[] {
  const pairs = pairsOf(recording);
  const reachDeg = recording.view.band.azimuthDeg[0];
  return STRIP_GROUPS.flatMap((strips, group) =>
    WINDOW_MIDDLES.flatMap((middle) => {
      const halfDeg = WINDOW_HALF * reachDeg;
      const speed = windowSpeed(recording, pairs, strips, middle * reachDeg, halfDeg);
      return speed ? [{ group, middle, ...speed }] : [];
    }),
  );
}

/**
 * What a turn that has not closed tells of the camera: the parts of the picture beside each other. A
 * focal length that is too short sees the tread go by too fast in the middle, or on one side.
 */
export function turnedSoFar(recording: SweepRecording): TurnedSoFar {
  const speeds = windowSpeeds(recording);
  return {
    spans: textureSpans(recording, speeds, 1, START_CROWN_SLOPE),
    isTurnScaleOpen: true,
  };
}

/** The same as stretches of tread from pixel to pixel, for a turn and a crown that are known better by now. */
export function textureSpans(
  recording: SweepRecording,
  speeds: readonly WindowSpeed[],
  turnScale: number,
  crownSlope: number,
): TurnedSpan[] {
  const { band, setup } = recording.view;
  const reachDeg = band.azimuthDeg[0];
  const lean = meanLean(recording);
  const spans: TurnedSpan[] = [];
  for (const { group, middle, ratio, standardError } of speeds) {
    const strips = STRIP_GROUPS[group];
    const aboveMm = strips.reduce((sum, s) => sum + STRIP_HEIGHTS_MM[s], 0) / strips.length;
    const half = (ratio * PAIR_DEG) / 2;
    const wallSd = WALL_SD_AT_REACH * Math.abs(middle);
    const fromPx = pixelAt(recording, lean, middle * reachDeg - half, aboveMm);
    const toPx = pixelAt(recording, lean, middle * reachDeg + half, aboveMm);
    if (!fromPx || !toPx) continue;
    spans.push({
      ...{ fromPx, toPx, turnDeg: PAIR_DEG * turnScale },
      radiusMm: setup.wheel.edgeRadiusMm - crownSlope * aboveMm,
      sdDeg: PAIR_DEG * Math.hypot(RADIUS_SD[group], wallSd, standardError),
    });
  }
  return spans;
}

/** Where a strip lies on the average, in the first look's own terms: along its leaning edge. */
function pixelAt(
  recording: SweepRecording,
  lean: Lean,
  azimuthDeg: number,
  aboveMm: number,
): [number, number] | null {
  const { view } = recording;
  const { gainMm, cos, sin } = view.columnBasis;
  const column = (gainMm.length - 1) / 2 - azimuthDeg / AZIMUTH_STEP_DEG;
  const c = Math.max(0, Math.min(gainMm.length - 1, Math.round(column)));
  const riseMm = gainMm[c] * (lean.toward * cos[c] + lean.across * sin[c]);
  const zMm = treadEdgeMm(recording) + aboveMm + riseMm;
  const at = new Float64Array(2);
  const { xMm, yMm } = roomPoint(view, azimuthDeg);
  return projectPoint(view.sight.camera, xMm, yMm, zMm, at) ? [at[0], at[1]] : null;
}

function meanLean(recording: SweepRecording): Lean {
  let [toward, across, n] = [0, 0, 0];
  for (const { lean } of recording.frames) {
    if (!lean) continue;
    const absolute = absoluteLean(recording, lean.lean);
    toward += absolute.toward;
    across += absolute.across;
    n++;
  }
  return { liftMm: 0, toward: toward / Math.max(1, n), across: across / Math.max(1, n) };
}

interface Pair {
  readonly before: Int8Array;
  readonly after: Int8Array;
  /** Turn between them by the tracker's own sum, degrees. */
  readonly rawDeg: number;
}

function pairsOf({ turn, view }: SweepRecording): Pair[] {
  const { turnDeg, textures } = turn;
  const order = turnDeg.map((_, i) => i).sort((a, b) => turnDeg[a] - turnDeg[b]);
  const isAside = view.sight.asideDeg !== 0;
  const slackDeg = isAside ? ASIDE_SLACK_DEG : PAIR_SLACK_DEG;
  const pairs: Pair[] = [];
  let nextDeg = -Infinity;
  let later = 0;
  for (const i of order) {
    if (turnDeg[i] < nextDeg) continue;
    while (later < order.length && turnDeg[order[later]] < turnDeg[i] + PAIR_DEG) later++;
    if (later >= order.length) break;
    nextDeg = turnDeg[i] + PAIR_EVERY_DEG;
    // The first view so far on; from aside, where pictures lie far apart, the one before it.
    const j = order
      .slice(isAside ? later - 1 : later, later + 1)
      .findLast((k) => Math.abs(turnDeg[k] - turnDeg[i] - PAIR_DEG) <= slackDeg);
    if (j === undefined) continue;
    const rawDeg = turnDeg[j] - turnDeg[i];
    pairs.push({ before: textures[i], after: textures[j], rawDeg });
  }
  return pairs;
}

/** Way of the texture in a window over the turn by the tracker's sum: median over the pairs. */
function windowSpeed(
  recording: SweepRecording,
  pairs: readonly Pair[],
  strips: readonly number[],
  middleDeg: number,
  halfDeg: number,
): { ratio: number; standardError: number } | null {
  const { columns } = recording.turn;
  const ratios: number[] = [];
  for (const { before, after, rawDeg } of pairs) {
    // The window's middle in the earlier view lies half of the turn back.
    const centre = (columns - 1) / 2 - (middleDeg - rawDeg / 2) / AZIMUTH_STEP_DEG;
    const half = halfDeg / AZIMUTH_STEP_DEG;
    const window = { first: Math.round(centre - half), last: Math.round(centre + half) };
    const left = windowShift(before, after, columns, strips, window, rawDeg / AZIMUTH_STEP_DEG);
    if (left !== null) ratios.push((left * AZIMUTH_STEP_DEG) / rawDeg);
  }
  if (ratios.length < MIN_PAIRS) return null;
  ratios.sort((a, b) => a - b);
  const at = (share: number) => ratios[Math.floor(share * (ratios.length - 1))];
  // Half the distance of the quartiles is 0.674 sd; a median's error is 1.25 sd/√n, and pairs that
  // overlap count once.
  const sd = (at(0.75) - at(0.25)) / 2 / 0.674;
  const alone = (ratios.length * PAIR_EVERY_DEG) / PAIR_DEG;
  return { ratio: at(0.5), standardError: (1.25 * sd) / Math.sqrt(alone) };
}

/** Columns to the left by which the window's texture moved, near an expectation; null without a match. */
function windowShift(
  before: Int8Array,
  after: Int8Array,
  columns: number,
  strips: readonly number[],
  window: { first: number; last: number },
  expected: number,
): number | null {
  const centre = Math.round(expected);
  if (window.first < 0 || window.last >= columns) return null;
  if (window.first - centre - REACH_COLUMNS < 0) return null;
  if (window.last - centre + REACH_COLUMNS >= columns) return null;
  const scores: number[] = [];
  for (let k = -REACH_COLUMNS; k <= REACH_COLUMNS; k++) {
    scores.push(windowCorrelation(before, after, columns, strips, window, centre + k));
  }
  const best = scores.indexOf(Math.max(...scores));
  if (scores[best] < MIN_CORRELATION || best === 0 || best === scores.length - 1) return null;
  const curvature = 2 * scores[best] - scores[best - 1] - scores[best + 1];
  if (!(curvature > 1e-9)) return null;
  const part = (scores[best + 1] - scores[best - 1]) / (2 * curvature);
  return centre - REACH_COLUMNS + best + part;
}

function windowCorrelation(
  before: Int8Array,
  after: Int8Array,
  columns: number,
  strips: readonly number[],
  { first, last }: { first: number; last: number },
  left: number,
): number {
  // Whole numbers: a window's squares come to some millions.
  let aa = 0;
  let bb = 0;
  let ab = 0;
  for (const s of strips) {
    for (let c = s * columns + first; c <= s * columns + last; c++) {
      const a = before[c];
      const b = after[c - left];
      // Zero stands for unknown.
      if (a === 0 || b === 0) continue;
      aa = (aa + Math.imul(a, a)) | 0;
      bb = (bb + Math.imul(b, b)) | 0;
      ab = (ab + Math.imul(a, b)) | 0;
    }
  }
  return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : -1;
}
