import { beforeAll, describe, expect, it } from 'vitest';

import { seededRandom } from '../../samples/drawnWheel/seededRandom.ts';
import type { YuvPicture } from '../../src/contract/picture.ts';
import { createTreadBand, unrollPicture, zOfRowMm } from '../../src/measure/band/treadBand.ts';
import {
  cameraFromPose,
  projectPoint,
  type CameraPose,
} from '../../src/measure/geometry/camera.ts';
import { textureCorrelations } from '../../src/measure/turn/textureCorrelation.ts';
import { textureShift } from '../../src/measure/turn/textureShift.ts';
import { textureView } from '../../src/measure/turn/textureView.ts';
import { openCv, withMats, type OpenCv } from './openCv.ts';

/**
 * Against OpenCV 4.13 (as @opencvjs/web): projection, bilinear resampling and normalised
 * correlation have one definition there and one here.
 */
const POSE: CameraPose = {
  ...{ widthPx: 640, heightPx: 360, focalPx: 512, downTiltDeg: 32, yawDeg: 3, rollDeg: -2.5 },
  ...{ distanceMm: 600, heightMm: 190, radial: 0 },
};
const RADIUS_MM = 305;
let cv: OpenCv;

beforeAll(async () => {
  cv = await openCv();
});

const rad = (deg: number): number => (deg * Math.PI) / 180;

/** Rotation of the room into OpenCV's camera (x right, y down, z ahead), rows; right-handed room. */
function openCvRotation(): number[] {
  const turn = (axis: 'x' | 'y' | 'z', deg: number): number[][] => {
    const [c, s] = [Math.cos(rad(deg)), Math.sin(rad(deg))];
    if (axis === 'x')
      return [
        [1, 0, 0],
        [0, c, -s],
        [0, s, c],
      ];
    if (axis === 'y')
      return [
        [c, 0, s],
        [0, 1, 0],
        [-s, 0, c],
      ];
    return [
      [c, -s, 0],
      [s, c, 0],
      [0, 0, 1],
    ];
  };
  const times = (a: number[][], b: number[][]): number[][] =>
    a.map((row) => [0, 1, 2].map((j) => row.reduce((sum, v, k) => sum + v * b[k][j], 0)));
  // Room x toward the camera, y right in the picture, z up: right = y, down = −z, ahead = −x.
  const facing = [
    [0, 1, 0],
    [0, 0, -1],
    [-1, 0, 0],
  ];
  const turned = times(turn('x', POSE.downTiltDeg), times(turn('y', -POSE.yawDeg), facing));
  return times(turn('z', POSE.rollDeg), turned).flat();
}

