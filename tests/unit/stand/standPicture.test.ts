import { describe, expect, it } from 'vitest';

import { renderPicture } from '../../../samples/stand/cpu/renderPicture.ts';
import { filmSetup } from '../../../samples/stand/film/filmSetup.ts';
import {
  edgeSeenAt,
  filmTruth,
  lineOnFaceAt,
  TRUTH_AZIMUTHS_DEG,
} from '../../../samples/stand/film/filmTruth.ts';
import { standMotion } from '../../../samples/stand/motion/standMotion.ts';
import { readScene, standScene } from '../../../samples/stand/scene/readScene.ts';
import { picturedAt, sightSlopes, standCamera } from '../../../samples/stand/view/standCamera.ts';
import { standModel, withWeights } from '../../../samples/stand/view/standModel.ts';
import { readSetup } from '../../../src/contract/setup.ts';

describe('a scene file', () => {
  it('is filled up with what is usual', () => {
    const scene = readScene({ format: 'tiltsweep.scene/1', wheel: { massKg: 15 } });
    expect(scene.ok && scene.value.wheel.massKg).toBe(15);
    expect(scene.ok && scene.value.stand.ballDiameterMm).toBe(63.5);
  });

  it.each([
    [{ format: 'tiltsweep.scene/1', wheel: { masKg: 15 } }, 'wheel.masKg'],
    [{ format: 'tiltsweep.scene/1', camera: { horizontalFovDeg: 170 } }, 'camera.horizontalFovDeg'],
    [{ format: 'tiltsweep.scene/2' }, 'format'],
    ['no object', 'the whole file'],
  ])('is refused where it is wrong: %j', (json, where) => {
    const scene = readScene(json);
    expect(scene.ok).toBe(false);
    expect(!scene.ok && scene.failure.evidence).toMatchObject({ where });
  });
});

describe('the camera', () => {
  it.each([-0.05, 0, 0.05])('pictures a point where its line of sight is, distortion %d', (k) => {
    const camera = standCamera(standScene({ camera: { distortion: k, rollDeg: 3, yawDeg: 2 } }));
    const { eye, right, down, ahead } = camera.pinhole;
    for (const [x, y] of [
      [100, 90],
      [640, 360],
      [1200, 640],
    ]) {
      const [a, b] = sightSlopes(camera, x, y);
      const point = [0, 1, 2].map((i) => eye[i] + 500 * (ahead[i] + a * right[i] + b * down[i]));
      const seen = picturedAt(camera, point as never);
      expect(seen.xPx).toBeCloseTo(x, 4);
      expect(seen.yPx).toBeCloseTo(y, 4);
    }
  });
});

describe('a picture of the processor', () => {
  // Line on the rib at all azimuths: the truth's places can be looked up in the picture.
  const scene = standScene({
    wheel: { unbalance: { amountGmm: 900, heavySpotDeg: 100 } },
    stand: { edgeAboveLineMm: -9, slopeMrad: 1, startSwingMm: 0 },
    tyre: { lateralRunOut: [{ order: 1, amplitudeMm: 0.6, highAtDeg: 30 }] },
    laser: { skirt: 0 },
    camera: { widthPx: 640, heightPx: 360, distortion: 0.02, rollDeg: 2 },
  });
  const model = standModel(scene);
  const pose = standMotion(scene, 77).pose();
  const { rgb } = renderPicture(model, pose, null);
  const at = (x: number, y: number, k: number) => rgb[3 * (y * 640 + x) + k];

  it('shows the line where the truth has it, to a quarter of a pixel', () => {
    const off: number[] = [];
    for (let azimuthDeg = -40; azimuthDeg <= 40; azimuthDeg += 0.5) {
      const line = lineOnFaceAt(model, pose, azimuthDeg);
      if (!line.seen) continue;
      const x = Math.floor(line.xPx);
      let [weight, moment] = [0, 0];
      for (let y = Math.round(line.yPx) - 5; y <= line.yPx + 5; y++) {
        // Back to linear light: the centre of light is meant, not that of the curve's steps.
        const green = Math.max(0, (at(x, y, 1) / 255) ** 2.2 - 1.4 * (at(x, y, 0) / 255) ** 2.2);
        weight += green;
        moment += green * (y + 0.5);
      }
      // The line slopes: the truth's point lies beside the column's middle.
      const beside = lineOnFaceAt(model, pose, azimuthDeg - 0.5);
      const slope = (beside.yPx - line.yPx) / (beside.xPx - line.xPx);
      if (weight > 0.3) off.push(moment / weight - line.yPx - slope * (x + 0.5 - line.xPx));
    }
    expect(off.length).toBeGreaterThan(80);
    const sorted = off.map(Math.abs).sort((a, b) => a - b);
    expect(sorted[Math.floor(0.9 * sorted.length)]).toBeLessThan(0.25);
  });

  it('darkens from rib to groove at the truth’s edge, to half a pixel', () => {
    const off: number[] = [];
    for (let azimuthDeg = -30; azimuthDeg <= 30; azimuthDeg += 1) {
      const edge = edgeSeenAt(model, pose, azimuthDeg);
      const x = Math.floor(edge.xPx);
      const from = Math.round(edge.yPx) - 3;
      const luma = Array.from({ length: 7 }, (_, i) => at(x, from + i, 0));
      const step = luma.slice(1).map((v, i) => luma[i] - v);
      const steepest = step.indexOf(Math.max(...step));
      if (step[steepest] > 8) off.push(from + steepest + 1 - edge.yPx);
    }
    expect(off.length).toBeGreaterThan(25);
    const sorted = off.sort((a, b) => a - b);
    expect(Math.abs(sorted[sorted.length >> 1])).toBeLessThan(0.5);
  });

  it('is the same for the same seed', () => {
    const again = renderPicture(standModel(scene), pose, null).rgb;
    expect(Buffer.compare(again, rgb)).toBe(0);
  });

  it('keeps its size when weights are stuck on, and shows them', () => {
    const weighted = renderPicture(
      withWeights(model, [{ massG: 30, radiusMm: 185, angleDeg: 90 }]),
      pose,
      null,
    );
    expect(weighted.rgb).toHaveLength(rgb.length);
    expect(Buffer.compare(weighted.rgb, rgb)).not.toBe(0);
  });

  it('comes with a setup that the app takes, and a truth', () => {
    expect(readSetup(filmSetup(model, [pose])).ok).toBe(true);
    const truth = filmTruth(model, [pose]);
    expect(truth.unbalance.amountGmm).toBeCloseTo(900, 9);
    expect(truth.frames[0].edgePx).toHaveLength(TRUTH_AZIMUTHS_DEG.length);
    // On a rib the line lands on the face; in a cut further in, which from above is higher up.
    const { linePx, lineOnFacePx, lineSeen } = truth.frames[0];
    lineSeen.forEach((seen, q) => {
      const further = lineOnFacePx[q][1] - linePx[q][1];
      if (seen) expect(Math.abs(further)).toBeLessThan(0.3);
      else expect(further).toBeGreaterThan(0.2);
    });
    expect(new Set(lineSeen).size).toBe(2);
  });
});
