import { describe, expect, it } from 'vitest';

import { drawnCamera, drawnRay } from '../../../samples/drawnWheel/drawnCamera.ts';
import type { YuvPicture } from '../../../src/contract/picture.ts';
import { markUsableCells } from '../../../src/measure/band/laserMask.ts';
import {
  BAND_ROWS,
  createTreadBand,
  rowOfZ,
  unrollPicture,
  zOfRowMm,
} from '../../../src/measure/band/treadBand.ts';
import { blockProfiles, layoutBlocks } from '../../../src/measure/edge/blockProfiles.ts';
import { cameraFromPose } from '../../../src/measure/geometry/camera.ts';
import { focalFromFov } from '../../../src/measure/geometry/poseBelief.ts';

const RADIUS_MM = 305;
const [WIDTH, HEIGHT] = [640, 360];
const PLACE = {
  ...{ widthPx: WIDTH, heightPx: HEIGHT, horizontalFovDeg: 64, downTiltDeg: 32 },
  ...{ yawDeg: 1, rollDeg: -2, distanceMm: 600, heightMm: 190 },
};

type Paint = (azimuthDeg: number, zMm: number) => readonly [number, number, number];

/** A cylinder painted by azimuth and height, seen by the drawing's own camera. */
function painted(paint: Paint, chromaStep: 1 | 2 = 1): YuvPicture {
  const camera = drawnCamera(PLACE);
  const y = new Uint8Array(WIDTH * HEIGHT);
  const chroma = (WIDTH / 2) * chromaStep;
  const both = new Uint8Array(chroma * HEIGHT);
  const v = chromaStep === 2 ? both.subarray(1) : new Uint8Array(both.length);
  for (let row = 0; row < HEIGHT; row++) {
    for (let column = 0; column < WIDTH; column++) {
      const [dx, dy, dz] = drawnRay(camera, column + 0.5, row + 0.5);
      const a = dx * dx + dy * dy;
      const b = PLACE.distanceMm * dx;
      const root = b * b - a * (PLACE.distanceMm ** 2 - RADIUS_MM ** 2);
      const k = (-b - Math.sqrt(root)) / a;
      const azimuth = (Math.atan2(-k * dy, PLACE.distanceMm + k * dx) * 180) / Math.PI;
      const [luma, cu, cv] = root < 0 ? [0, 0, 0] : paint(azimuth, PLACE.heightMm + k * dz);
      y[row * WIDTH + column] = luma;
      const at = (row >> 1) * chroma + (column >> 1) * chromaStep;
      both[at] = 128 + cu;
      v[at] = 128 + cv;
    }
  }
  return {
    ...{ widthPx: WIDTH, heightPx: HEIGHT, timeS: 0, y, yStride: WIDTH, u: both, v },
    ...{ chromaStride: chroma, chromaStep, chromaShift: 1, fullRange: true },
  };
}

function bandOf(picture: YuvPicture) {
  const camera = cameraFromPose({ ...PLACE, focalPx: focalFromFov(64, WIDTH), radial: 0 });
  const band = createTreadBand(camera, RADIUS_MM, 0, WIDTH);
  unrollPicture(band, picture);
  return band;
}

const waves: Paint = (azimuth, z) => [
  120 + 50 * Math.sin(azimuth / 4) + 40 * Math.cos(z / 6),
  0,
  0,
];

describe('treadBand', () => {
  it('unrolls what was painted on the cylinder', () => {
    const band = bandOf(painted(waves));
    let worst = 0;
    let seen = 0;
    for (let r = 0; r < BAND_ROWS; r++) {
      for (let c = 0; c < band.columns; c++) {
        if (!band.inPicture[r * band.columns + c]) continue;
        const want = Math.floor(waves(band.azimuthDeg[c], zOfRowMm(r))[0]);
        worst = Math.max(worst, Math.abs(band.luma[r * band.columns + c] - want));
        seen++;
      }
    }
    expect(seen).toBeGreaterThan(0.9 * BAND_ROWS * band.columns);
    // At the flanks a pixel is half a degree: bilinear of a wave of 25° misses by a step or two.
    expect(worst).toBeLessThan(4);
  });

  it('takes colour from planes apart and from planes interleaved', () => {
    const paint: Paint = (azimuth) => [90, azimuth > 0 ? 40 : -20, azimuth > 0 ? -30 : 50];
    for (const step of [1, 2] as const) {
      const band = bandOf(painted(paint, step));
      const row = Math.floor(band.chromaRows / 2) * band.chromaColumns;
      expect([band.u[row + 20], band.v[row + 20]]).toEqual([40, -30]);
      const right = row + band.chromaColumns - 20;
      expect([band.u[right], band.v[right]]).toEqual([-20, 50]);
    }
  });

  it('throws on a picture of another size', () => {
    const band = bandOf(painted(waves));
    const other = { ...painted(waves), widthPx: 320, yStride: 320 };
    expect(() => unrollPicture(band, other)).toThrow(/size/);
  });
});

