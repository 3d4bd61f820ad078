import { failed, succeeded } from '../contract/outcome.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../quantities/units.ts';
import { pendulumDepthMm, seatHeightMm } from './ballSeat.ts';
import type { BalanceOutcome } from './failures.ts';
import { POSITIVE, rejectNumbers } from './inputs.ts';

/** A wheel as it lies on a ball. */
export interface WheelOnBall {
  readonly massKg: number;
  readonly boreDiameterMm: number;
  /** d: centre of mass below the bore's seating edge. */
  readonly centreDepthMm: number;
  readonly edgeRadiusMm: number;
  readonly weightRadiusMm: number;
  /** Radius of gyration about a diameter, mm; assumed as {@link ASSUMED_GYRATION_SHARE}·r_e when left out. */
  readonly transverseGyrationMm?: number;
  /** Largest rise of the edge that the camera still follows, mm either way. */
  readonly cameraRangeMm: number;
}

/**
 * Half the mass near the tread (0.88 r_e) and half near the rim (0.55 r_e) give a spin radius of
 * gyration of 0.73 r_e; a spin-to-transverse ratio of 1.7 makes that 0.56 r_e about a diameter.
 */
const ASSUMED_GYRATION_SHARE = 0.56;

export interface BallBehaviour {
  readonly ballDiameterMm: number;
  readonly seatHeightMm: number;
  /** h; what is left of it is the reserve before the wheel tips over. */
  readonly pendulumDepthMm: number;
  readonly risePerGramMm: number;
  readonly rockingPeriodS: number;
  readonly gyration: 'entered' | 'assumed';
  /** Lean per slope of the plate, R/h. */
  readonly slopeAmplification: number;
  /** Slope at which it rolls off, mrad; null when no slope can make it. */
  readonly rollOffSlopeMrad: number | null;
  /** Largest unbalance that it shows, g·mm, and what ends it. */
  readonly largestUnbalanceGmm: number;
  readonly limitedBy: 'camera' | 'seat';
}

/**
 * Everything that a ball does to a wheel, on a level plate:
 * h = d − √(R² − b²/4); rise per gram r_e·r_w/(M h); T = 2π·√((k² + (R − h)²)/(g h)), the inertia
 * about the rolling contact being M·(k² + (R − h)²); slope amplified R/h; rolling off at
 * sin ε = h/R; largest lean the smaller of asin(camera range/r_e) and the seat's own asin(b/2R),
 * where the weight's line leaves the cone of the seating circle's normals (friction left out), and
 * U = M·h·tan θ there. Source: DESIGN section 3; the seat's limit by statics of three normals.
 */
export function ballBehaviour(
  wheel: WheelOnBall,
  ballDiameterMm: number,
): BalanceOutcome<BallBehaviour> {
  const { massKg, boreDiameterMm, edgeRadiusMm, weightRadiusMm, cameraRangeMm } = wheel;
  const gyrationMm = wheel.transverseGyrationMm ?? ASSUMED_GYRATION_SHARE * edgeRadiusMm;
  const bad = rejectNumbers({
    massKg: [massKg, POSITIVE],
    edgeRadiusMm: [edgeRadiusMm, POSITIVE],
    weightRadiusMm: [weightRadiusMm, POSITIVE],
    transverseGyrationMm: [gyrationMm, POSITIVE],
    cameraRangeMm: [cameraRangeMm, POSITIVE],
  });
  if (bad) return bad;
  const seat = { ballDiameterMm, boreDiameterMm };
  const height = seatHeightMm(seat);
  if (!height.ok) return height;
  const depth = pendulumDepthMm(seat, wheel.centreDepthMm);
  if (!depth.ok) return depth;
  const h = depth.value;
  if (!(h >= POSITIVE.low)) return failed('wheel-tips-over', { pendulumDepthMm: h });
  const radiusMm = ballDiameterMm / 2;
  const inertiaMm2 = gyrationMm ** 2 + (radiusMm - h) ** 2;
  const rollOff = h / radiusMm;
  const seatLean = boreDiameterMm / ballDiameterMm;
  const cameraLean = Math.min(cameraRangeMm / edgeRadiusMm, MOST_LEAN_SINE);
  const leanSine = Math.min(seatLean, cameraLean, MOST_LEAN_SINE);
  return succeeded({
    ballDiameterMm,
    seatHeightMm: height.value,
    pendulumDepthMm: h,
    risePerGramMm: (edgeRadiusMm * weightRadiusMm) / (massKg * 1000 * h),
    rockingPeriodS: 2 * Math.PI * Math.sqrt(inertiaMm2 / 1000 / (STANDARD_GRAVITY_M_PER_S2 * h)),
    gyration: wheel.transverseGyrationMm === undefined ? 'assumed' : 'entered',
    slopeAmplification: radiusMm / h,
    rollOffSlopeMrad: rollOff >= 1 ? null : Math.asin(rollOff) * 1000,
    largestUnbalanceGmm: massKg * 1000 * h * Math.tan(Math.asin(leanSine)),
    limitedBy: cameraLean <= seatLean ? 'camera' : 'seat',
  });
}

/** sin 60°: no stand lets a wheel lean further, whatever the camera sees. */
const MOST_LEAN_SINE = 0.866;
