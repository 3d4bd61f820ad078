import { beforeAll, describe, expect, it } from 'vitest';

import { drawnSweep, type DrawnSweep } from '../../samples/drawnWheel/drawnSweep.ts';
import { SHED_SCENE, type DrawnScene } from '../../samples/drawnWheel/scene.ts';
import type { YuvPicture } from '../../src/contract/picture.ts';
import {
  accepted,
  drawnSetup,
  expectRefused,
  expectUnbalance,
  readAsFilm,
  readPictures,
} from './readDrawnSweep.ts';
import { sleeved } from './spoiltPictures.ts';

/**
 * Something before part of the tread. What it spoils first is the line, the turn or the camera's stillness,
 * and what it shows is followed as if it were tread: what is to be changed is that it stands there.
 */
const SMALL = { ...SHED_SCENE.camera, widthPx: 640, heightPx: 360 };
/** A tread of cross grooves alone: nothing runs round it. */
const CROSS = { grooves: [], blocks: { crossWidthMm: 6, stepMm: 0 } };
const TRUTH = { amountGmm: SHED_SCENE.unbalanceGmm, heavySpotDeg: SHED_SCENE.heavySpotDeg };

type Change = (picture: YuvPicture, share: number) => YuvPicture;

function drawn(changes: Partial<DrawnScene> = {}) {
  const sweep: DrawnSweep = drawnSweep({ camera: SMALL, ...changes });
  const pictures = [...sweep.pictures()];
  const changed = (change: Change) => pictures.map((p, i) => change(p, i / pictures.length));
  const setup = drawnSetup(sweep.scene);
  return {
    read: (change: Change) => readPictures(changed(change), setup).result,
    readFilm: (change: Change) => readAsFilm(changed(change), setup),
  };
}

describe('a tread with a rib', () => {
  let wheel: ReturnType<typeof drawn>;
  beforeAll(() => {
    wheel = drawn();
  });

  it('is refused as covered where a patterned sleeve hides half of it', () => {
    for (const [from, to] of [
      [0, 0.5],
      [0.5, 1],
      [0.25, 0.75],
    ]) {
      expectRefused(
        wheel.read((p) => sleeved(p, from, to)),
        'view-blocked',
      );
    }
  });

  it('is refused as covered where too little of it is left for a camera', () => {
    expectRefused(
      wheel.read((p) => sleeved(p, 0.3, 1)),
      'view-blocked',
    );
  });

  it('is refused as covered where the sleeve sways', () => {
    expectRefused(
      wheel.read((p, at) => sleeved(p, -1, 0.5 + 0.3 * Math.sin(30 * at))),
      'view-blocked',
    );
  });

  it('is read where a plain cloth hides half of it', () => {
    const { reading } = wheel.read((p) => sleeved(p, 0, 0.5, 0));
    expectUnbalance(accepted(reading), SHED_SCENE, TRUTH);
  });

  it('is read where half of it is hidden in the last half of the turn', () => {
    const { reading } = wheel.read((p, at) => (at > 0.5 ? sleeved(p, 0, 0.5) : p));
    expectUnbalance(accepted(reading), SHED_SCENE, TRUTH);
  });
});

describe('a tread that cannot be followed', () => {
  let wheel: ReturnType<typeof drawn>;
  beforeAll(() => {
    wheel = drawn(CROSS);
  });

  it('is not said to be covered where nothing covers it', () => {
    expectRefused(
      wheel.read((p) => p),
      'edge-lost',
    );
  });

  it('is not read by the sleeve that covers half of it', () => {
    for (const from of [0, 0.5]) {
      const { reading } = wheel.readFilm((p) => sleeved(p, from, from + 0.5));
      expect(reading.status === 'refused' && reading.refusals[0].code).toBe('view-blocked');
    }
  });
});
