import { expect, it } from 'vitest';

import { BAND_ROWS, zOfRowMm } from '../../../src/measure/band/treadBand.ts';
import type { EdgeProposal } from '../../../src/measure/edge/edgeProposal.ts';
import {
  assumedEdgeCovariance,
  hiddenEdgeCovariance,
  hiddenEdgeSdMm,
} from '../../../src/measure/sweep/assumedEdge.ts';
import { shedView } from '../../fakes/shedView.ts';

const EDGE: EdgeProposal = {
  ...{ heightMm: 0, strength: 0, plainestMm: -25, isAssumed: true },
  lean: { liftMm: 0, toward: 0, across: 0 },
};

/** Blocks whose rows are hidden so far above and below the line. */
function hiddenWithin(halfMm: number): Float32Array {
  return Float32Array.from({ length: 5 * BAND_ROWS }, (_, at) =>
    Math.abs(zOfRowMm(at % BAND_ROWS)) <= halfMm ? NaN : 60,
  );
}

it('lets the edge lie anywhere in what the glow hides', () => {
  // An even spread of half width w has a standard deviation of w/√3; 2 mm more must show.
  expect(hiddenEdgeSdMm(hiddenWithin(4))).toBeCloseTo(6 / Math.sqrt(3), 1);
  expect(hiddenEdgeSdMm(hiddenWithin(7))).toBeCloseTo(9 / Math.sqrt(3), 1);
});

it('adds what the tilt changes by when the edge is put elsewhere, as far as it can lie there', () => {
  const tilt = { along0: 6, along90: 0 };
  const scaled = ({ heightMm }: EdgeProposal) => ({
    along0: 6 * (1 + 0.01 * heightMm),
    along90: 0,
  });
  const beforehand = hiddenEdgeCovariance(shedView(), EDGE, tilt, 3);
  const both = assumedEdgeCovariance(EDGE, tilt, 3, scaled, beforehand);
  expect(Math.sqrt(both[0][0])).toBeCloseTo(6 * 0.03);
  expect(both[1][1]).toBe(0);
  const above = (edge: EdgeProposal) => (edge.heightMm > 0 ? scaled(edge) : null);
  const one = assumedEdgeCovariance(EDGE, tilt, 3, above, beforehand);
  expect(Math.sqrt(one[0][0])).toBeCloseTo(6 * 0.03);
  // With neither nothing is learnt: not that the place does not matter.
  expect(assumedEdgeCovariance(EDGE, tilt, 3, () => null, beforehand)).toBe(beforehand);
});

it('knows beforehand what an edge that shows nowhere leaves open: in any direction, more the wider the glow', () => {
  const tilt = { along0: 6, along90: -8 };
  const [[a, b], [, d]] = hiddenEdgeCovariance(shedView(), EDGE, tilt, 3);
  expect(a).toBe(d);
  expect(b).toBe(0);
  // No less than leans told by other grooves are off by, no more than a tenth of the lean.
  expect(Math.sqrt(a) / 10).toBeGreaterThan(0.04);
  expect(Math.sqrt(a) / 10).toBeLessThan(0.1);
  expect(hiddenEdgeCovariance(shedView(), EDGE, tilt, 8)[0][0]).toBeGreaterThan(a);
});
