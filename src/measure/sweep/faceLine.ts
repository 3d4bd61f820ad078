import type { LinePoints } from '../geometry/circleResiduals.ts';
import type { EdgeObservations } from './edgeObservations.ts';
import type { SweepRecording } from './sweepRecording.ts';
import { isExpected, samplesOf, uprightRows, type LineSamples } from './lineSamples.ts';
import { creepWay } from './wheelMotion.ts';
import type { WheelView } from './wheelView.ts';

/**
 * The line on the rib's face, pooled over the sweep as if the wheel had stood upright and in one
 * place: one row for each block of azimuth.
 *
 * What moves the line in the picture though the laser stands still: the wheel creeps on its ball,
 * a lean swings the face in and out, and the tread is crowned, so that the sheet lands on a larger
 * radius where it hits farther below the edge. The first two follow from the leans; the crown's
 * slope is found here from how the line moves with the gap. Where the sheet falls into a groove it
 * lands farther away, which from above is higher in the picture: of the clusters of rows in a
 * block, the lowest strong one is the face.
 *
 * `isInGroove`: the line is taken to run along a groove's floor, where it is never expected on the face.
 */
export interface FaceLine {
  readonly points: LinePoints;
  /** Growth of the tread's radius per mm below the edge, mm/mm. */
  readonly crownSlope: number;
  /** Scatter of the rows on the face after all that, px. */
  readonly scatterPx: number;
  readonly blocksSeen: number;
  /**
   * Distance of every sighting from its block's pooled row, px down, the wheel's own movement taken
   * out; observations × blocks, NaN where the line was not seen.
   */
  readonly awayPx: Float32Array;
  /** 1 for each of these where the edge stood so far below the sheet that the line is on the face. */
  readonly expected: Uint8Array;
  /** True when the pooled rows come from such sightings alone; false when there were too few. */
  readonly expectedOnly: boolean;
}

/** A crown to start from: a car tyre's shoulder slopes by some 5 % (geometry of usual crown radii). */
export const START_CROWN_SLOPE = 0.05;
const MAX_CROWN_SLOPE = 0.3;
/** Belief about the crown against the line's own word. */
const CROWN_SLOPE_SD = 0.08;
const PASSES = 3;
/** Rows of one cluster lie within this of its middle, px for a picture 1280 wide. */
const CLUSTER_HALF_PX = 1.2;
/** A cluster counts when it holds this share of the fullest one's rows. */
const CLUSTER_SHARE = 0.35;
const HISTOGRAM_STEP_PX = 0.25;
const HISTOGRAM_REACH_PX = 20;
const MIN_ROWS = 12;
/** Blocks that make a circle of the expected sightings alone. */
const LEAST_BLOCKS = 9;

export function faceLine(
  recording: SweepRecording,
  observations: EdgeObservations,
  view: WheelView,
  isInGroove = false,
): FaceLine {
  const blocks = recording.view.layout.azimuthsDeg.length;
  const way = creepWay(
    observations.leans,
    observations.turnDeg,
    view.setup.stand.ballDiameterMm / 2,
  );
  const samples = Array.from({ length: blocks }, (_, b) =>
    samplesOf(recording, observations, view, way, b),
  );
  const rowsExpected = (s: LineSamples) =>
    s.gapMm.reduce((n, gap) => n + (isExpected(gap, observations.unevenMm) ? 1 : 0), 0);
  const expectedOnly =
    !isInGroove && samples.filter((s) => rowsExpected(s) >= MIN_ROWS).length >= LEAST_BLOCKS;
  const isOnFace = (gapMm: number) => !expectedOnly || isExpected(gapMm, observations.unevenMm);
  let crownSlope = START_CROWN_SLOPE;
  let members: Uint8Array[] = [];
  for (let pass = 0; pass < PASSES; pass++) {
    members = samples.map((s) => faceMembers(s, crownSlope, isOnFace));
    crownSlope = crownFrom(samples, members);
  }
  const xPx: number[] = [];
  const yPx: number[] = [];
  let squares = 0;
  let count = 0;
  const awayPx = new Float32Array(observations.timeS.length * blocks).fill(NaN);
  const expected = new Uint8Array(awayPx.length);
  samples.forEach((s, b) => {
    const all = uprightRows(s, crownSlope);
    const rows = all.filter((_, i) => members[b][i]);
    if (rows.length < MIN_ROWS) return;
    const mean = rows.reduce((sum, r) => sum + r, 0) / rows.length;
    for (const r of rows) squares += (r - mean) ** 2;
    count += rows.length;
    all.forEach((row, i) => {
      awayPx[s.at[i] * blocks + b] = row - mean;
      expected[s.at[i] * blocks + b] = isExpected(s.gapMm[i], observations.unevenMm) ? 1 : 0;
    });
    addBlockPoints(recording, b, mean, xPx, yPx);
  });
  return {
    points: { xPx, yPx },
    crownSlope,
    scatterPx: count > 0 ? Math.sqrt(squares / count) : NaN,
    blocksSeen: xPx.length / POINTS_PER_BLOCK,
    awayPx,
    expected,
    expectedOnly,
  };
}

