import { expect, it } from 'vitest';

import { drawnSweep } from '../../samples/drawnWheel/drawnSweep.ts';
import { accepted, drawnSetup, expectUnbalance, readPictures } from './readDrawnSweep.ts';

/**
 * A nearly balanced wheel with the line on the edge all round, and nobody touched the edge in the
 * picture: no seam may be taken for it, and what the rest of the tread shows is enough to read by.
 */
it('reads a wheel whose edge lies under the line all round', () => {
  const truth = { amountGmm: 900, heavySpotDeg: 60 };
  const { scene, pictures } = drawnSweep({
    ...{ edgeAboveLineMm: 0.5, unbalanceGmm: truth.amountGmm, heavySpotDeg: truth.heavySpotDeg },
  });
  const { result, progress } = readPictures(pictures(), drawnSetup(scene));
  expectUnbalance(accepted(result.reading), scene, truth);
  // The overlay shows what is followed: near the line, not a seam far above it.
  const shown = progress.findLast((p) => p.edgeHeightMm !== null);
  expect(Math.abs(shown!.edgeHeightMm!)).toBeLessThan(8);
});
