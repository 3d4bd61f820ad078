import { beforeAll, describe, expect, it } from 'vitest';

import { drawnCamera, drawnPixel } from '../../samples/drawnWheel/drawnCamera.ts';
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
import { boarded, sleeved } from './spoiltPictures.ts';

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

/**
 * A border that runs as the tread does stands where an edge might: followed, it would make a wheel of 16 g
 * a balanced one. It is told by the tread, which moves past it.
 */
describe('a card whose border runs along the tread', () => {
  let wheel: ReturnType<typeof drawn>;
  beforeAll(() => {
    wheel = drawn({ ...CROSS, seed: 8 });
  });

  it('is not followed below the line', () => {
    const border = rowsAlongTread(-8);
    expectRefused(
      wheel.read((p) => boarded(p, 'below', border, 30)),
      'view-blocked',
    );
  });

  it('is not followed above the line', () => {
    const border = rowsAlongTread(8);
    expectRefused(
      wheel.read((p) => boarded(p, 'above', border, 140)),
      'view-blocked',
    );
  });
});

it('reads a balanced wheel on a level plate, whose own edge stands as a card would', () => {
  const still = { unbalanceGmm: 50, standMrad: 0, rockingMm: 0 };
  const { reading } = drawn(still).read((p) => p);
  expect(accepted(reading).unbalance.amountGmm).toBeLessThan(1.5 * SHED_SCENE.weightRadiusMm);
}, 120_000);

/** What passes says nothing of an edge that stands, though the tread is found again wildly while it does. */
it('reads a nearly balanced wheel before which a hand passes four times', () => {
  const passing: Change = (picture, share) => {
    const phase = (4 * share) % 1;
    if (phase > 0.3) return picture;
    const from = 1.3 * (phase / 0.3) - 0.3;
    return sleeved(picture, Math.max(0, from), Math.min(1, from + 0.3));
  };
  const { reading } = drawn({ unbalanceGmm: 150 }).read(passing);
  expect(accepted(reading).unbalance.amountGmm).toBeLessThan(2.5 * SHED_SCENE.weightRadiusMm);
}, 120_000);

/** Picture row, by column, of the circle so far above the line: the tread's own way through the picture. */
function rowsAlongTread(heightMm: number): (column: number) => number {
  const camera = drawnCamera(SMALL);
  const rows = new Float64Array(SMALL.widthPx);
  const { edgeRadiusMm } = SHED_SCENE;
  for (let bearingDeg = -59; bearingDeg <= 59; bearingDeg += 0.05) {
    const bearing = (bearingDeg * Math.PI) / 180;
    const [x, y] = [edgeRadiusMm * Math.cos(bearing), edgeRadiusMm * Math.sin(bearing)];
    const { xPx, yPx } = drawnPixel(camera, [x, y, heightMm]);
    if (xPx >= 0 && xPx < rows.length) rows[Math.floor(xPx)] = yPx;
  }
  const atSides = Math.min(...rows.filter((row) => row > 0));
  return (column) => rows[column] || atSides;
}