describe('markUsableCells', () => {
  const lit = { green: [150, -50, -63], red: [120, -29, 85] } as const;
  for (const colour of ['green', 'red'] as const) {
    it(`leaves out what a ${colour} laser lights, and its place, and no more`, () => {
      const band = bandOf(painted((_, z) => (Math.abs(z - 12) < 2 ? lit[colour] : [90, 0, 0])));
      markUsableCells(band, colour, 1.5);
      const middle = (band.columns - 1) / 2;
      const usable = (z: number): number =>
        band.usable[Math.round(rowOfZ(z)) * band.columns + middle];
      expect([11, 12, 13].map(usable)).toEqual([0, 0, 0]);
      expect([-1, 0, 1].map(usable)).toEqual([0, 0, 0]);
      expect([30, 18, 6, 3, -3, -20, -50].map(usable)).toEqual([1, 1, 1, 1, 1, 1, 1]);
    });
  }

  // Fails: under a warm lamp, or as the white balance wanders, all of the tread is taken for lit.
  it("takes the colour that all of the tread has for the lamp's, not for the laser's", () => {
    for (const cast of [
      [-4, 14],
      [3, -10],
    ] as const) {
      const [luma, cu, cv] = lit.red;
      const paint: Paint = (_, z) =>
        Math.abs(z - 12) < 2 ? [luma, cu + cast[0], cv + cast[1]] : [90, ...cast];
      const band = bandOf(painted(paint));
      markUsableCells(band, 'red', 1.5);
      const middle = (band.columns - 1) / 2;
      const at = (z: number): number => Math.round(rowOfZ(z)) * band.columns + middle;
      expect([11, 12, 13].map((z) => band.usable[at(z)])).toEqual([0, 0, 0]);
      expect([30, 18, 6, 3, -20, -50].map((z) => band.usable[at(z)])).toEqual([1, 1, 1, 1, 1, 1]);
      // Nor is more of a glow taken off it than a tint's: 0.57 of 4, and half a step of rounding.
      expect(Math.abs(band.luma[at(-20)] - 90)).toBeLessThan(3);
    }
  });

  it('bridges a saturated core, white between coloured flanks', () => {
    const paint: Paint = (_, z) =>
      Math.abs(z - 10) < 2 ? [250, 0, 0] : Math.abs(z - 10) < 5 ? lit.green : [90, 0, 0];
    const band = bandOf(painted(paint));
    markUsableCells(band, 'green', 1);
    const middle = (band.columns - 1) / 2;
    expect(band.usable[Math.round(rowOfZ(10)) * band.columns + middle]).toBe(0);
  });

  it('does not hold a tape of another hue for laser light', () => {
    const band = bandOf(painted((azimuth) => (Math.abs(azimuth) < 3 ? [80, 67, -30] : [90, 0, 0])));
    markUsableCells(band, 'green', 1);
    const middle = (band.columns - 1) / 2;
    expect(band.usable[Math.round(rowOfZ(20)) * band.columns + middle]).toBe(1);
  });
});

describe('blockProfiles', () => {
  it('gives each block its own rows, unknown where most cells are', () => {
    const band = bandOf(
      painted((azimuth, z) => [Math.round(100 + azimuth) + (z > 0 ? 20 : 0), 0, 0]),
    );
    markUsableCells(band, 'green', 2);
    const layout = layoutBlocks(band);
    const profiles = new Float32Array(layout.azimuthsDeg.length * BAND_ROWS);
    blockProfiles(band, layout, profiles);
    layout.azimuthsDeg.forEach((azimuth, b) => {
      const at = (z: number): number => profiles[b * BAND_ROWS + Math.round(rowOfZ(z))];
      expect(Math.abs(at(15) - (120 + azimuth))).toBeLessThan(1);
      expect(Math.abs(at(-15) - (100 + azimuth))).toBeLessThan(1);
      expect(at(0)).toBeNaN();
    });
  });
});
