import { failed, succeeded } from '../contract/outcome.ts';
import type { BalanceOutcome } from './failures.ts';
import { NOT_NEGATIVE, POSITIVE, rejectNumbers, SIGNED } from './inputs.ts';

/** A ball and the bore that sits on it. */
export interface BallAndBore {
  readonly ballDiameterMm: number;
  readonly boreDiameterMm: number;
}

/**
 * Height of the bore's seating edge above the ball's centre: √(R² − (b/2)²), mm.
 * A ball no larger than the bore falls through. Source: circle geometry, DESIGN section 3.
 */
export function seatHeightMm({
  ballDiameterMm,
  boreDiameterMm,
}: BallAndBore): BalanceOutcome<number> {
  const bad = rejectNumbers({
    ballDiameterMm: [ballDiameterMm, POSITIVE],
    boreDiameterMm: [boreDiameterMm, POSITIVE],
  });
  if (bad) return bad;
  const squared = (ballDiameterMm - boreDiameterMm) * (ballDiameterMm + boreDiameterMm);
  if (squared <= 0) return failed('ball-through-bore', { ballDiameterMm, boreDiameterMm });
  return succeeded(Math.sqrt(squared) / 2);
}

/**
 * Depth of the centre of mass below the ball's centre: h = d − √(R² − (b/2)²), mm; negative when it
 * stands above and the wheel will not stand.
 *
 * @param centreDepthMm d, centre of mass below the bore's seating edge, mm
 */
export function pendulumDepthMm(seat: BallAndBore, centreDepthMm: number): BalanceOutcome<number> {
  const bad = rejectNumbers({ centreDepthMm: [centreDepthMm, SIGNED] });
  if (bad) return bad;
  const height = seatHeightMm(seat);
  return height.ok ? succeeded(centreDepthMm - height.value) : height;
}

/** The inverse: d = h + √(R² − (b/2)²), mm. A wheel tried on one ball so predicts all others. */
export function centreDepthMm(seat: BallAndBore, pendulumDepth: number): BalanceOutcome<number> {
  const bad = rejectNumbers({ pendulumDepthMm: [pendulumDepth, SIGNED] });
  if (bad) return bad;
  const height = seatHeightMm(seat);
  return height.ok ? succeeded(pendulumDepth + height.value) : height;
}

export interface MeasuredDepth {
  readonly pendulumDepthMm: number;
  readonly standardErrorMm: number;
}

/**
 * h from a measured response: h = r_e/(1000·M·k), mm; relative errors of k, M and r_e add in squares.
 */
export function pendulumDepthFromResponse(input: {
  readonly mmPerGmm: number;
  readonly mmPerGmmStandardError: number;
  readonly massKg: number;
  readonly massSdKg: number;
  readonly edgeRadiusMm: number;
  readonly edgeRadiusSdMm: number;
}): BalanceOutcome<MeasuredDepth> {
  const { mmPerGmm, massKg, edgeRadiusMm } = input;
  const bad = rejectNumbers({
    mmPerGmm: [mmPerGmm, POSITIVE],
    mmPerGmmStandardError: [input.mmPerGmmStandardError, NOT_NEGATIVE],
    massKg: [massKg, POSITIVE],
    massSdKg: [input.massSdKg, NOT_NEGATIVE],
    edgeRadiusMm: [edgeRadiusMm, POSITIVE],
    edgeRadiusSdMm: [input.edgeRadiusSdMm, NOT_NEGATIVE],
  });
  if (bad) return bad;
  const depthMm = edgeRadiusMm / (1000 * massKg * mmPerGmm);
  const relative = Math.hypot(
    input.mmPerGmmStandardError / mmPerGmm,
    input.massSdKg / massKg,
    input.edgeRadiusSdMm / edgeRadiusMm,
  );
  return succeeded({ pendulumDepthMm: depthMm, standardErrorMm: depthMm * relative });
}
