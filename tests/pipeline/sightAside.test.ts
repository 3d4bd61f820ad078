import { expect, it } from 'vitest';

import { drawnSweep } from '../../samples/drawnWheel/drawnSweep.ts';
import { createSweepReader } from '../../src/measure/sweepReader.ts';
import { randomScene } from '../tools/randomScene.ts';
import { accepted, expectUnbalance, readAsFilm } from './readDrawnSweep.ts';

/**
 * The sight 35° off the place nearest to the camera, no field of view entered: of the tread only nine
 * blocks are in view, and the line's way over them must do for a camera.
 */
/**
 * Before a camera there is no second look. Fails: of seed 3 the turn, summed 33° too long by the first look's
 * camera, is not closed; of 15 the same.
 */
it.for([3, 15])('reads wheel %i from far aside before a camera', (seed) => {
  const { scene, setup } = randomScene('aside', seed);
  const live = createSweepReader(setup);
  for (const picture of drawnSweep(scene).pictures()) live.addFrame(picture);
  const truth = { amountGmm: scene.unbalanceGmm, heavySpotDeg: scene.heavySpotDeg };
  expectUnbalance(accepted(live.finish().reading), scene, truth);
});

it('reads a wheel from far aside, where nine blocks of the tread are all there is', () => {
  const { scene, setup } = randomScene('aside', 6);
  const pictures = [...drawnSweep(scene).pictures()];
  const live = createSweepReader(setup);
  for (const picture of pictures) live.addFrame(picture);
  expect(live.finish().reading.status).toBe('ok');
  const truth = { amountGmm: scene.unbalanceGmm, heavySpotDeg: scene.heavySpotDeg };
  expectUnbalance(accepted(readAsFilm(pictures, setup).reading), scene, truth);
});
