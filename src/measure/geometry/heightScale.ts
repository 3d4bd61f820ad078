import { cameraFromPose, projectPoint, type Camera, type CameraPose } from './camera.ts';
import { cylinderPointAtPixel } from './cylinder.ts';
import type { PoseFit } from './poseFromLine.ts';

/** Height on the nominal tread that one picture row is worth at a pixel, mm per px. */
export function heightScaleMmPerPx(
  camera: Camera,
  radiusMm: number,
  xPx: number,
  yPx: number,
): number {
  const upper = cylinderPointAtPixel(camera, radiusMm, xPx, yPx - 0.5);
  const lower = cylinderPointAtPixel(camera, radiusMm, xPx, yPx + 0.5);
  return upper && lower ? upper.zMm - lower.zMm : NaN;
}

/** What no pose can know of the scale: the tread's own shape, the lens, the level of the laser. */
const SHAPE_RELATIVE_SD = 0.007;

/**
 * Relative standard deviation of the height scale at the circle's near point, from the pose's
 * covariance (first order, numeric differences), and of what the pose does not know.
 */
export function heightScaleRelativeSd(fit: PoseFit, radiusMm: number): number {
  const { pose, covariance } = fit;
  const steps = [1e-3, 0.01, 0.01, 0.01, 0.1, 0.1, 1e-3];
  const base = Math.log(scaleOf(pose, radiusMm));
  const slope = steps.map(
    (step, i) => (Math.log(scaleOf(moved(pose, i, step), radiusMm)) - base) / step,
  );
  let variance = SHAPE_RELATIVE_SD ** 2;
  const n = steps.length;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) variance += slope[i] * slope[j] * covariance[i * n + j];
  }
  return Math.sqrt(variance);
}

function moved(pose: CameraPose, index: number, step: number): CameraPose {
  return {
    ...pose,
    focalPx: index === 0 ? pose.focalPx * Math.exp(step) : pose.focalPx,
    downTiltDeg: pose.downTiltDeg + (index === 1 ? step : 0),
    yawDeg: pose.yawDeg + (index === 2 ? step : 0),
    rollDeg: pose.rollDeg + (index === 3 ? step : 0),
    distanceMm: pose.distanceMm + (index === 4 ? step : 0),
    heightMm: pose.heightMm + (index === 5 ? step : 0),
    radial: pose.radial + (index === 6 ? step : 0),
  };
}

/** Rows are worth so many mm where the circle comes nearest to the camera. */
function scaleOf(pose: CameraPose, radiusMm: number): number {
  const camera = cameraFromPose(pose);
  const at = new Float64Array(2);
  projectPoint(camera, radiusMm, 0, 0, at);
  return heightScaleMmPerPx(camera, radiusMm, at[0], at[1]);
}
