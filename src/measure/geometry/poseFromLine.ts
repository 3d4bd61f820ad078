import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { levenbergMarquardt } from '../fit/levenbergMarquardt.ts';
import type { CameraPose } from './camera.ts';
import { circleResiduals, type LinePoints } from './circleResiduals.ts';

/**
 * The camera's pose from the laser line.
 *
 * The laser sheet is level, so where it meets the face of a rib it draws a horizontal circle of the
 * edge's radius about the wheel's axis. A circle of known radius in a known plane direction, seen
 * by a camera of known down tilt, gives distance, height, yaw and roll, and weakly the focal length;
 * what is known beforehand of tilt and field of view enters as a belief with its spread.
 */
export interface KnownOfCamera {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly downTiltDeg: number;
  /** Undefined: the spread of ordinary tablets' and phones' lenses is assumed. */
  readonly horizontalFovDeg?: number;
  readonly edgeRadiusMm: number;
  /** Standard deviation of a line point, px: how much the line is trusted beside what is known. */
  readonly pointSdPx: number;
}

export interface PoseFit {
  readonly pose: CameraPose;
  /** Root mean square distance of the line's inlying points from the circle's image, px. */
  readonly residualPx: number;
  /** Share of the points that lie on the circle's image, within {@link INLIER_PX} widened by the fit's own residual. */
  readonly inlierShare: number;
  readonly inliers: Uint8Array;
  /** Covariance of (focalPx relative, downTiltDeg, yawDeg, rollDeg, distanceMm, heightMm), 6×6. */
  readonly covariance: Float64Array;
}

/** A tablet's own sensor: about 0.3° (data sheets of such sensors; common practice). */
const DOWN_TILT_SD_DEG = 0.3;
/** An entered field of view is good to a degree or two. */
const FOV_SD_DEG = 1.5;
/** Ordinary rear cameras see 55° to 75° across a landscape picture (common practice). */
const UNKNOWN_FOV_DEG = 64;
const UNKNOWN_FOV_SD_DEG = 7;
/** A tablet on an arm hangs level to some degrees, and faces the wheel roughly. */
const ROLL_SD_DEG = 6;
const YAW_SD_DEG = 12;
/** Pooled over a turn, the line on the rib's face scatters by some tenths of a pixel. */
export const POOLED_POINT_SD_PX = 0.35;
/** From one view alone part of it may lie in a groove, pixels away, and look like a circle still. */
export const FIRST_LOOK_POINT_SD_PX = 1.2;
/** Neighbouring columns err together (crown of the tread, creep, lens): so many err on their own. */
const INDEPENDENT_POINTS = 25;
const INLIER_PX = 1.5;
const MIN_POINTS = 30;
/** A point this far above the circle's image lies in a slot or groove, px. */
const TRIM_PX = 1.2;
const TRIM_ROUNDS = 4;
/** Of the points at least this share must be left as the face. */
const MIN_FACE_SHARE = 0.3;
/** Distances from the axis to try first, in edge radii: from close by to across the shed. */
const START_DISTANCES = [1.7, 2.2, 2.9, 4];
export function poseFromLine(
  points: LinePoints,
  known: KnownOfCamera,
): Outcome<PoseFit, 'line-lost'> {
  const n = points.xPx.length;
  if (n < MIN_POINTS) return failed('line-lost', { linePoints: n });
  const focal0 = focalFromFov(known.horizontalFovDeg ?? UNKNOWN_FOV_DEG, known.widthPx);
  const starts = [points, ...partsOf(points)].flatMap((part) => startsFrom(part, focal0, known));
  let best = bestFit(points, starts, focal0, known);
  // What lies above the circle fell into a groove. Leave it out, and look again with the rest.
  for (let round = 0; best && round < TRIM_ROUNDS; round++) {
    const residuals = circleResiduals(
      points,
      toPose(best.parameters, focal0, known),
      known.edgeRadiusMm,
    );
    const face = faceOnly(points, residuals);
    if (face.xPx.length < Math.max(MIN_POINTS, MIN_FACE_SHARE * n)) break;
    best = bestFit(face, [best.parameters], focal0, known) ?? best;
  }
  if (!best) return failed('line-lost', { linePoints: n });
  const pose = toPose(best.parameters, focal0, known);
  return judged(best, circleResiduals(points, pose, known.edgeRadiusMm), pose);
}

/**
 * Starts from a part of the arc: where a long stretch fell into a groove, the rest alone leads to
 * the right circle, and all together to a wrong one between.
 */
function startsFrom(part: LinePoints, focal0: number, known: KnownOfCamera): Float64Array[] {
  const upright = START_DISTANCES.map((f) => startAt(part, f * known.edgeRadiusMm, focal0, known));
  const fit = part.xPx.length >= MIN_POINTS / 2 ? bestFit(part, upright, focal0, known) : null;
  return fit ? [...upright, fit.parameters] : upright;
}

/** Left, middle and right halves of the points, by column. */
function partsOf(points: LinePoints): LinePoints[] {
  const order = Array.from(points.xPx, (_, i) => i).sort((a, b) => points.xPx[a] - points.xPx[b]);
  const half = Math.floor(order.length / 2);
  return [0, Math.floor(half / 2), order.length - half].map((from) => {
    const at = order.slice(from, from + half);
    return { xPx: at.map((i) => points.xPx[i]), yPx: at.map((i) => points.yPx[i]) };
  });
}

