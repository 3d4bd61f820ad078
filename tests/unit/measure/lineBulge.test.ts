import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { normalFrom, seededRandom } from '../../../samples/drawnWheel/seededRandom.ts';
import { cameraFromPose, projectPoint } from '../../../src/measure/geometry/camera.ts';
import { focalFromFov } from '../../../src/measure/geometry/poseBelief.ts';
import { bulgesUpward } from '../../../src/measure/sight/lineBulge.ts';

const [WIDTH_PX, HEIGHT_PX, RADIUS_MM] = [1280, 720, 305];
const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** As far as a sweep may be set up: rolled by 15°, 35° aside, phones' and tablets' lenses. */
const poses = fc.record({
  downTiltDeg: double(15, 50),
  yawDeg: double(-25, 25),
  rollDeg: double(-15, 15),
  distanceMm: double(520, 900),
  fovDeg: double(45, 78),
  radial: double(-0.1, 0.05),
  seed: fc.integer({ min: 1, max: 1e6 }),
});
type Place = typeof poses extends fc.Arbitrary<infer T> ? T : never;

/** The line's points in the picture: noise, and a third of them fallen into a groove 4 mm deep. */
function linePoints({ fovDeg, seed, ...place }: Place) {
  const heightMm = (place.distanceMm - RADIUS_MM) * Math.tan((place.downTiltDeg * Math.PI) / 180);
  const size = { widthPx: WIDTH_PX, heightPx: HEIGHT_PX };
  const focalPx = focalFromFov(fovDeg, WIDTH_PX);
  const camera = cameraFromPose({ ...place, ...size, focalPx, heightMm });
  const random = seededRandom(seed);
  const normal = normalFrom(random);
  const groove = [random() * 120 - 60, 40];
  const at = new Float64Array(2);
  const xPx: number[] = [];
  const yPx: number[] = [];
  for (let bearing = -60; bearing <= 60; bearing += 1) {
    const fallen = bearing > groove[0] && bearing < groove[0] + groove[1] ? 4 : 0;
    const [c, s] = [Math.cos((bearing * Math.PI) / 180), Math.sin((bearing * Math.PI) / 180)];
    const r = RADIUS_MM - fallen;
    if (!projectPoint(camera, r * c, r * s, 0, at)) continue;
    if (at[0] < 0 || at[0] >= WIDTH_PX || at[1] < 0 || at[1] >= HEIGHT_PX) continue;
    xPx.push(at[0]);
    yPx.push(at[1] + 0.5 * normal());
  }
  return { xPx, yPx };
}

describe('which way the line is bent', () => {
  it('is never upward in an upright picture', () => {
    fc.assert(
      fc.property(poses, (place) => {
        expect(bulgesUpward(linePoints(place), WIDTH_PX)).toBe(false);
      }),
      { numRuns: 200, seed: 11 },
    );
  });

  it('is upward in a picture turned half round, where enough of it is seen', () => {
    fc.assert(
      fc.property(poses, (place) => {
        const { xPx, yPx } = linePoints(place);
        fc.pre(xPx.length > 0 && Math.max(...xPx) - Math.min(...xPx) > WIDTH_PX / 2);
        const turned = { xPx: xPx.map((x) => WIDTH_PX - x), yPx: yPx.map((y) => HEIGHT_PX - y) };
        expect(bulgesUpward(turned, WIDTH_PX)).toBe(true);
      }),
      { numRuns: 200, seed: 12 },
    );
  });

  it('is not told from noise', () => {
    const random = seededRandom(3);
    const points = (count: number) => ({
      xPx: Array.from({ length: count }, () => WIDTH_PX * random()),
      yPx: Array.from({ length: count }, () => HEIGHT_PX * random()),
    });
    for (let n = 0; n < 50; n++) expect(bulgesUpward(points(150), WIDTH_PX)).toBe(false);
    expect(bulgesUpward({ xPx: [], yPx: [] }, WIDTH_PX)).toBe(false);
  });
});
