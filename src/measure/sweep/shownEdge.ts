import { PLAIN_STRENGTH } from '../edge/edgeChoice.ts';
import { edgeInStack, type EdgeProposal } from '../edge/edgeProposal.ts';

import type { SweepRecording } from './sweepRecording.ts';

/**
 * The edge where the whole sweep's template shows it, when the first pictures did not: hidden in the
 * line's glow then, its height was that of other pictures, at a lean that was known to some
 * millimetres only, of a seam nearby, or of the line itself. Some of the turn it mostly stands free. Left where it
 * was put, the line would be taken to lie on the rib's face while it lay in the groove.
 *
 * A height at lean zero hangs on the lean toward the camera: from aside, where the blocks in view stand all
 * about as far toward it, that lean is known to a centimetre, and so is a height that came from other
 * pictures. Where nobody touched the edge, and none shows within a tap's reach of that height, it is chosen
 * anew by the rule by which it was chosen there.
 *
 * @param template mean profile of each block at the place of the first picture, blocks × rows
 * @returns the recording's own edge where that was seen, or shows nowhere
 */
export function shownEdge(
  { edge, tilt, view }: Pick<SweepRecording, 'edge' | 'tilt' | 'view'>,
  template: Float32Array,
): EdgeProposal {
  if (edge.outline || (edge.strength >= PLAIN_STRENGTH && !edge.isAssumed)) return edge;
  const { isAssumed: _nowSeen, ...known } = edge;
  const shownAt = (heightMm: number | null) =>
    edgeInStack(template, tilt.basis, edge.lean, heightMm);
  const isChosenAnew = !edge.isAssumed && !view.setup.sight.edgePoint;
  const shown = shownAt(edge.heightMm) ?? (isChosenAnew ? shownAt(null) : null);
  return shown ? { ...known, ...shown } : edge;
}
