import { describe, expect, it } from 'vitest';

import { drawnSweep } from '../../samples/drawnWheel/drawnSweep.ts';
import { SHED_SCENE, steadyTurn, type DrawnScene } from '../../samples/drawnWheel/scene.ts';
import { seededRandom } from '../../samples/drawnWheel/seededRandom.ts';
import type { YuvPicture } from '../../src/contract/picture.ts';
import { drawnSetup, expectRefused, readPictures } from './readDrawnSweep.ts';
import { covered } from './spoiltPictures.ts';

/**
 * What a shed may do to a sweep beyond light and laser, each with its own reason. Small pictures: a
 * refusal needs no tenth of a millimetre.
 */
const SMALL = { ...SHED_SCENE.camera, widthPx: 480, heightPx: 270 };

type Change = (picture: YuvPicture, share: number, index: number) => YuvPicture | null;

function readScene(changes: Partial<DrawnScene>, change: Change = (picture) => picture) {
  const sweep = drawnSweep({ camera: SMALL, ...changes });
  const pictures = [...sweep.pictures()];
  const seen = pictures.flatMap((p, i) => change(p, i / pictures.length, i) ?? []);
  return readPictures(seen, drawnSetup(sweep.scene));
}

describe('a tread that cannot be followed', () => {
  it('has no groove at all', () => {
    expectRefused(readScene({ grooves: [] }).result, 'edge-lost');
  });

  it('has ribs so fine that one is taken for the next', () => {
    const grooves = Array.from({ length: 10 }, (_, i) => ({
      topMm: 7.5 - 3.75 * i,
      bottomMm: 5.7 - 3.75 * i,
    }));
    expectRefused(readScene({ grooves, camera: SHED_SCENE.camera }).result, 'edge-ambiguous');
  });
});

describe('a wheel that leans too far', () => {
  it('by its own unbalance', () => {
    expectRefused(
      readScene({ unbalanceGmm: 60 * 185, heavySpotDeg: 150 }).result,
      'lean-too-large',
    );
    expectRefused(readScene({ unbalanceGmm: 140 * 185 }).result, 'lean-too-large');
  });
});

describe('a turn that cannot be followed', () => {
  it('is too fast, and said so while it turns', () => {
    const { result, progress } = readScene({
      turnPoints: steadyTurn(-30, 392, 10),
      frameRateHz: 15,
    });
    expectRefused(result, 'too-fast');
    expect(progress.filter((p) => p.turnSpeed === 'fast').length).toBeGreaterThan(50);
  });

  it('is too fast for a camera that drops two pictures of three', () => {
    const { result } = readScene({}, (p, _, i) => (i % 3 === 0 ? p : null));
    expectRefused(result, 'too-fast');
  });

  it('is hidden while something moves before the tread', () => {
    const random = seededRandom(4);
    const sleeve = (p: YuvPicture): YuvPicture => {
      const hidden = covered(p, 0, 1);
      return { ...hidden, y: hidden.y.map(() => 60 + 120 * random()) };
    };
    const { result } = readScene({}, (p, at) => (at > 0.35 && at < 0.8 ? sleeve(p) : p));
    expectRefused(result, 'view-blocked');
  });

  it('slips unseen behind a hand that covers all but the sides, twice and not for long', () => {
    const { result } = readScene({ camera: SHED_SCENE.camera }, (p, at) =>
      (at > 0.3 && at < 0.42) || (at > 0.6 && at < 0.68) ? covered(p, 0.2, 0.8) : p,
    );
    expectRefused(result, 'turn-uncertain');
  });

  it('is hidden where that hand stays there', () => {
    const { result } = readScene({ camera: SHED_SCENE.camera }, (p, at) =>
      at > 0.3 && at < 0.75 ? covered(p, 0.2, 0.8) : p,
    );
    expectRefused(result, 'view-blocked');
  });
});
