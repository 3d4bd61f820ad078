import { failed, succeeded } from '../contract/outcome.ts';
import { wrapTurnDeg } from '../quantities/angle.ts';
import {
  addVectors,
  scaleVector,
  subtractVectors,
  vectorAmount,
  vectorAngleDeg,
  type PlaneVector,
} from '../quantities/vector.ts';
import type { BalanceOutcome } from './failures.ts';
import { NOT_NEGATIVE, POSITIVE, rejectNumbers, rejectVectors } from './inputs.ts';

/**
 * The lean that stays in the room, as a sweep reads it: mrad, pointing at the azimuth of the edge's
 * HIGH side, relative to the laser's plane.
 */
export interface StandLean {
  readonly leanMrad: PlaneVector;
  /** R/h of the ball used. */
  readonly slopeAmplification: number;
}

export interface PlateSlope {
  /** mrad = mm per metre, pointing uphill. */
  readonly slopeMrad: PlaneVector;
  readonly amountMrad: number;
  readonly uphillAzimuthDeg: number;
  readonly downhillAzimuthDeg: number;
  /** What a laser out of level may add to the slope, mrad, one standard deviation. */
  readonly laserShareMrad: number;
  /** What one sweep cannot tell. */
  readonly caution: string;
}

/** Line lasers level themselves to about 0.3 mm/m (data sheets); taken as two standard deviations. */
export const LASER_LEVEL_SD_MRAD = 0.15;

const CAUTION =
  'One sweep sees plate and laser together: a laser out of level looks like a sloping plate, only ' +
  'smaller by the ball’s amplification. Sweeps on two balls tell them apart.';

/**
 * Slope of the plate from the stand lean of one sweep: the wheel's axis leans downhill by
 * sin θ = (R/h)·sin ε, so the edge is high uphill and ε = θ·h/R (small angles). A laser tilt λ reads
 * as −λ in the lean, hence at most λ·h/R in the slope: stated beside it. Source: DESIGN section 3.
 */
export function plateSlopeFromLean(
  lean: StandLean,
  laserSdMrad: number = LASER_LEVEL_SD_MRAD,
): BalanceOutcome<PlateSlope> {
  const bad =
    rejectVectors({ leanMrad: lean.leanMrad }) ??
    rejectNumbers({
      slopeAmplification: [lean.slopeAmplification, POSITIVE],
      laserSdMrad: [laserSdMrad, NOT_NEGATIVE],
    });
  if (bad) return bad;
  const slopeMrad = scaleVector(lean.leanMrad, 1 / lean.slopeAmplification);
  const uphillAzimuthDeg = vectorAngleDeg(slopeMrad);
  return succeeded({
    slopeMrad,
    amountMrad: vectorAmount(slopeMrad),
    uphillAzimuthDeg,
    downhillAzimuthDeg: wrapTurnDeg(uphillAzimuthDeg + 180),
    laserShareMrad: laserSdMrad / lean.slopeAmplification,
    caution: CAUTION,
  });
}

export interface PlateAndLaser {
  /** Plate, pointing uphill, mrad. */
  readonly slopeMrad: PlaneVector;
  /** Laser plane, pointing at its high side, mrad. */
  readonly laserMrad: PlaneVector;
}

/** Amplifications closer than this share of the larger tell nothing apart. */
const AMPLIFICATION_SPREAD_MIN = 0.05;

/**
 * Plate and laser from sweeps on two balls, stand and laser untouched: S_i = q_i·ε − λ with
 * q = R/h, so ε = (S₁ − S₂)/(q₁ − q₂) and λ = q₁·ε − S₁.
 */
export function plateAndLaserFromTwoBalls(
  first: StandLean,
  second: StandLean,
): BalanceOutcome<PlateAndLaser> {
  const q1 = first.slopeAmplification;
  const q2 = second.slopeAmplification;
  const bad =
    rejectVectors({ first: first.leanMrad, second: second.leanMrad }) ??
    rejectNumbers({ firstAmplification: [q1, POSITIVE], secondAmplification: [q2, POSITIVE] });
  if (bad) return bad;
  if (Math.abs(q1 - q2) < AMPLIFICATION_SPREAD_MIN * Math.max(q1, q2)) {
    return failed('responses-too-alike', { first: q1, second: q2 });
  }
  const slopeMrad = scaleVector(subtractVectors(first.leanMrad, second.leanMrad), 1 / (q1 - q2));
  const laserMrad = addVectors(scaleVector(slopeMrad, q1), scaleVector(first.leanMrad, -1));
  return succeeded({ slopeMrad, laserMrad });
}
