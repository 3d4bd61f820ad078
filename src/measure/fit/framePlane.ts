import type { SweepObservations } from '../../contract/observations.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { isUsable, type FrameBins } from './frameBins.ts';
import { HIGHER_WAVES } from './tiltFit.ts';

/** The plane (offset, tilt 0°, tilt 90°) of one frame's heights, robust against a hand in it. */

/** Standard deviations up to which a height counts in full: one in eighty lies beyond. */
export const FLAT_UP_TO = 2.5;
const PLANE_ROUNDS = 3;

/** Heights of a frame less known waves and constants; `error` is 0 where there is none. */
export function readRow(
  observations: SweepObservations,
  bins: FrameBins,
  known: Float64Array,
  f: number,
  row: Float64Array,
  error: Float64Array,
): void {
  const azimuths = row.length;
  const turn = observations.turnDeg[f] * RAD_PER_DEG;
  const ct = Math.cos(turn);
  const st = Math.sin(turn);
  for (let a = 0; a < azimuths; a++) {
    const at = f * azimuths + a;
    if (!isUsable(observations.heightMm[at], observations.standardErrorMm[at])) {
      error[a] = 0;
      continue;
    }
    error[a] = observations.standardErrorMm[at];
    // cos β and sin β for β = α − φ; higher waves by Chebyshev's recurrence.
    const c = bins.cosAzimuth[a] * ct + bins.sinAzimuth[a] * st;
    const s = bins.sinAzimuth[a] * ct - bins.cosAzimuth[a] * st;
    const c2 = 2 * c * c - 1;
    const s2 = 2 * s * c;
    const c3 = 2 * c * c2 - c;
    const s3 = 2 * c * s2 - s;
    const c4 = 2 * c * c3 - c2;
    const s4 = 2 * c * s3 - s2;
    const wave =
      known[0] * c2 + known[1] * s2 + known[2] * c3 + known[3] * s3 + known[4] * c4 + known[5] * s4;
    row[a] = observations.heightMm[at] - wave - known[HIGHER_WAVES + a];
  }
}

/** Reweighted plane of one frame; returns the loss by which two of them are compared. */
export function fitPlane(
  bins: FrameBins,
  row: Float64Array,
  error: Float64Array,
  scale: number | null,
  start: Float64Array | null,
  plane: Float64Array,
): number {
  if (start !== null) plane.set(start);
  const rounds = scale === null ? 1 : PLANE_ROUNDS;
  const { cosAzimuth, sinAzimuth } = bins;
  let loss = 0;
  for (let round = 0; round < rounds; round++) {
    let m00 = 0;
    let m10 = 0;
    let m11 = 0;
    let m20 = 0;
    let m21 = 0;
    let m22 = 0;
    let r0 = 0;
    let r1 = 0;
    let r2 = 0;
    loss = 0;
    for (let a = 0; a < row.length; a++) {
      if (error[a] === 0) continue;
      const c = cosAzimuth[a];
      const s = sinAzimuth[a];
      let w = 1 / (error[a] * error[a]);
      if (scale !== null && (round > 0 || start !== null)) {
        const z = (row[a] - plane[0] - plane[1] * c - plane[2] * s) / (error[a] * scale);
        const share = robustShare(z * z);
        w *= share;
        loss += share < 1 ? FLAT_UP_TO ** 2 * (1 - Math.log(share)) : z * z;
      }
      m00 += w;
      m10 += w * c;
      m11 += w * c * c;
      m20 += w * s;
      m21 += w * s * c;
      m22 += w * s * s;
      r0 += w * row[a];
      r1 += w * row[a] * c;
      r2 += w * row[a] * s;
    }
    solveThree(m00, m10, m11, m20, m21, m22, r0, r1, r2, plane);
  }
  return loss;
}

function solveThree(
  m00: number,
  m10: number,
  m11: number,
  m20: number,
  m21: number,
  m22: number,
  r0: number,
  r1: number,
  r2: number,
  out: Float64Array,
): void {
  const l10 = m10 / m00;
  const l20 = m20 / m00;
  const d1 = m11 - l10 * m10;
  const l21 = (m21 - l20 * m10) / d1;
  const d2 = m22 - l20 * m20 - l21 * l21 * d1;
  const y1 = r1 - l10 * r0;
  const y2 = r2 - l20 * r0 - l21 * y1;
  out[2] = y2 / d2;
  out[1] = y1 / d1 - l21 * out[2];
  out[0] = r0 / m00 - l10 * out[1] - l20 * out[2];
}

/** Weight of a squared deviation in standard deviations, 0 to 1. */
export function robustShare(z2: number): number {
  return z2 <= FLAT_UP_TO ** 2 ? 1 : FLAT_UP_TO ** 2 / z2;
}