interface Fitted {
  readonly parameters: Float64Array;
  readonly covariance: Float64Array;
}

function bestFit(
  points: LinePoints,
  starts: readonly Float64Array[],
  focal0: number,
  known: KnownOfCamera,
): Fitted | null {
  const n = points.xPx.length;
  const fovDeg = known.horizontalFovDeg ?? UNKNOWN_FOV_DEG;
  const fovSdDeg = known.horizontalFovDeg === undefined ? UNKNOWN_FOV_SD_DEG : FOV_SD_DEG;
  const residuals = (p: Float64Array) =>
    circleResiduals(points, toPose(p, focal0, known), known.edgeRadiusMm);
  let best: (Fitted & { cost: number }) | null = null;
  for (const start of starts) {
    const fit = levenbergMarquardt(residuals, start, {
      loss: { kind: 'cauchy', tuning: cauchyTuning(n) },
      residualSd: known.pointSdPx * Math.sqrt(Math.max(1, n / INDEPENDENT_POINTS)),
      residualSdIs: 'given',
      priors: [
        { index: 0, mean: 0, sd: focalSpread(fovDeg, fovSdDeg) },
        { index: 1, mean: known.downTiltDeg, sd: DOWN_TILT_SD_DEG },
        { index: 2, mean: 0, sd: YAW_SD_DEG },
        { index: 3, mean: 0, sd: ROLL_SD_DEG },
      ],
      parameterSizes: [0.1, 1, 1, 1, 100, 100],
    });
    if (!fit.ok) continue;
    const cost = robustCost(residuals(fit.value.parameters));
    if (!best || cost < best.cost) {
      best = { parameters: fit.value.parameters, covariance: fit.value.covariance, cost };
    }
  }
  return best;
}

/** Points not above the circle's image by more than the trim. */
function faceOnly(points: LinePoints, residuals: Float64Array): LinePoints & { xPx: number[] } {
  const xPx: number[] = [];
  const yPx: number[] = [];
  for (let i = 0; i < residuals.length; i++) {
    if (residuals[i] < -TRIM_PX) continue;
    xPx.push(points.xPx[i]);
    yPx.push(points.yPx[i]);
  }
  return { xPx, yPx };
}

/**
 * The residuals' standard deviation is widened for what neighbouring points share; what counts as
 * an outlier must not be: the tuning takes the widening back, to about three times a point's own.
 */
function cauchyTuning(points: number): number {
  return 2.385 / Math.sqrt(Math.max(1, points / INDEPENDENT_POINTS));
}

export function focalFromFov(horizontalFovDeg: number, widthPx: number): number {
  return widthPx / 2 / Math.tan((horizontalFovDeg / 2) * RAD_PER_DEG);
}

/** Relative spread of the focal length that goes with a spread of the field of view. */
function focalSpread(fovDeg: number, fovSdDeg: number): number {
  return (fovSdDeg * RAD_PER_DEG) / Math.sin(fovDeg * RAD_PER_DEG);
}

/** Parameters: ln(focal/focal0), downTiltDeg, yawDeg, rollDeg, distanceMm, heightMm. */
function toPose(p: Float64Array, focal0: number, known: KnownOfCamera): CameraPose {
  return {
    widthPx: known.widthPx,
    heightPx: known.heightPx,
    focalPx: focal0 * Math.exp(p[0]),
    downTiltDeg: p[1],
    yawDeg: p[2],
    rollDeg: p[3],
    distanceMm: p[4],
    heightMm: p[5],
  };
}

/** Height that puts the circle's near point at the line's median row, for a distance. */
function startAt(
  points: LinePoints,
  distanceMm: number,
  focal0: number,
  known: KnownOfCamera,
): Float64Array {
  const rows = Float64Array.from(points.yPx).sort();
  const lowRow = rows[Math.floor(rows.length * 0.75)];
  const down = known.downTiltDeg * RAD_PER_DEG + Math.atan((lowRow - known.heightPx / 2) / focal0);
  const heightMm = Math.max(20, (distanceMm - known.edgeRadiusMm) * Math.tan(down));
  return Float64Array.of(0, known.downTiltDeg, 0, 0, distanceMm, heightMm);
}

/**
 * Which of two circles the line lies on: sharply, since one on which most of the line lies exactly
 * and the rest in a groove is right beside one that passes near all of it.
 */
function robustCost(residuals: Float64Array): number {
  let sum = 0;
  for (const r of residuals) sum += Math.log1p((r / POOLED_POINT_SD_PX) ** 2);
  return sum;
}

function judged(
  fit: Fitted,
  residuals: Float64Array,
  pose: CameraPose,
): Outcome<PoseFit, 'line-lost'> {
  const inliers = new Uint8Array(residuals.length);
  let count = 0;
  let sum = 0;
  for (let i = 0; i < residuals.length; i++) {
    if (Math.abs(residuals[i]) > INLIER_PX) continue;
    inliers[i] = 1;
    count++;
    sum += residuals[i] * residuals[i];
  }
  const inlierShare = count / residuals.length;
  if (count < MIN_POINTS || pose.distanceMm <= 0) return failed('line-lost', { inlierShare });
  return succeeded({
    pose,
    residualPx: Math.sqrt(sum / count),
    inlierShare,
    inliers,
    covariance: fit.covariance,
  });
}
