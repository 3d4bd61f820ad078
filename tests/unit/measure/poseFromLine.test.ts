import { describe, expect, it } from 'vitest';

import { normalFrom, seededRandom } from '../../../samples/drawnWheel/seededRandom.ts';
import {
  cameraFromPose,
  projectPoint,
  type CameraPose,
} from '../../../src/measure/geometry/camera.ts';
import { cylinderPointAtPixel } from '../../../src/measure/geometry/cylinder.ts';
import {
  heightScaleMmPerPx,
  heightScaleRelativeSd,
} from '../../../src/measure/geometry/heightScale.ts';
import { focalFromFov } from '../../../src/measure/geometry/poseBelief.ts';
import { poseFromLine } from '../../../src/measure/geometry/poseFromLine.ts';
import { FOV_DEG, onTread, poseOf, RADIUS_MM } from './tabletPose.ts';

describe('poseFromLine', () => {
  const truth = poseOf({
    downTiltDeg: 31.5,
    yawDeg: 2,
    rollDeg: -1.5,
    distanceMm: 640,
    heightMm: 205,
  });

  function circle(movedPx: (bearingDeg: number) => number): { xPx: number[]; yPx: number[] } {
    const camera = cameraFromPose(truth);
    const at = new Float64Array(2);
    const xPx: number[] = [];
    const yPx: number[] = [];
    for (let bearing = -44; bearing <= 44; bearing += 0.6) {
      const [x, y] = onTread(bearing);
      projectPoint(camera, x, y, 0, at);
      xPx.push(at[0]);
      yPx.push(at[1] + movedPx(bearing));
    }
    return { xPx, yPx };
  }

  const solve = (points: { xPx: number[]; yPx: number[] }, fovDeg: number, downTiltDeg: number) => {
    const fit = poseFromLine(points, {
      ...{ widthPx: 1280, heightPx: 720, edgeRadiusMm: RADIUS_MM, pointSdPx: 0.35 },
      ...{ downTiltDeg, horizontalFovDeg: fovDeg },
    });
    if (!fit.ok) throw new Error(JSON.stringify(fit.failure));
    return fit.value;
  };

  it('finds the pose of an exact circle', () => {
    const { pose, residualPx, inlierShare } = solve(
      circle(() => 0),
      FOV_DEG,
      31.5,
    );
    expect(residualPx).toBeLessThan(1e-3);
    expect(inlierShare).toBe(1);
    expect(Math.abs(pose.distanceMm - 640)).toBeLessThan(0.5);
    expect(Math.abs(pose.heightMm - 205)).toBeLessThan(0.5);
    expect(Math.abs(pose.yawDeg - 2)).toBeLessThan(0.05);
    expect(Math.abs(pose.rollDeg + 1.5)).toBeLessThan(0.05);
  });

  it('leaves out what fell into slots, higher in the picture', () => {
    const normal = normalFrom(seededRandom(4));
    const inSlot = (b: number): boolean => ((b % 5) + 5) % 5 < 1.2;
    const { pose, residualPx } = solve(
      circle((b) => (inSlot(b) ? -7 : 0) + 0.2 * normal()),
      FOV_DEG,
      31.5,
    );
    expect(residualPx).toBeLessThan(0.35);
    expect(Math.abs(pose.distanceMm - 640)).toBeLessThan(4);
    expect(Math.abs(pose.yawDeg - 2)).toBeLessThan(0.25);
    expect(Math.abs(pose.rollDeg + 1.5)).toBeLessThan(0.25);
  });

  // Fails: from yaw and roll zero the fit ends beside the circle (roll 1.6° for −1.5°, yaw 3.9° for
  // 2°), though at the true pose 72 % of the points lie on it to 0.2 px.
  it('leaves out one long stretch that fell into a groove', () => {
    const normal = normalFrom(seededRandom(4));
    const points = circle((b) => (b > 5 && b < 30 ? -7 : 0) + 0.2 * normal());
    const { pose, inliers, residualPx } = solve(points, FOV_DEG, 31.5);
    expect(residualPx).toBeLessThan(0.5);
    const wrong = [...inliers].filter((inlier, i) => {
      const bearing = -44 + 0.6 * i;
      return (bearing > 5 && bearing < 30) === (inlier === 1);
    });
    expect(wrong.length).toBe(0);
    // Noise of 0.2 px over a hundred points, on what 28 % of the circle no longer ties down.
    expect(Math.abs(pose.distanceMm - 640)).toBeLessThan(8);
    expect(Math.abs(pose.yawDeg - 2)).toBeLessThan(0.5);
  });

  it('weighs a wrong field of view against the line, and says how sure it is', () => {
    const fit = solve(
      circle(() => 0),
      FOV_DEG + 1.5,
      31.8,
    );
    const camera = cameraFromPose(fit.pose);
    const known = cameraFromPose(truth);
    const perRow = (c: typeof camera): number => {
      const at = new Float64Array(2);
      projectPoint(c, RADIUS_MM, 0, 0, at);
      const above = cylinderPointAtPixel(c, RADIUS_MM, at[0], at[1] - 1);
      return above?.zMm ?? NaN;
    };
    // 1.5° of field is 3 % of focal length: 0.3 to 0.6 % of the height scale (DESIGN section 8).
    expect(Math.abs(perRow(camera) / perRow(known) - 1)).toBeLessThan(0.01);
    const focalSd = Math.sqrt(fit.covariance[0]);
    expect(Math.abs(Math.log(fit.pose.focalPx / truth.focalPx))).toBeLessThan(3 * focalSd);
  });

  /** A line and the way of the tread, seen through a bent lens; all turns told too long by a factor. */
  const throughBentLens = (told: number, isTurnScaleOpen: boolean) => {
    const bent = { ...truth, focalPx: focalFromFov(55, 1280), radial: -0.06 };
    const camera = cameraFromPose(bent);
    const pixelOf = (bearingDeg: number, zMm: number): [number, number] => {
      const at = new Float64Array(2);
      const [x, y] = onTread(bearingDeg);
      projectPoint(camera, x, y, zMm, at);
      return [at[0], at[1]];
    };
    const line = Array.from({ length: 140 }, (_, i) => pixelOf(-42 + 0.6 * i, 0));
    const points = { xPx: line.map((p) => p[0]), yPx: line.map((p) => p[1]) };
    const spans = [-30, -15, 0, 15, 30].flatMap((middle) =>
      [9, -15].map((zMm) => ({
        fromPx: pixelOf(middle - 4, zMm),
        toPx: pixelOf(middle + 4, zMm),
        ...{ radiusMm: RADIUS_MM, turnDeg: 8 * told, sdDeg: 0.06 },
      })),
    );
    const fit = poseFromLine(points, {
      ...{ widthPx: 1280, heightPx: 720, edgeRadiusMm: RADIUS_MM, pointSdPx: 0.35 },
      ...{ downTiltDeg: 31.8, spans, isTurnScaleOpen },
    });
    if (!fit.ok) throw new Error(JSON.stringify(fit.failure));
    const scale = (pose: CameraPose) =>
      heightScaleMmPerPx(cameraFromPose(pose), RADIUS_MM, 640, 420);
    return {
      scaleError: Math.abs(scale(fit.value.pose) / scale(bent) - 1),
      focalError: Math.abs(fit.value.pose.focalPx / bent.focalPx - 1),
      scaleSd: heightScaleRelativeSd(fit.value, RADIUS_MM),
    };
  };

  it('takes the height scale from the way of the tread, through a bent lens of unknown focal length', () => {
    const { scaleError, focalError, scaleSd } = throughBentLens(1, false);
    // Believed: 64° give or take 7 (18 % of focal length), and no bend.
    expect(scaleError).toBeLessThan(0.01);
    expect(focalError).toBeLessThan(0.09);
    expect(scaleSd).toBeLessThan(0.012);
  });

  it('learns as much from a turn that has not closed, by its parts beside each other', () => {
    const open = throughBentLens(1.08, true);
    expect(open.scaleError).toBeLessThan(0.02);
    expect(open.focalError).toBeLessThan(0.1);
    // Taken for exact, the same turn spoils the camera: this is what the factor is for.
    expect(throughBentLens(1.08, false).scaleError).toBeGreaterThan(0.03);
  });

  it('fails as a value on too few points', () => {
    const points = circle(() => 0);
    const few = { xPx: points.xPx.slice(0, 20), yPx: points.yPx.slice(0, 20) };
    const fit = poseFromLine(few, {
      ...{ widthPx: 1280, heightPx: 720, edgeRadiusMm: RADIUS_MM, pointSdPx: 0.35 },
      downTiltDeg: 31.5,
    });
    expect(fit.ok).toBe(false);
  });
});
