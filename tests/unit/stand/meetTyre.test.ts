import { describe, expect, it } from 'vitest';

import { tyreMeeter } from '../../../samples/stand/cpu/meetTyre.ts';
import { standMotion } from '../../../samples/stand/motion/standMotion.ts';
import { standScene } from '../../../samples/stand/scene/readScene.ts';
import { skinPoint, profileLengthMm } from '../../../samples/stand/shape/tyreProfile.ts';
import { frameView } from '../../../samples/stand/view/frameView.ts';
import { sightSlopes } from '../../../samples/stand/view/standCamera.ts';
import { standModel } from '../../../samples/stand/view/standModel.ts';

/**
 * What lines of sight meet, against a slow walk through a section drawn as points: no Newton, no
 * arcs, no short cuts from the line before.
 */
const scene = standScene({ camera: { widthPx: 640, heightPx: 360 } });
const model = standModel(scene);
const { profile, rim } = model;
const WALK_MM = 0.25;
/** Across the surface the walk is at most a step late, and the section's points lie a tenth apart. */
const APART_MM = WALK_MM + 0.1;
/** Flatter sights run along the skin for millimetres within that: only their kind is compared. */
const FLAT = 0.4;

/** Half width of the rubber at each radius, one value a tenth of a millimetre. */
const halfWidthMm = sectionByRadius();

function sectionByRadius(): Float64Array {
  const widths = new Float64Array(10 * (Math.ceil(profile.outerRadiusMm) + 1));
  for (let way = 0; way <= profileLengthMm(profile); way += 0.02) {
    const [r, z] = skinPoint(profile, way);
    const at = Math.floor(10 * r);
    widths[at] = Math.max(widths[at], z);
  }
  return widths;
}

function walked(eye: readonly number[], way: readonly number[]) {
  for (let along = 300; along < 1500; along += WALK_MM) {
    const x = eye[0] + along * way[0];
    const y = eye[1] + along * way[1];
    const z = eye[2] + along * way[2];
    const r = Math.sqrt(x * x + y * y);
    if (r < profile.flangeRadiusMm) {
      if (z > 0 && z < rim.lidMm) return { kind: 'rim', along };
    } else if (Math.abs(z) < (halfWidthMm[Math.floor(10 * r)] ?? 0)) return { kind: 'skin', along };
  }
  return { kind: 'nothing', along: Infinity };
}

describe('lines of sight of a whole picture', () => {
  const view = frameView(model, standMotion(scene, 20).pose());
  const meeter = tyreMeeter(profile, rim.lidMm);

  it('meet tyre and rim where a slow walk meets them', () => {
    const counts: Record<string, number> = {};
    let otherKind = 0;
    let all = 0;
    let rimApartMm = 0;
    let skinApartMm = 0;
    for (let row = 0; row < 360; row += 4) {
      for (let column = 0; column < 640; column += 4) {
        const [a, b] = sightSlopes(model.camera, column + 0.5, row + 0.5);
        const { ahead, right, down, eye } = view;
        const way = [0, 1, 2].map((k) => ahead[k] + a * right[k] + b * down[k]);
        const length = Math.hypot(...way);
        const [dx, dy, dz] = way.map((v) => v / length);
        meeter.meet(eye[0], eye[1], eye[2], dx, dy, dz);
        const slow = walked(eye, [dx, dy, dz]);
        all += 1;
        counts[slow.kind] = (counts[slow.kind] ?? 0) + 1;
        const across = -meeter.found.slope;
        const apart = Math.abs(slow.along - meeter.found.along);
        if (slow.kind !== meeter.found.kind) otherKind += 1;
        else if (slow.kind === 'rim') rimApartMm = Math.max(rimApartMm, apart);
        else if (slow.kind === 'skin' && across > FLAT) {
          skinApartMm = Math.max(skinApartMm, apart * across);
        }
      }
    }
    expect(counts.rim).toBeGreaterThan(500);
    expect(counts.skin).toBeGreaterThan(3000);
    expect(rimApartMm).toBeLessThan(2 * WALK_MM);
    expect(skinApartMm).toBeLessThan(APART_MM);
    // A line that only touches may be called either way by half a step.
    expect(otherKind / all).toBeLessThan(0.003);
  });
});
