import { failed, succeeded } from '../contract/outcome.ts';
import { shortWayDeg } from '../quantities/angle.ts';
import { vectorFromPolar, type PlaneVector } from '../quantities/vector.ts';
import type { BalanceOutcome } from './failures.ts';
import { DIRECTION_DEG, POSITIVE, rejectNumbers, rejectVectors } from './inputs.ts';

export interface ThreeScrews {
  /** Azimuths of the screws in the room, clockwise from the sight, degrees. */
  readonly azimuthsDeg: readonly [number, number, number];
  readonly circleRadiusMm: number;
  readonly threadPitchMm: number;
  /** True when turning a screw clockwise, seen from above, lifts the plate there. */
  readonly clockwiseLifts: boolean;
}

export interface ScrewTurn {
  readonly azimuthDeg: number;
  /** Positive lifts the plate there, mm. */
  readonly liftMm: number;
  /** Turns of the screw, positive clockwise seen from above. */
  readonly clockwiseTurns: number;
  readonly action: 'lift' | 'lower' | 'leave';
}

/** Screws closer than this cannot level a plate, degrees. */
const SCREW_GAP_MIN_DEG = 10;
/** Less than this of a turn is no turn: a hand sets a screw to about a hundredth. */
const TURN_MIN = 0.005;

/**
 * How much to turn which screw: a plate that slopes by ε (uphill) stands ε·x too high at a screw at
 * x, so it is lifted by −ε·x there, less the middle of the three values: one screw stays, the others
 * turn the least in sum. Turns = lift/pitch.
 *
 * @param slopeMrad uphill slope in the room's frame, mrad
 */
export function screwTurnsToLevel(
  slopeMrad: PlaneVector,
  screws: ThreeScrews,
): BalanceOutcome<readonly [ScrewTurn, ScrewTurn, ScrewTurn]> {
  const [a, b, c] = screws.azimuthsDeg;
  const bad =
    rejectVectors({ slopeMrad }) ??
    rejectNumbers({
      azimuthADeg: [a, DIRECTION_DEG],
      azimuthBDeg: [b, DIRECTION_DEG],
      azimuthCDeg: [c, DIRECTION_DEG],
      circleRadiusMm: [screws.circleRadiusMm, POSITIVE],
      threadPitchMm: [screws.threadPitchMm, POSITIVE],
    });
  if (bad) return bad;
  const narrowestDeg = Math.min(
    Math.abs(shortWayDeg(a, b)),
    Math.abs(shortWayDeg(b, c)),
    Math.abs(shortWayDeg(c, a)),
  );
  if (narrowestDeg < SCREW_GAP_MIN_DEG) return failed('screws-too-close', { narrowestDeg });
  const wanted = (azimuthDeg: number): number => {
    const x = vectorFromPolar(screws.circleRadiusMm, azimuthDeg);
    return -(slopeMrad.along0 * x.along0 + slopeMrad.along90 * x.along90) / 1000;
  };
  const middle = [wanted(a), wanted(b), wanted(c)].sort((p, q) => p - q)[1]!;
  const turn = (azimuthDeg: number): ScrewTurn => {
    const liftMm = wanted(azimuthDeg) - middle;
    const turns = liftMm / screws.threadPitchMm;
    const action = Math.abs(turns) < TURN_MIN ? 'leave' : turns > 0 ? 'lift' : 'lower';
    return { azimuthDeg, liftMm, clockwiseTurns: screws.clockwiseLifts ? turns : -turns, action };
  };
  return succeeded([turn(a), turn(b), turn(c)]);
}
