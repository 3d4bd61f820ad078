import { beforeAll, expect, it } from 'vitest';

import { filmNoise } from '../../samples/stand/cpu/filmNoise.ts';
import { renderPicture } from '../../samples/stand/cpu/renderPicture.ts';
import { filmSetup } from '../../samples/stand/film/filmSetup.ts';
import { scriptedPoses } from '../../samples/stand/motion/scriptedPoses.ts';
import { readScene } from '../../samples/stand/scene/readScene.ts';
import { standModel } from '../../samples/stand/view/standModel.ts';
import type { YuvPicture } from '../../src/contract/picture.ts';
import { readSetup, type SweepSetup } from '../../src/contract/setup.ts';
import { subtractVectors, vectorAmount, vectorFromPolar } from '../../src/quantities/vector.ts';
import { accepted, expectSoFarAsRead, readPictures } from './readDrawnSweep.ts';
import { yuvFromRgb } from './yuvFromRgb.ts';

/** A tread of cross grooves alone on the practice stand, small and with few pictures. */
const UNBALANCE = { amountGmm: 3400, heavySpotDeg: 330 };
const SCENE = {
  ...{ format: 'tiltsweep.scene/1', seed: 41, wheel: { unbalance: UNBALANCE } },
  tyre: { grooves: [], blocks: { gaps: [], crossWidthMm: 5, slant: 0.4 } },
  camera: { widthPx: 480, heightPx: 270, frameRateHz: 8 },
  hand: {
    turn: [
      { timeS: 0, turnDeg: -35 },
      { timeS: 1, turnDeg: -35 },
      { timeS: 25, turnDeg: 360 },
      { timeS: 26, turnDeg: 360 },
    ],
  },
  entered: { tapEdge: false },
};

/** Lines of sight at borders: two draw them straight enough, and twice as fast as four. */
const SIGHTS = 2;

let pictures: YuvPicture[];
let setup: SweepSetup;

beforeAll(() => {
  const scene = readScene(SCENE);
  if (!scene.ok) throw new Error(JSON.stringify(scene.failure));
  const model = standModel(scene.value);
  const poses = scriptedPoses(scene.value);
  const noise = filmNoise(scene.value);
  pictures = poses.map((pose, i) => {
    const { rgb } = renderPicture(model, pose, noise.forPicture(i), SIGHTS);
    return yuvFromRgb(rgb, SCENE.camera, i / SCENE.camera.frameRateHz);
  });
  const read = readSetup(filmSetup(model, poses));
  if (!read.ok) throw new Error(JSON.stringify(read.failure));
  setup = read.value;
}, 600_000);

it('follows the outline of the tyre where nothing else runs all round, and says so', () => {
  const { result, progress } = readPictures(pictures.map(beforeFloorOf(FLOOR_LUMA)), setup);
  const reading = accepted(result.reading);
  expect(reading.edge!.kind).toBe('outline');
  expect(reading.edge!.seenShare).toBeGreaterThan(0.8);
  expect((reading.warnings ?? []).map(({ code }) => code)).toContain('outline-alone');
  expect(progress.at(-1)!.edgeKind).toBe('outline');
  expectSoFarAsRead(progress, reading);
  const { amountGmm, heavySpotDeg, covarianceGmm2 } = reading.unbalance;
  const off = subtractVectors(
    vectorFromPolar(amountGmm, heavySpotDeg),
    vectorFromPolar(UNBALANCE.amountGmm, UNBALANCE.heavySpotDeg),
  );
  const [[c00], [, c11]] = covarianceGmm2;
  // χ² with two freedoms: 95 of 100 within 2.45 standard deviations.
  expect(vectorAmount(off)).toBeLessThan(2.45 * Math.sqrt((c00 + c11) / 2));
  // And told at all: a wheel that stands still would read as balanced.
  expect(amountGmm).toBeGreaterThan(0.7 * UNBALANCE.amountGmm);
}, 240_000);

/** The floor's luma at most; rubber between its slots has 45, the stand's own floor with its joints 100. */
const FLOOR_LUMA = 55;
/** From here down the picture shows tread below the line, and the floor. */
const ROWS_BELOW_LINE = 0.6;

/** In so small a picture shadow and joints of the floor drown the outline: an even floor, of this luma at most. */
function beforeFloorOf(most: number): (picture: YuvPicture) => YuvPicture {
  return (picture) => {
    const y = picture.y.slice();
    const from = Math.round(ROWS_BELOW_LINE * picture.heightPx) * picture.yStride;
    for (let i = from; i < y.length; i++) y[i] = Math.min(y[i], most);
    return { ...picture, y };
  };
}
