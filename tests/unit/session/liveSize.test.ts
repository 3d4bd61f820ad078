import { describe, expect, it } from 'vitest';

import { edgeSeenAt, lineOnFaceAt } from '../../../samples/stand/film/filmTruth.ts';
import { standMotion } from '../../../samples/stand/motion/standMotion.ts';
import { practiceScene } from '../../../samples/stand/scene/practiceScene.ts';
import { inSize, standModel } from '../../../samples/stand/view/standModel.ts';
import { DRAW_MS, drawMs, LIVE_SIZES, liveSize } from '../../../src/session/practice/liveSize.ts';

describe('the size of a live picture', () => {
  it('is the best that is drawn in time, from the quickest machine to the slowest', () => {
    const chosen = new Set<number>();
    for (let sightMs = 1e-7; sightMs < 1e-3; sightMs *= 1.1) {
      const size = liveSize(sightMs);
      const at = size === null ? LIVE_SIZES.length : LIVE_SIZES.indexOf(size);
      chosen.add(at);
      if (size !== null) expect(drawMs(size, sightMs)).toBeLessThan(DRAW_MS);
      for (const better of LIVE_SIZES.slice(0, at)) {
        expect(drawMs(better, sightMs)).toBeGreaterThanOrEqual(DRAW_MS);
      }
    }
    expect(liveSize(1e-7)).toMatchObject({ widthPx: 1280, heightPx: 720, sights: 4 });
    expect(liveSize(1e-3)).toBeNull();
    // Every step down is taken by some machine, but those that cost more than the one before.
    expect(chosen.size).toBeGreaterThanOrEqual(5);
  });

  it('changes nothing but the size: every place is pictured where it was, in proportion', () => {
    const small = { widthPx: 160, heightPx: 120 };
    const model = standModel(practiceScene({ seed: 4, difficulty: 'run-out', ...small }));
    const pose = standMotion(model.scene, 70).pose();
    const wide = edgeSeenAt(inSize(model, 1280, 720), pose, -20);
    for (const { widthPx, heightPx } of LIVE_SIZES.filter(({ sights }) => sights === 4)) {
      const sized = inSize(model, widthPx, heightPx);
      const { camera, ...rest } = sized.scene;
      const { camera: before, ...unchanged } = model.scene;
      expect(rest).toEqual(unchanged);
      expect({ ...camera, widthPx: 0, heightPx: 0 }).toEqual({
        ...before,
        widthPx: 0,
        heightPx: 0,
      });
      const edge = edgeSeenAt(sized, pose, -20);
      expect((edge.xPx * 1280) / widthPx).toBeCloseTo(wide.xPx, 6);
      expect((edge.yPx * 1280) / widthPx).toBeCloseTo(wide.yPx, 6);
      expect(edge.heightMm).toBe(wide.heightMm);
      expect(lineOnFaceAt(sized, pose, -20).seen).toBe(lineOnFaceAt(model, pose, -20).seen);
    }
  }, 60_000);
});
