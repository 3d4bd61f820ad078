import { edgeHeightsMm } from '../edge/edgeProposal.ts';
import { riseAt } from '../edge/leanFit.ts';
import type { RefinedShifts } from './refinedShifts.ts';
import { CROWN_SLOPE } from './rowMotion.ts';
import type { SweepRecording } from './sweepRecording.ts';

/** The edge in a block lies within this of where the proposal put it, mm. */
const EDGE_REACH_MM = 3;
/**
 * How well the edge's place in a block is known against its neighbours': rounding of the rib's edge,
 * slots, light, and the tread's shape from one edge to the other, mm.
 */
export const EDGE_PLACE_SD_MM = 0.7;
/**
 * Where the whole sweep's template shows the chosen edge, block by block, mm by the recording's view.
 *
 * The plainest edge is seen always; the chosen one, near the laser line, often not. It is carried
 * over from the plainest: the way between them is one, but lower down a crowned tread stands out
 * farther and looks lower for it, most where the sight is steep. Left out, that looks like a lean
 * toward the camera by 8 mrad and more.
 */
export function templateEdge(recording: SweepRecording, refined: RefinedShifts): Float64Array {
  const { tilt, edge, view } = recording;
  const expected = Float64Array.from(
    tilt.basis.gainMm,
    (_, b) => edge.plainestMm + riseAt(tilt.basis, edge.lean, b),
  );
  const besideMm = edge.heightMm - edge.plainestMm;
  const { sightSlopes } = view;
  const middleSlope = sightSlopes[sightSlopes.length >> 1];
  const plainest = edgeHeightsMm(refined.template, expected, EDGE_REACH_MM);
  return expected.map((z, b) => {
    const seen = plainest[b] === plainest[b] ? plainest[b] : z;
    return seen + besideMm + (sightSlopes[b] - middleSlope) * CROWN_SLOPE * besideMm;
  });
}
