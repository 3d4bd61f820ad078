import { expect, it } from 'vitest';

import { drawnSweep } from '../../samples/drawnWheel/drawnSweep.ts';
import {
  accepted,
  drawnSetup,
  expectRefused,
  expectUnbalance,
  readPictures,
} from './readDrawnSweep.ts';

/**
 * A wheel let go just before: its rim swings by more than a groove's width from the first picture
 * on, some millimetres while the first look at the edge is taken.
 */
it('reads a wheel that rocks hard from the first picture on', () => {
  const sweep = drawnSweep({ rockingMm: 8, rockingPeriodS: 3.2 });
  const { result } = readPictures(sweep.pictures(), drawnSetup(sweep.scene));
  const truth = { amountGmm: 3000, heavySpotDeg: 60 };
  expectUnbalance(accepted(result.reading), sweep.scene, truth);
});

/**
 * Somebody knocks the wheel all through the turn, so that its rim swings by a groove's depth and no two
 * swings follow from each other: the pictures are good, and the wheel's own tilt cannot be told in them.
 */
it('refuses a wheel that is knocked about all through its turn', () => {
  const sweep = drawnSweep({
    ...{ knocks: { perS: 3, swingMm: 7 }, dampingRatio: 0.15, unbalanceGmm: 600 },
  });
  const { result } = readPictures(sweep.pictures(), drawnSetup(sweep.scene));
  expectRefused(result, 'rocking-too-strong');
  const { reading } = result;
  // By what it leaves of ±, not by how far it swings.
  expect(reading.status === 'refused' && reading.refusals[0].evidence?.radius95Mm).toBeGreaterThan(
    3,
  );
});
