import { expect, it } from 'vitest';

import {
  cameraFromPose,
  projectPoint,
  type CameraPose,
} from '../../../src/measure/geometry/camera.ts';
import { focalFromFov } from '../../../src/measure/geometry/poseBelief.ts';
import { poseFromLine } from '../../../src/measure/geometry/poseFromLine.ts';

const RADIUS_MM = 305;
const DEPTH_MM = 7;
const POSE: CameraPose = {
  ...{ widthPx: 1280, heightPx: 720, focalPx: focalFromFov(64, 1280), radial: 0 },
  ...{ downTiltDeg: 32, yawDeg: 1, rollDeg: -2, distanceMm: 610, heightMm: 195 },
};

/** Pictured points of the circle that a level sheet draws so far inside of the edge. */
function linePoints(insetMm: number) {
  const camera = cameraFromPose(POSE);
  const at = new Float64Array(2);
  const xPx: number[] = [];
  const yPx: number[] = [];
  for (let bearingDeg = -45; bearingDeg <= 45; bearingDeg += 0.7) {
    const bearing = (bearingDeg * Math.PI) / 180;
    const radiusMm = RADIUS_MM - insetMm;
    projectPoint(camera, radiusMm * Math.cos(bearing), radiusMm * Math.sin(bearing), 0, at);
    xPx.push(at[0]);
    yPx.push(at[1]);
  }
  return { xPx, yPx };
}

const KNOWN = {
  ...{ widthPx: 1280, heightPx: 720, edgeRadiusMm: RADIUS_MM, pointSdPx: 0.35 },
  ...{ downTiltDeg: 32, horizontalFovDeg: 64 },
};

it('finds the camera from a groove’s floor when told how deep it lies', () => {
  const fit = poseFromLine(linePoints(DEPTH_MM), { ...KNOWN, lineInsetMm: DEPTH_MM });
  if (!fit.ok) throw new Error(fit.failure.code);
  // Exact points: what is left is how far the fit is followed.
  expect(fit.value.pose.distanceMm).toBeCloseTo(POSE.distanceMm, 0);
  expect(fit.value.pose.heightMm).toBeCloseTo(POSE.heightMm, 0);
});

it('takes the floor for a circle of the edge’s own radius, from a groove’s depth farther off', () => {
  const fit = poseFromLine(linePoints(DEPTH_MM), KNOWN);
  if (!fit.ok) throw new Error(fit.failure.code);
  // That this is as good a circle is why the edge must be asked.
  expect(fit.value.residualPx).toBeLessThan(0.2);
  const tooFarMm = fit.value.pose.distanceMm - POSE.distanceMm;
  expect(tooFarMm).toBeGreaterThan(0.7 * DEPTH_MM);
  expect(tooFarMm).toBeLessThan(2.5 * DEPTH_MM);
});
