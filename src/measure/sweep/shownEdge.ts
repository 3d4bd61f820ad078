import { PLAIN_STRENGTH } from '../edge/edgeChoice.ts';
import { edgeInStack, type EdgeProposal } from '../edge/edgeProposal.ts';

import type { SweepRecording } from './sweepRecording.ts';

/**
 * The edge where the whole sweep's template shows it, when the first pictures did not: hidden in the
 * line's glow then, its height was that of other pictures, at a lean that was known to some
 * millimetres only, of a seam nearby, or of the line itself. Some of the turn it mostly stands free. Left where it
 * was put, the line would be taken to lie on the rib's face while it lay in the groove.
 *
 * @param template mean profile of each block at the place of the first picture, blocks × rows
 * @returns the recording's own edge where that was seen, or shows nowhere
 */
export function shownEdge({ edge, tilt }: SweepRecording, template: Float32Array): EdgeProposal {
  if (edge.outline || (edge.strength >= PLAIN_STRENGTH && !edge.isAssumed)) return edge;
  const { isAssumed: _nowSeen, ...known } = edge;
  const shown = edgeInStack(template, tilt.basis, edge.lean, edge.heightMm);
  return shown ? { ...known, ...shown } : edge;
}
