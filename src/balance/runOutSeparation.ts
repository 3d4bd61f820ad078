import { failed, succeeded } from '../contract/outcome.ts';
import {
  addVectors,
  scaleVector,
  subtractVectors,
  vectorAmount,
  vectorAngleDeg,
  type PlaneCovariance,
  type PlaneVector,
} from '../quantities/vector.ts';
import type { BalanceOutcome } from './failures.ts';
import {
  FRACTION,
  NOT_NEGATIVE,
  rejectCovariances,
  rejectNumbers,
  rejectVectors,
} from './inputs.ts';
import { addCovariances, outerCovariance, scaleCovariance } from './planeCovariance.ts';
import type { EdgeRise, Response } from './response.ts';
import { describeUnbalance, RESPONSE_MM_PER_GMM, type Unbalance } from './unbalance.ts';

/** A sweep on one ball, with the response that the wheel has on it. */
export interface BallSweep {
  readonly rise: EdgeRise;
  /** `standardError`: the part that belongs to this ball alone (its depth h). */
  readonly response: Pick<Response, 'mmPerGmm' | 'standardError'>;
}

export interface RunOutSeparation {
  readonly unbalance: Unbalance;
  /** τ, once-round run-out of the edge, mm, wheel frame, pointing where the edge stands high. */
  readonly runOutMm: PlaneVector;
  readonly runOutCovarianceMm2: PlaneCovariance;
  /** From peak to peak: twice |τ|. */
  readonly runOutPeakToPeakMm: number;
  readonly runOutHighSpotDeg: number;
}

/** Responses nearer to each other than this share of the larger blow every error up twentyfold. */
const RESPONSE_SPREAD_MIN = 0.05;
/** Nor may their difference drown in its own error. */
const RESPONSE_SPREAD_SIGMAS = 3;

/**
 * Two-ball method: A_i = −k_i·U + τ, so U = (A₂ − A₁)/(k₁ − k₂) and τ = A₁ + k₁·U. With Δ = k₁ − k₂:
 * Cov U = (C₁ + C₂)/Δ² + (σ₁² + σ₂²)/Δ²·U Uᵀ + common²·U Uᵀ,
 * Cov τ = (k₁²·C₂ + k₂²·C₁)/Δ² + (k₂²·σ₁² + k₁²·σ₂²)/Δ²·U Uᵀ.
 * `commonRelativeSd` is the error of both responses alike (mass, edge radius): it scales U and
 * leaves τ alone. Source: DESIGN section 3, first-order propagation.
 */
export function separateRunOut(
  first: BallSweep,
  second: BallSweep,
  commonRelativeSd: number,
): BalanceOutcome<RunOutSeparation> {
  const k1 = first.response.mmPerGmm;
  const k2 = second.response.mmPerGmm;
  const s1 = first.response.standardError;
  const s2 = second.response.standardError;
  const bad =
    rejectVectors({ first: first.rise.riseMm, second: second.rise.riseMm }) ??
    rejectCovariances({ first: first.rise.covarianceMm2, second: second.rise.covarianceMm2 }) ??
    rejectNumbers({
      firstMmPerGmm: [k1, RESPONSE_MM_PER_GMM],
      secondMmPerGmm: [k2, RESPONSE_MM_PER_GMM],
      firstStandardError: [s1, NOT_NEGATIVE],
      secondStandardError: [s2, NOT_NEGATIVE],
      commonRelativeSd: [commonRelativeSd, FRACTION],
    });
  if (bad) return bad;
  const spread = k1 - k2;
  const tooAlike =
    Math.abs(spread) < RESPONSE_SPREAD_MIN * Math.max(k1, k2) ||
    Math.abs(spread) < RESPONSE_SPREAD_SIGMAS * Math.hypot(s1, s2);
  if (tooAlike) return failed('responses-too-alike', { firstMmPerGmm: k1, secondMmPerGmm: k2 });
  const u = scaleVector(subtractVectors(second.rise.riseMm, first.rise.riseMm), 1 / spread);
  const runOutMm = addVectors(first.rise.riseMm, scaleVector(u, k1));
  const c1 = first.rise.covarianceMm2;
  const c2 = second.rise.covarianceMm2;
  const perSpread = 1 / (spread * spread);
  const unbalanceCovariance = addCovariances(
    scaleCovariance(addCovariances(c1, c2), perSpread),
    outerCovariance(u, (s1 * s1 + s2 * s2) * perSpread + commonRelativeSd ** 2),
  );
  const runOutCovarianceMm2 = addCovariances(
    addCovariances(
      scaleCovariance(c2, k1 * k1 * perSpread),
      scaleCovariance(c1, k2 * k2 * perSpread),
    ),
    outerCovariance(u, (k2 * k2 * s1 * s1 + k1 * k1 * s2 * s2) * perSpread),
  );
  return succeeded({
    unbalance: describeUnbalance(u, unbalanceCovariance),
    runOutMm,
    runOutCovarianceMm2,
    runOutPeakToPeakMm: 2 * vectorAmount(runOutMm),
    runOutHighSpotDeg: vectorAngleDeg(runOutMm),
  });
}
