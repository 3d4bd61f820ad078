import { succeeded } from '../contract/outcome.ts';
import { vectorAmount, vectorAngleDeg, type PlaneVector } from '../quantities/vector.ts';
import type { BalanceOutcome } from './failures.ts';
import { POSITIVE, rejectNumbers, rejectVectors } from './inputs.ts';
import { gradeOfUnbalanceMmPerS, forceN, wheelSpeedPerMin } from './tolerance.ts';

export interface ResidualMeaning {
  readonly amountGmm: number;
  readonly heavySpotDeg: number;
  /** At the weight radius. */
  readonly massG: number;
  readonly speedPerMin: number;
  readonly gradeMmPerS: number;
  /** Force that turns with the wheel at that speed, N. */
  readonly forceN: number;
}

/** What an unbalance that is left means on the road: grams, grade G and force at a speed. */
export function residualMeaning(input: {
  readonly residualGmm: PlaneVector;
  readonly weightRadiusMm: number;
  readonly massKg: number;
  readonly roadSpeedKmh: number;
  readonly overallDiameterMm: number;
}): BalanceOutcome<ResidualMeaning> {
  const { residualGmm, weightRadiusMm, massKg, roadSpeedKmh } = input;
  const bad =
    rejectVectors({ residualGmm }) ??
    rejectNumbers({
      weightRadiusMm: [weightRadiusMm, POSITIVE],
      roadSpeedKmh: [roadSpeedKmh, POSITIVE],
    });
  if (bad) return bad;
  const amountGmm = vectorAmount(residualGmm);
  const speed = wheelSpeedPerMin(roadSpeedKmh, input.overallDiameterMm);
  if (!speed.ok) return speed;
  const grade = gradeOfUnbalanceMmPerS({ amountGmm, massKg, speedPerMin: speed.value });
  if (!grade.ok) return grade;
  return succeeded({
    amountGmm,
    heavySpotDeg: vectorAngleDeg(residualGmm),
    massG: amountGmm / weightRadiusMm,
    speedPerMin: speed.value,
    gradeMmPerS: grade.value,
    forceN: forceN(amountGmm, speed.value),
  });
}
