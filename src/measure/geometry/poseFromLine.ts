import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import {
  leastSquaresMinimum,
  levenbergMarquardt,
  type LevenbergMarquardtOptions,
} from '../fit/levenbergMarquardt.ts';
import { finished, type SlicedWork } from '../pace/slicedWork.ts';
import type { CameraPose } from './camera.ts';
import { circleOffsets, type LinePoints } from './circleResiduals.ts';
import { faceShares, mixtureCost } from './lineMixture.ts';
import {
  lineRadiusMm,
  parametersOfPose,
  poseOfParameters,
  POSE_PARAMETER_SIZES,
  posePriors,
  type KnownOfCamera,
} from './poseBelief.ts';
import { poseGuesses } from './poseGuesses.ts';
import { spanResiduals } from './turnedSpans.ts';

/**
 * The camera's pose from the laser line.
 *
 * The laser sheet is level, so where it meets the face of a rib it draws a horizontal circle of the
 * edge's radius about the wheel's axis. A circle of known radius in a known plane direction, seen
 * by a camera of known down tilt, gives distance, height, yaw and roll, and weakly the focal length
 * and the lens's bend; what is known of these beforehand enters as a belief with its spread, and so
 * does the way of the tread's texture through the picture once the wheel has turned.
 *
 * Which points lie on the face is not known: it is found with the pose, by expectation and
 * maximisation over what a point can be (lineMixture), from the best of many guesses.
 */
export interface PoseFit {
  readonly pose: CameraPose;
  /** Root mean square distance of the face's points from the circle's image, px. */
  readonly residualPx: number;
  /** Share of the points that lie on the circle's image, within {@link INLIER_PX}. */
  readonly inlierShare: number;
  /** Share of the points that the circle does not explain: neither on it nor fallen into a groove. */
  readonly strayShare: number;
  readonly inliers: Uint8Array;
  /** Covariance of (focalPx relative, downTiltDeg, yawDeg, rollDeg, distanceMm, heightMm, radial), 7×7. */
  readonly covariance: Float64Array;
}

/** Pooled over a turn, the line on the rib's face scatters by some tenths of a pixel. */
export const POOLED_POINT_SD_PX = 0.35;
/** From one view alone part of it may lie in a groove, pixels away, and look like a circle still. */
export const FIRST_LOOK_POINT_SD_PX = 0.7;
/** Neighbouring columns err together (crown of the tread, creep, lens): so many err on their own. */
const INDEPENDENT_POINTS = 25;
const INLIER_PX = 1.5;
/** A point this far below the circle, outside of the face, is none of the tread's, px. */
const STRAY_PX = 2.5;
/** Three of each of six blocks: fewer are no arc. */
const MIN_POINTS = 18;
/** A camera stands at least this part of the radius off the tread, and looks down on it by this slope. */
const LEAST_CLEARANCE = 0.1;
const LEAST_SLOPE = 0.1;
const GUESSES = 6;
/** The face's scatter in the rounds, times a point's own: from a wide net to the point's own. */
const ROUND_SPREADS = [3, 2, 1.5, 1, 1, 1];
/** The next round weighs the points anew: before the last a step below this share of a size ends it. */
const ROUND_STEP = 1e-5;

export function poseFromLine(
  points: LinePoints,
  known: KnownOfCamera,
): Outcome<PoseFit, 'line-lost'> {
  return finished(poseFromLineInSteps(points, known));
}

/** The same, a round of a guess at a time. */
export function* poseFromLineInSteps(
  points: LinePoints,
  known: KnownOfCamera,
): SlicedWork<Outcome<PoseFit, 'line-lost'>> {
  const n = points.xPx.length;
  if (n < MIN_POINTS) return failed('line-lost', { linePoints: n });
  let best: (Fitted & { cost: number }) | null = null;
  const trails: Trail[] = [];
  for (const guess of yield* poseGuesses(points, known, GUESSES)) {
    const fit = yield* settled(points, guess, known, trails);
    if (fit && (!best || fit.cost < best.cost)) best = fit;
  }
  if (!best) return failed('line-lost', { linePoints: n });
  return judged(best, points, known);
}

/**
 * How much better a pose explains the line than another, in units of log-likelihood with the beliefs:
 * 3 is twenty to one.
 */
export function poseLead(
  points: LinePoints,
  pose: CameraPose,
  other: CameraPose,
  known: KnownOfCamera,
): number {
  return (
    poseCost(points, parametersOfPose(other, known), known) -
    poseCost(points, parametersOfPose(pose, known), known)
  );
}

interface Fitted {
  readonly parameters: Float64Array;
  readonly covariance: Float64Array;
}

/** Parameters after each round, from one guess on. */
type Trail = Float64Array[];

/** Two poses this near to each other, in typical sizes of the parameters, go to the same end. */
const SAME_WAY = 1e-3;

/** Whether another guess stood here after as many rounds. */
function isWalked(trails: readonly Trail[], round: number, parameters: Float64Array): boolean {
  return trails.some((trail) => {
    const other = trail[round];
    return other?.every(
      (value, j) => Math.abs(value - parameters[j]) < SAME_WAY * POSE_PARAMETER_SIZES[j],
    );
  });
}

