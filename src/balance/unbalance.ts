import { succeeded } from '../contract/outcome.ts';
import { wrapTurnDeg } from '../quantities/angle.ts';
import {
  scaleVector,
  vectorAmount,
  vectorAngleDeg,
  type PlaneCovariance,
  type PlaneVector,
} from '../quantities/vector.ts';
import type { BalanceOutcome } from './failures.ts';
import {
  NOT_NEGATIVE,
  rejectCovariances,
  rejectNumbers,
  rejectVectors,
  type NumberRange,
} from './inputs.ts';
import {
  addCovariances,
  evenCovariance,
  outerCovariance,
  scaleCovariance,
} from './planeCovariance.ts';
import { polarInterval95, type PolarInterval } from './polarInterval.ts';
import type { EdgeRise, Response } from './response.ts';

/** Unbalance of the wheel, g·mm, wheel frame, pointing at the HEAVY spot. */
export interface Unbalance {
  readonly unbalanceGmm: PlaneVector;
  readonly covarianceGmm2: PlaneCovariance;
  readonly amountGmm: number;
  readonly heavySpotDeg: number;
  readonly lightSpotDeg: number;
  readonly ci95: PolarInterval;
}

/** Responses of anything that could lie on a stand, mm per g·mm (a car wheel: about 0.002). */
export const RESPONSE_MM_PER_GMM: NumberRange = { low: 1e-12, high: 1e6 };

export interface UnbalanceInput {
  readonly rise: EdgeRise;
  readonly response: Pick<Response, 'mmPerGmm' | 'standardError'>;
  /**
   * Standard deviation of the once-round run-out that was not separated, mm, each component
   * (see `runOutAllowance.ts`); 0 when it was separated or is left out on purpose.
   */
  readonly runOutSdMm: number;
}

/**
 * U = −A/k (the heavy side sinks, so the high spot A stands opposite U), with
 * Cov(U) = (C_A + σ_τ² I)/k² + (σ_k/k)²·U Uᵀ. Source: DESIGN section 3, first-order propagation.
 */
export function unbalanceFromRise(input: UnbalanceInput): BalanceOutcome<Unbalance> {
  const { rise, response, runOutSdMm } = input;
  const bad =
    rejectVectors({ riseMm: rise.riseMm }) ??
    rejectCovariances({ riseMm: rise.covarianceMm2 }) ??
    rejectNumbers({
      mmPerGmm: [response.mmPerGmm, RESPONSE_MM_PER_GMM],
      standardError: [response.standardError, NOT_NEGATIVE],
      runOutSdMm: [runOutSdMm, NOT_NEGATIVE],
    });
  if (bad) return bad;
  const k = response.mmPerGmm;
  const unbalanceGmm = scaleVector(rise.riseMm, -1 / k);
  const read = addCovariances(rise.covarianceMm2, evenCovariance(runOutSdMm ** 2));
  const covarianceGmm2 = addCovariances(
    scaleCovariance(read, 1 / (k * k)),
    outerCovariance(unbalanceGmm, (response.standardError / k) ** 2),
  );
  return succeeded(describeUnbalance(unbalanceGmm, covarianceGmm2));
}

/** Amount, spots and 95 % intervals of an unbalance vector and its covariance (both checked). */
export function describeUnbalance(
  unbalanceGmm: PlaneVector,
  covarianceGmm2: PlaneCovariance,
): Unbalance {
  const heavySpotDeg = vectorAngleDeg(unbalanceGmm);
  return {
    unbalanceGmm,
    covarianceGmm2,
    amountGmm: vectorAmount(unbalanceGmm),
    heavySpotDeg,
    lightSpotDeg: wrapTurnDeg(heavySpotDeg + 180),
    ci95: polarInterval95(unbalanceGmm, covarianceGmm2),
  };
}
