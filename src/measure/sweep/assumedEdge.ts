import { addCovariances, evenCovariance, outerCovariance } from '../../balance/planeCovariance.ts';
import {
  subtractVectors,
  vectorAmount,
  type PlaneCovariance,
  type PlaneVector,
} from '../../quantities/vector.ts';
import { BAND_ROWS, rowOfZ, Z_STEP_MM } from '../band/treadBand.ts';
import type { EdgeProposal } from '../edge/edgeProposal.ts';
import { edgeGainMm, type WheelView } from './wheelView.ts';

/**
 * What an edge that showed nowhere, and was taken to lie under the line, leaves open: it may lie anywhere
 * in what the line's glow hides. Its height is in how far the edge swings inward for a lean, in how far
 * the rows of the tread move beside it, in which sightings of the line count as on the face, and so in
 * the camera.
 */

/** An edge shows by the rows of so much on either side of it, mm. */
const SHOWN_BY_MM = 2;
const NO_COVARIANCE = evenCovariance(0);
/**
 * A lean that only the other grooves tell comes out so much too small on rendered films, as a part of
 * it: the most of 2 to 4 %, for what lies deeper moves less and none of it is in view.
 */
const OTHER_GROOVES_SD = 0.04;

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
 * the line. Where it cannot be solved so, the edge does not lie there; where it can be solved with
 * neither, nothing is learnt by trying, and what is known beforehand stands.
 *
 * @param tiltOf tilt of the sweep solved with another edge; null where it cannot be
 * @param beforehandMm2 of `hiddenEdgeCovariance`
 */
export function assumedEdgeCovariance(
  edge: EdgeProposal,
  tiltMm: PlaneVector,
  sdMm: number,
  tiltOf: (edge: EdgeProposal) => PlaneVector | null,
  beforehandMm2: PlaneCovariance,
): PlaneCovariance {
  const moved = [-sdMm, sdMm].flatMap(
    (mm) => tiltOf({ ...edge, heightMm: edge.heightMm + mm }) ?? [],
  );
  if (moved.length === 0) return beforehandMm2;
  return moved
    .map((tilt) => outerCovariance(subtractVectors(tilt, tiltMm), 1 / moved.length))
    .reduce(addCovariances, NO_COVARIANCE);
}

/**
 * The same without solving anything again, mm²: by how much the edge's rise for a lean differs over
 * the heights at which it may lie, and what a lean told by other grooves is off by. In any direction, since
 * nothing says which.
 */
export function hiddenEdgeCovariance(
  view: WheelView,
  { heightMm }: Pick<EdgeProposal, 'heightMm'>,
  tiltMm: PlaneVector,
  sdMm: number,
): PlaneCovariance {
  const gainAt = (edgeMm: number) =>
    view.layout.azimuthsDeg.reduce((sum, a) => sum + edgeGainMm(view, a, edgeMm), 0);
  const ofGain = (gainAt(heightMm + sdMm) - gainAt(heightMm - sdMm)) / (2 * gainAt(heightMm));
  const relativeSd = Math.hypot(ofGain, OTHER_GROOVES_SD);
  return evenCovariance((relativeSd * vectorAmount(tiltMm)) ** 2);
}
