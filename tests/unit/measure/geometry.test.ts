import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { drawnCamera, drawnPixel, drawnRay } from '../../../samples/drawnWheel/drawnCamera.ts';
import {
  cameraFromPose,
  projectPoint,
  rayThroughPixel,
} from '../../../src/measure/geometry/camera.ts';
import { cylinderPointAtPixel, sightSlope } from '../../../src/measure/geometry/cylinder.ts';
import { FOV_DEG, onTread, poseOf, RADIUS_MM } from './tabletPose.ts';

const rad = (deg: number): number => (deg * Math.PI) / 180;

const poses = fc.record({
  downTiltDeg: fc.double({ min: 15, max: 50, noNaN: true }),
  yawDeg: fc.double({ min: -12, max: 12, noNaN: true }),
  rollDeg: fc.double({ min: -8, max: 8, noNaN: true }),
  distanceMm: fc.double({ min: 520, max: 900, noNaN: true }),
  heightMm: fc.double({ min: 100, max: 400, noNaN: true }),
});
const bearings = fc.double({ min: -45, max: 45, noNaN: true });
const heights = fc.double({ min: -60, max: 40, noNaN: true });

describe('camera', () => {
  it('agrees with the drawing’s own camera, which was written apart in another frame', () => {
    fc.assert(
      fc.property(poses, bearings, heights, (free, bearingDeg, zMm) => {
        const pose = poseOf(free);
        const camera = cameraFromPose(pose);
        const drawn = drawnCamera({ ...pose, horizontalFovDeg: FOV_DEG });
        const at = new Float64Array(2);
        const [x, y] = onTread(bearingDeg);
        expect(projectPoint(camera, x, y, zMm, at)).toBe(true);
        // 90° clockwise from above is +Y here and −y there.
        const there = drawnPixel(drawn, [x, -y, zMm]);
        expect(Math.hypot(at[0] - there.xPx, at[1] - there.yPx)).toBeLessThan(1e-8);
        const ray = rayThroughPixel(camera, at[0], at[1]);
        const other = drawnRay(drawn, at[0], at[1]);
        expect(Math.hypot(ray[0] - other[0], ray[1] + other[1], ray[2] - other[2])).toBeLessThan(
          1e-9,
        );
      }),
    );
  });

  it('bends as the drawing’s lens does, and back again', () => {
    const radials = fc.double({ min: -0.1, max: 0.05, noNaN: true });
    fc.assert(
      fc.property(poses, bearings, radials, (free, bearingDeg, radial) => {
        const camera = cameraFromPose(poseOf(free, radial));
        const at = new Float64Array(2);
        const [x, y] = onTread(bearingDeg);
        projectPoint(camera, x, y, 0, at);
        const ray = rayThroughPixel(camera, at[0], at[1]);
        const along = -free.heightMm / ray[2];
        // A millionth of a mm at half a metre: rounding.
        expect(Math.abs(free.distanceMm + along * ray[0] - x)).toBeLessThan(1e-6);
        expect(Math.abs(along * ray[1] - y)).toBeLessThan(1e-6);
        const drawn = drawnCamera({ ...camera.pose, horizontalFovDeg: FOV_DEG });
        const there = drawnPixel(drawn, [x, -y, 0]);
        const r2 = ((at[0] - 640) ** 2 + (at[1] - 360) ** 2) / camera.pose.focalPx ** 2;
        fc.pre(r2 < 0.5);
        // r·(1 + k·r²) and the division model part by 2·k²·r⁵ focal lengths: 4 px at the corners.
        const partPx = 3 * radial ** 2 * r2 ** 2.5 * camera.pose.focalPx;
        expect(Math.hypot(at[0] - there.xPx, at[1] - there.yPx)).toBeLessThan(partPx + 1e-6);
      }),
    );
  });

  it('refuses what is behind it', () => {
    const camera = cameraFromPose(
      poseOf({ downTiltDeg: 30, yawDeg: 0, rollDeg: 0, distanceMm: 600, heightMm: 200 }),
    );
    expect(projectPoint(camera, 900, 0, 200, new Float64Array(2))).toBe(false);
  });

  it('shows azimuth 90° to the left, up above down, and roll as a clockwise turn', () => {
    const at = new Float64Array(2);
    const level = { downTiltDeg: 30, yawDeg: 0, distanceMm: 600, heightMm: 200 };
    const camera = cameraFromPose(poseOf({ ...level, rollDeg: 0 }));
    projectPoint(camera, 300, 40, 0, at);
    expect(at[0]).toBeLessThan(640);
    const rowBelow = at[1];
    projectPoint(camera, 300, 40, 20, at);
    expect(at[1]).toBeLessThan(rowBelow);
    projectPoint(cameraFromPose(poseOf({ ...level, rollDeg: 5 })), 300, 40, 0, at);
    // Left of the middle a clockwise turn goes up.
    expect(at[1]).toBeLessThan(rowBelow);
  });
});

describe('cylinder', () => {
  it('finds the point again that was projected', () => {
    fc.assert(
      fc.property(poses, bearings, heights, (free, bearingDeg, zMm) => {
        // A point the cylinder itself hides comes back as the nearer one: leave those out.
        fc.pre(free.distanceMm * Math.cos(rad(bearingDeg)) > RADIUS_MM + 20);
        const camera = cameraFromPose(poseOf(free));
        const at = new Float64Array(2);
        const [x, y] = onTread(bearingDeg);
        projectPoint(camera, x, y, zMm, at);
        const found = cylinderPointAtPixel(camera, RADIUS_MM, at[0], at[1]);
        expect(Math.abs((found?.bearingDeg ?? NaN) - bearingDeg)).toBeLessThan(1e-6);
        expect(Math.abs((found?.zMm ?? NaN) - zMm)).toBeLessThan(1e-6);
      }),
    );
  });

  it('tells how much higher an inward step looks', () => {
    fc.assert(
      fc.property(poses, fc.double({ min: -40, max: 40, noNaN: true }), (free, bearingDeg) => {
        fc.pre(free.distanceMm * Math.cos(rad(bearingDeg)) > RADIUS_MM + 80);
        const camera = cameraFromPose(poseOf(free));
        const at = new Float64Array(2);
        const [x, y] = onTread(bearingDeg);
        const inward = 1 - 0.01 / RADIUS_MM;
        projectPoint(camera, x * inward, y * inward, 5, at);
        const seen = cylinderPointAtPixel(camera, RADIUS_MM, at[0], at[1]);
        const slope = sightSlope(camera, RADIUS_MM, bearingDeg, 5);
        // First order in a step of 0.01 mm, seen at a bearing that shifts by as little.
        expect(Math.abs(((seen?.zMm ?? NaN) - 5) / 0.01 - slope)).toBeLessThan(2e-3 * slope);
      }),
    );
  });

  it('is null beside the wheel', () => {
    const camera = cameraFromPose(
      poseOf({ downTiltDeg: 30, yawDeg: 0, rollDeg: 0, distanceMm: 600, heightMm: 200 }),
    );
    expect(cylinderPointAtPixel(camera, RADIUS_MM, 2000, 300)).toBeNull();
  });
});
