import { addCovariances, evenCovariance, outerCovariance } from '../../balance/planeCovariance.ts';
import type { PlaneCovariance, PlaneVector } from '../../quantities/vector.ts';
import { subtractVectors } from '../../quantities/vector.ts';
import { BAND_ROWS, rowOfZ, Z_STEP_MM } from '../band/treadBand.ts';
import type { EdgeProposal } from '../edge/edgeProposal.ts';

/**
 * What an edge that showed nowhere, and was taken to lie under the line, leaves open: it may lie anywhere
 * in what the line's glow hides. Its height is in how far the edge swings inward for a lean, in how far
 * the rows of the tread move beside it, in which sightings of the line count as on the face, and so in
 * the camera.
 */

/** An edge shows by the rows of so much on either side of it, mm. */
const SHOWN_BY_MM = 2;
const NO_COVARIANCE = evenCovariance(0);

/** How far the edge may lie from the line, one standard deviation of an even spread over what is hidden, mm. */
export function hiddenEdgeSdMm(template: Float32Array): number {
  const halves: number[] = [];
  const line = Math.round(rowOfZ(0));
  for (let start = 0; start < template.length; start += BAND_ROWS) {
    const isHidden = (r: number) => template[start + r] !== template[start + r];
    let [first, last] = [line, line];
    while (first > 0 && isHidden(first - 1)) first--;
    while (last < BAND_ROWS - 1 && isHidden(last + 1)) last++;
    halves.push(((last - first) * Z_STEP_MM) / 2 + SHOWN_BY_MM);
  }
  const middle = halves.sort((a, b) => a - b)[halves.length >> 1] ?? SHOWN_BY_MM;
  return middle / Math.sqrt(3);
}

/**
 * Covariance that this adds to the tilt, mm²: the sweep solved again with the edge so far above and below
 * the line. Where it cannot be solved so, the edge does not lie there.
 *
 * @param tiltOf tilt of the sweep solved with another edge; null where it cannot be
 */
export function assumedEdgeCovariance(
  edge: EdgeProposal,
  tiltMm: PlaneVector,
  sdMm: number,
  tiltOf: (edge: EdgeProposal) => PlaneVector | null,
): PlaneCovariance {
  const moved = [-sdMm, sdMm].flatMap(
    (mm) => tiltOf({ ...edge, heightMm: edge.heightMm + mm }) ?? [],
  );
  return moved
    .map((tilt) => outerCovariance(subtractVectors(tilt, tiltMm), 1 / moved.length))
    .reduce(addCovariances, NO_COVARIANCE);
}