describe('against OpenCV', () => {
  it('projects as cv.projectPoints does', () => {
    const points: number[] = [];
    const ours: number[] = [];
    const camera = cameraFromPose(POSE);
    const at = new Float64Array(2);
    for (let bearing = -45; bearing <= 45; bearing += 9) {
      for (const z of [-60, -20, 0, 15, 40]) {
        const [x, y] = [RADIUS_MM * Math.cos(rad(bearing)), RADIUS_MM * Math.sin(rad(bearing))];
        projectPoint(camera, x, y, z, at);
        ours.push(at[0], at[1]);
        // OpenCV's room is right-handed: azimuth 90° clockwise lies at −y.
        points.push(x, -y, z);
      }
    }
    const r = openCvRotation();
    const eye = [POSE.distanceMm, 0, POSE.heightMm];
    const shift = [0, 1, 2].map((i) => -eye.reduce((sum, v, k) => sum + r[3 * i + k] * v, 0));
    const theirs = withMats((keep) => {
      const f64 = cv.CV_64F;
      const room = keep(cv.matFromArray(points.length / 3, 3, f64, points));
      const matrix = keep(cv.matFromArray(3, 3, f64, r));
      const rvec = keep(new cv.Mat());
      cv.Rodrigues(matrix, rvec);
      const tvec = keep(cv.matFromArray(3, 1, f64, shift));
      const [f, cx, cy] = [POSE.focalPx, POSE.widthPx / 2, POSE.heightPx / 2];
      const inner = keep(cv.matFromArray(3, 3, f64, [f, 0, cx, 0, f, cy, 0, 0, 1]));
      const lens = keep(cv.Mat.zeros(1, 5, f64));
      const out = keep(new cv.Mat());
      cv.projectPoints(room, rvec, tvec, inner, lens, out);
      return Array.from(out.data64F);
    });
    expect(theirs.length).toBe(ours.length);
    theirs.forEach((value, i) => expect(Math.abs(value - ours[i])).toBeLessThan(1e-6));
  });

  it('unrolls luma as cv.remap with INTER_LINEAR does', () => {
    const random = seededRandom(3);
    const size = POSE.widthPx * POSE.heightPx;
    // Smooth and rough at once: where a pixel is taken from shows, and how it is weighed.
    const y = Uint8Array.from({ length: size }, (_, i) => {
      const [row, column] = [Math.floor(i / POSE.widthPx), i % POSE.widthPx];
      return 100 + 50 * Math.sin(column / 9) * Math.cos(row / 7) + 60 * random();
    });
    const grey = new Uint8Array(size / 4).fill(128);
    const picture: YuvPicture = {
      ...{ widthPx: 640, heightPx: 360, timeS: 0, y, yStride: 640, u: grey, v: grey },
      ...{ chromaStride: 320, chromaStep: 1, chromaShift: 1, fullRange: true },
    };
    const camera = cameraFromPose(POSE);
    const band = createTreadBand(camera, RADIUS_MM, 0, 640);
    unrollPicture(band, picture);
    const mapX = new Float32Array(band.luma.length);
    const mapY = new Float32Array(band.luma.length);
    const at = new Float64Array(2);
    for (let i = 0; i < mapX.length; i++) {
      const bearing = rad(band.azimuthDeg[i % band.columns]);
      const z = zOfRowMm(Math.floor(i / band.columns));
      projectPoint(camera, RADIUS_MM * Math.cos(bearing), RADIUS_MM * Math.sin(bearing), z, at);
      // OpenCV counts from the centre of the top-left pixel.
      mapX[i] = at[0] - 0.5;
      mapY[i] = at[1] - 0.5;
    }
    const theirs = withMats((keep) => {
      const [rows, columns] = [band.rows, band.columns];
      const source = keep(cv.matFromArray(360, 640, cv.CV_8U, Array.from(y)));
      const xs = keep(cv.matFromArray(rows, columns, cv.CV_32F, Array.from(mapX)));
      const ys = keep(cv.matFromArray(rows, columns, cv.CV_32F, Array.from(mapY)));
      const out = keep(new cv.Mat());
      cv.remap(source, out, xs, ys, cv.INTER_LINEAR, cv.BORDER_CONSTANT, new cv.Scalar(0));
      return Uint8Array.from(out.data);
    });
    let worst = 0;
    let sum = 0;
    let seen = 0;
    band.luma.forEach((value, i) => {
      if (!band.inPicture[i]) return;
      worst = Math.max(worst, Math.abs(value - theirs[i]));
      sum += value - theirs[i];
      seen++;
    });
    expect(seen).toBeGreaterThan(40_000);
    // OpenCV weighs in 1/32 of a pixel, we in 1/256: of differences up to 100 steps a few remain.
    expect(worst).toBeLessThanOrEqual(4);
    expect(Math.abs(sum / seen)).toBeLessThan(0.05);
  });

  it('correlates textures as cv.matchTemplate with TM_CCORR_NORMED does', () => {
    const [columns, strips, reach, left] = [300, 8, 20, 7];
    const random = seededRandom(11);
    const wide = Array.from({ length: strips }, () =>
      Float64Array.from({ length: columns + left }, () => 160 * (random() - 0.5)),
    );
    const smooth = (row: Float64Array, i: number): number =>
      Math.round((row[i - 1] + row[i] + row[i + 1]) / 2) || 1;
    const cut = (from: number): Int8Array =>
      Int8Array.from({ length: strips * columns }, (_, i) => {
        const at = from + (i % columns);
        return smooth(wide[Math.floor(i / columns)], Math.max(1, Math.min(columns + left - 2, at)));
      });
    const before = cut(0);
    const after = cut(left);
    // The middle of `after` against all of `before`: the same overlap at every shift.
    const scores = withMats((keep) => {
      const floats = (values: Int8Array, from: number, to: number) =>
        keep(
          cv.matFromArray(
            strips,
            to - from,
            cv.CV_32F,
            Array.from({ length: strips }, (_, s) => [
              ...values.subarray(s * columns + from, s * columns + to),
            ]).flat(),
          ),
        );
      const out = keep(new cv.Mat());
      const mask = keep(new cv.Mat());
      const image = floats(before, 0, columns);
      const template = floats(after, reach, columns - reach);
      cv.matchTemplate(image, template, out, cv.TM_CCORR_NORMED, mask);
      return Array.from(out.data32F);
    });
    const middle = (shift: number): number => {
      // Unknown (0) outside the template's columns leaves the same cells to ours.
      const masked = after.map((v, i) =>
        i % columns < reach || i % columns >= columns - reach ? 0 : v,
      );
      const views = [before, masked].map((values) => textureView(values, columns));
      return textureCorrelations(views[0], views[1], shift, 1)[0];
    };
    for (let shift = -reach; shift <= reach; shift++) {
      expect(Math.abs(scores[shift + reach] - middle(shift))).toBeLessThan(1e-5);
    }
    const peak = scores.indexOf(Math.max(...scores)) - reach;
    expect(peak).toBe(left);
    const [first, second] = [before, after].map((values) => textureView(values, columns));
    const found = textureShift(first, second, { centreColumns: 0, reachColumns: reach });
    expect(Math.round(found!.leftColumns)).toBe(peak);
  });
});
