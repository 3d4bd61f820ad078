import { SHED_SCENE, setupOf } from '../../samples/drawnWheel/scene.ts';
import type { CameraPose } from '../../src/measure/geometry/camera.ts';
import { sightOfPose } from '../../src/measure/sight/sightFinder.ts';
import { createWheelView, type WheelView } from '../../src/measure/sweep/wheelView.ts';

/** A camera as a careful person sets it up: 32° down, level, straight before the wheel. */
export const SHED_POSE: CameraPose = {
  ...{ widthPx: 1280, heightPx: 720, focalPx: 1024, downTiltDeg: 32, yawDeg: 0, rollDeg: 0 },
  ...{ distanceMm: 735, heightMm: 266, radial: 0 },
};
export const SHED_SETUP = setupOf(SHED_SCENE, { widthMm: 22, colour: 'white' });

/** How that camera, or another, sees the drawn wheel. */
export function shedView(pose: CameraPose = SHED_POSE): WheelView {
  const fit = { pose, residualPx: 0.2, inlierShare: 1, strayShare: 0 };
  const unused = { inliers: new Uint8Array(0), covariance: new Float64Array(49) };
  const sight = sightOfPose(
    SHED_SETUP,
    { ...fit, ...unused },
    { laserColour: SHED_SCENE.laserColour, lineSpreadPx: 1.5 },
  );
  if (!sight.ok) throw new Error('no sight');
  return createWheelView(SHED_SETUP, sight.value, SHED_POSE.widthPx);
}
