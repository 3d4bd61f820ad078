import type { CircleOffsets } from './circleResiduals.ts';

/**
 * What a point of the line can be, for a given circle: on the rib's face, fallen into a slot or a
 * groove, or something else. Seen from above, light that falls deeper lands nearer to the axis, so
 * higher in the picture, by up to a groove's depth; nothing of the tread stands out beyond the face.
 * This one-sidedness tells the face from a groove's floor, which looks like a circle as well.
 */

/** Beliefs before the row is known: of the line on a worn tread some 40 % lies in slots and grooves. */
const FACE_SHARE = 0.55;
const FALLEN_SHARE = 0.4;
const OTHER_SHARE = 0.05;
/** Car grooves are 8 mm deep when new, slots too; a lean and the sheet's own width add some. */
const FALLEN_REACH_MM = 14;
/** Something else lies anywhere in so many rows, px. */
const OTHER_REACH_PX = 200;

const ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

/** Probability that each point lies on the face; `faceSdPx` is the face's own scatter. */
export function faceShares(offsets: CircleOffsets, faceSdPx: number): Float64Array {
  const out = new Float64Array(offsets.rowsPx.length);
  for (let i = 0; i < out.length; i++) {
    const face = faceDensity(offsets, i, faceSdPx);
    out[i] = face / (face + besideDensity(offsets, i));
  }
  return out;
}

/** Minus the logarithm of the points' likelihood, for comparing circles. */
export function mixtureCost(offsets: CircleOffsets, faceSdPx: number): number {
  let cost = 0;
  for (let i = 0; i < offsets.rowsPx.length; i++) {
    cost -= Math.log(faceDensity(offsets, i, faceSdPx) + besideDensity(offsets, i));
  }
  return cost;
}

function faceDensity(offsets: CircleOffsets, i: number, faceSdPx: number): number {
  const z = offsets.rowsPx[i] / faceSdPx;
  return (FACE_SHARE / (faceSdPx * ROOT_TWO_PI)) * Math.exp(-0.5 * z * z);
}

function besideDensity(offsets: CircleOffsets, i: number): number {
  const other = OTHER_SHARE / OTHER_REACH_PX;
  const reachPx = FALLEN_REACH_MM * Math.abs(offsets.rowsPerMm[i]);
  const row = offsets.rowsPx[i];
  return row < 0 && row > -reachPx ? other + FALLEN_SHARE / reachPx : other;
}