/** 1 for each sighting that belongs to the lowest strong cluster of rows in the picture. */
function faceMembers(
  s: LineSamples,
  crownSlope: number,
  isOnFace: (gapMm: number) => boolean,
): Uint8Array {
  const upright = uprightRows(s, crownSlope);
  const rows = upright.map((r, i) => (isOnFace(s.gapMm[i]) ? r : NaN));
  const bins = (2 * HISTOGRAM_REACH_PX) / HISTOGRAM_STEP_PX;
  const counts = new Float64Array(bins);
  for (const row of rows) {
    const at = Math.floor((row + HISTOGRAM_REACH_PX) / HISTOGRAM_STEP_PX);
    if (at >= 0 && at < bins) counts[at]++;
  }
  const half = Math.round(CLUSTER_HALF_PX / HISTOGRAM_STEP_PX);
  const sums = counts.map((_, i) => {
    let sum = 0;
    for (let k = Math.max(0, i - half); k <= Math.min(bins - 1, i + half); k++) sum += counts[k];
    return sum;
  });
  const fullest = Math.max(...sums);
  let at = bins - 1;
  while (at > 0 && sums[at] < CLUSTER_SHARE * fullest) at--;
  while (at > 0 && sums[at - 1] >= sums[at]) at--;
  const middlePx = (at + 0.5) * HISTOGRAM_STEP_PX - HISTOGRAM_REACH_PX;
  return Uint8Array.from(rows, (row) =>
    Math.abs(row - middlePx) <= CLUSTER_HALF_PX * 1.5 ? 1 : 0,
  );
}

/** Slope of the crown from the members of all blocks, each block with its own mean row. */
function crownFrom(samples: readonly LineSamples[], members: readonly Uint8Array[]): number {
  // Sightings of one turn err together: a few dozen count as independent, half a pixel each.
  const weightOf = (count: number) => 1 / (0.5 * 0.5 * Math.max(1, count / 15));
  let xx = 1 / CROWN_SLOPE_SD ** 2;
  let xy = START_CROWN_SLOPE / CROWN_SLOPE_SD ** 2;
  samples.forEach((s, b) => {
    const at: number[] = [];
    for (let i = 0; i < s.rowPx.length; i++) if (members[b][i]) at.push(i);
    if (at.length < MIN_ROWS) return;
    const meanGap = at.reduce((sum, i) => sum + s.gapMm[i], 0) / at.length;
    const meanRow = at.reduce((sum, i) => sum + s.rowPx[i] - s.movedPx[i], 0) / at.length;
    for (const i of at) {
      const x = (s.gapMm[i] - meanGap) * s.pxPerOutwardMm;
      xx += weightOf(at.length) * x * x;
      xy += weightOf(at.length) * x * (s.rowPx[i] - s.movedPx[i] - meanRow);
    }
  });
  return Math.max(0, Math.min(MAX_CROWN_SLOPE, xy / xx));
}

const POINTS_PER_BLOCK = 3;

/** Points of the first look's curve in the block's columns, moved by the block's mean row. */
function addBlockPoints(
  recording: SweepRecording,
  block: number,
  offsetPx: number,
  xPx: number[],
  yPx: number[],
): void {
  const { blockOfColumn, curvePx } = recording.lineWatch;
  const first = blockOfColumn.indexOf(block);
  const last = blockOfColumn.lastIndexOf(block);
  if (first < 0) return;
  for (let k = 0; k < POINTS_PER_BLOCK; k++) {
    const x = Math.round(first + ((k + 0.5) / POINTS_PER_BLOCK) * (last - first));
    xPx.push(x + 0.5);
    yPx.push(curvePx[x] + offsetPx);
  }
}