/**
 * Face and pose in turn until both stand; null also when an earlier guess, whose `trails` are here,
 * has come by the same way: most guesses end in the one or two places that there are.
 */
function* settled(
  points: LinePoints,
  guess: Float64Array,
  known: KnownOfCamera,
  trails: Trail[],
): SlicedWork<(Fitted & { cost: number }) | null> {
  const priors = posePriors(known);
  const residualSd = known.pointSdPx * independentWidening(points);
  const spans = known.spans ?? [];
  const options: LevenbergMarquardtOptions = {
    ...{ residualSd, residualSdIs: 'given', priors },
    ...{ parameterSizes: POSE_PARAMETER_SIZES, maxIterations: 30 },
  };
  const offsetsAt = (p: Float64Array) =>
    circleOffsets(points, poseOfParameters(p, known), lineRadiusMm(known));
  let fitted: Fitted = { parameters: guess, covariance: new Float64Array(0) };
  const trail: Trail = [];
  for (const [round, spread] of ROUND_SPREADS.entries()) {
    const weights = faceShares(offsetsAt(fitted.parameters), spread * known.pointSdPx).map(
      Math.sqrt,
    );
    // One array for all calls: thousands of them make up a fit.
    const misses = new Float64Array(weights.length + spans.length);
    const missesAt = (p: Float64Array): Float64Array => {
      const { rowsPx } = offsetsAt(p);
      for (let i = 0; i < rowsPx.length; i++) misses[i] = rowsPx[i] * weights[i];
      const turned = spanResiduals(spans, poseOfParameters(p, known), known.isTurnScaleOpen);
      for (let k = 0; k < spans.length; k++) misses[rowsPx.length + k] = turned[k] * residualSd;
      return misses;
    };
    if (round < ROUND_SPREADS.length - 1) {
      const onTheWay = { ...options, stepTolerance: ROUND_STEP };
      const way = leastSquaresMinimum(missesAt, fitted.parameters, onTheWay);
      if (!way.ok) return null;
      fitted = { ...fitted, parameters: way.value };
    } else {
      const fit = levenbergMarquardt(missesAt, fitted.parameters, options);
      if (!fit.ok) return null;
      fitted = fit.value;
    }
    if (isWalked(trails, round, fitted.parameters)) return null;
    trail.push(fitted.parameters);
    yield;
  }
  trails.push(trail);
  const { parameters } = fitted;
  if (!looksFromOutside(parameters, known.edgeRadiusMm)) return null;
  return { ...fitted, cost: poseCost(points, parameters, known) };
}

/** Minus log-likelihood of the line and the beliefs; as many points as err on their own have a vote. */
function poseCost(points: LinePoints, parameters: Float64Array, known: KnownOfCamera): number {
  const offsets = circleOffsets(points, poseOfParameters(parameters, known), lineRadiusMm(known));
  const votes = mixtureCost(offsets, known.pointSdPx) / independentWidening(points) ** 2;
  const beliefs = posePriors(known).reduce(
    (sum, b) => sum + ((parameters[b.index] - b.mean) / b.sd) ** 2,
    0,
  );
  const pose = poseOfParameters(parameters, known);
  const misses = spanResiduals(known.spans ?? [], pose, known.isTurnScaleOpen);
  const turned = misses.reduce((sum, z) => sum + z * z, 0);
  return votes + (beliefs + turned) / 2;
}

/** Outside of the wheel and above the sheet by enough to see the line as a curve. */
function looksFromOutside(parameters: Float64Array, radiusMm: number): boolean {
  const clearMm = parameters[4] - radiusMm;
  return clearMm > LEAST_CLEARANCE * radiusMm && parameters[5] > LEAST_SLOPE * clearMm;
}

function independentWidening(points: LinePoints): number {
  return Math.sqrt(Math.max(1, points.xPx.length / INDEPENDENT_POINTS));
}

function judged(
  fit: Fitted,
  points: LinePoints,
  known: KnownOfCamera,
): Outcome<PoseFit, 'line-lost'> {
  const pose = poseOfParameters(fit.parameters, known);
  const { rowsPx } = circleOffsets(points, pose, lineRadiusMm(known));
  const inliers = Uint8Array.from(rowsPx, (row) => (Math.abs(row) <= INLIER_PX ? 1 : 0));
  const count = inliers.reduce((sum, i) => sum + i, 0);
  const squares = rowsPx.reduce((sum, row, i) => sum + inliers[i] * row * row, 0);
  const strays = rowsPx.filter((row) => row > STRAY_PX).length;
  const inlierShare = count / rowsPx.length;
  if (count < MIN_POINTS / 2) return failed('line-lost', { inlierShare });
  return succeeded({
    pose,
    residualPx: Math.sqrt(squares / count),
    inlierShare,
    strayShare: strays / rowsPx.length,
    inliers,
    covariance: fit.covariance,
  });
}
