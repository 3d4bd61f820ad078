import { it } from 'vitest';

import { drawnSweep } from '../../samples/drawnWheel/drawnSweep.ts';
import { accepted, drawnSetup, expectUnbalance, readPictures } from './readDrawnSweep.ts';

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
