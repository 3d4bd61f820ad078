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
 * Before a camera there is no second look. Fails: of seeds 3 and 15 the turn, summed 33° too long by the first
 * look's camera, is not closed. Of 18 and 317 it is summed farther off than that, and closed only by what the whole
 * sweep's line and the parts of the picture beside each other say of it. Of 216 the edge was hidden at first, and
 * its height at lean zero taken from other pictures, whose lean toward the camera was off by a centimetre: the line
 * was looked for on the rib while it lay in the groove, and the camera seemed to have moved. Of 319 the same, with
 * the line in the groove all round: read 5.4 g off, far outside of its region.
 */
it.for([3, 15, 18, 216, 317, 319])('reads wheel %i from far aside before a camera', (seed) => {
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

/**
 * As films. Fails: of 18 the first look's scale is off by a quarter and its turn does not close, so that nothing but the
 * line's curve over seven blocks was left for a camera; of 215 the line lies in the groove all round, which the
 * second look took for the face, in which it was not seen for three quarters of the views in which it was due; of 216
 * see above: read 3.2 g off.
 */
it.for([18, 215, 216])('reads wheel %i from far aside as a film', (seed) => {
  const { scene, setup } = randomScene('aside', seed);
  const truth = { amountGmm: scene.unbalanceGmm, heavySpotDeg: scene.heavySpotDeg };
  const pictures = [...drawnSweep(scene).pictures()];
  expectUnbalance(accepted(readAsFilm(pictures, setup).reading), scene, truth);
});
