import { succeeded } from '../contract/outcome.ts';
import type { BalanceOutcome } from './failures.ts';
import { NOT_NEGATIVE, POSITIVE, rejectNumbers } from './inputs.ts';

/** Balance quality grade of car wheels, rims, wheel sets and drive shafts (ISO 21940-11, from memory). */
export const CAR_WHEEL_GRADE_MM_PER_S = 40;

/** 1000·60/(2π): turns G [mm/s] · M [kg] / n [1/min] into g·mm; "9549" in handbooks. */
const GMM_MIN_PER_S = 30000 / Math.PI;

export interface ToleranceInput {
  /** G, mm/s. */
  readonly gradeMmPerS: number;
  readonly massKg: number;
  readonly speedPerMin: number;
}

/**
 * Permissible residual unbalance U_per = (30000/π)·G·M/n, g·mm. Source: ISO 21940-11 (e_per·ω = G).
 */
export function permissibleUnbalanceGmm(input: ToleranceInput): BalanceOutcome<number> {
  const bad = rejectNumbers({
    gradeMmPerS: [input.gradeMmPerS, POSITIVE],
    massKg: [input.massKg, POSITIVE],
    speedPerMin: [input.speedPerMin, POSITIVE],
  });
  if (bad) return bad;
  return succeeded((GMM_MIN_PER_S * input.gradeMmPerS * input.massKg) / input.speedPerMin);
}

/** The grade that an unbalance amounts to: G = U·n/((30000/π)·M), mm/s. Inverse of U_per. */
export function gradeOfUnbalanceMmPerS(input: {
  readonly amountGmm: number;
  readonly massKg: number;
  readonly speedPerMin: number;
}): BalanceOutcome<number> {
  const bad = rejectNumbers({
    amountGmm: [input.amountGmm, NOT_NEGATIVE],
    massKg: [input.massKg, POSITIVE],
    speedPerMin: [input.speedPerMin, POSITIVE],
  });
  if (bad) return bad;
  return succeeded((input.amountGmm * input.speedPerMin) / (GMM_MIN_PER_S * input.massKg));
}

/** Radial force of an unbalance that turns: F = U·ω², N (U in g·mm = 1e-6 kg·m). */
export function unbalanceForceN(amountGmm: number, speedPerMin: number): BalanceOutcome<number> {
  const bad = rejectNumbers({
    amountGmm: [amountGmm, NOT_NEGATIVE],
    speedPerMin: [speedPerMin, NOT_NEGATIVE],
  });
  if (bad) return bad;
  return succeeded(forceN(amountGmm, speedPerMin));
}

/** As {@link unbalanceForceN}, for values already checked. */
export function forceN(amountGmm: number, speedPerMin: number): number {
  const omegaPerS = (speedPerMin * 2 * Math.PI) / 60;
  return amountGmm * 1e-6 * omegaPerS ** 2;
}

/**
 * Turns of a wheel at road speed: n = v/(π·D), 1/min. The tyre's rolling circumference is a few per
 * cent less than π·D under load; the grade is not that fine.
 */
export function wheelSpeedPerMin(
  roadSpeedKmh: number,
  overallDiameterMm: number,
): BalanceOutcome<number> {
  const bad = rejectNumbers({
    roadSpeedKmh: [roadSpeedKmh, NOT_NEGATIVE],
    overallDiameterMm: [overallDiameterMm, POSITIVE],
  });
  if (bad) return bad;
  const mmPerMin = (roadSpeedKmh * 1e6) / 60;
  return succeeded(mmPerMin / (Math.PI * overallDiameterMm));
}

/**
 * A permissible unbalance shared by two planes A and B on either side of the centre of mass, in
 * proportion to the distance of the other: U_A = U·L_B/(L_A + L_B). Source: ISO 21940-11.
 */
export function permissibleByPlane(input: {
  readonly permissibleGmm: number;
  readonly centreToPlaneAMm: number;
  readonly centreToPlaneBMm: number;
}): BalanceOutcome<{ readonly planeAGmm: number; readonly planeBGmm: number }> {
  const { permissibleGmm, centreToPlaneAMm, centreToPlaneBMm } = input;
  const bad = rejectNumbers({
    permissibleGmm: [permissibleGmm, NOT_NEGATIVE],
    centreToPlaneAMm: [centreToPlaneAMm, POSITIVE],
    centreToPlaneBMm: [centreToPlaneBMm, POSITIVE],
  });
  if (bad) return bad;
  const spanMm = centreToPlaneAMm + centreToPlaneBMm;
  return succeeded({
    planeAGmm: (permissibleGmm * centreToPlaneBMm) / spanMm,
    planeBGmm: (permissibleGmm * centreToPlaneAMm) / spanMm,
  });
}
