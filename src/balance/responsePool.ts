import { failed, succeeded } from '../contract/outcome.ts';
import {
  scaleVector,
  subtractVectors,
  vectorAmount,
  type PlaneVector,
} from '../quantities/vector.ts';
import type { BalanceOutcome } from './failures.ts';
import { rejectCovariances, rejectVectors } from './inputs.ts';
import { addCovariances, scaleCovariance } from './planeCovariance.ts';
import { chiSquare99 } from './quantiles.ts';
import {
  ASSUMED_TRIAL_UNCERTAINTY,
  coefficientSummary,
  rejectTrialUncertainty,
  trialCovariance,
  type InfluenceCoefficient,
  type TrialUncertainty,
} from './response.ts';
import { fitRiseAgainstWeights, type LoadedSweep, type RiseFit } from './responseFit.ts';

export interface PooledResponse extends InfluenceCoefficient {
  /**
   * Rise with nothing added, mm, from all sweeps together, −k·U + run-out; in the frame of the
   * sweeps as they came.
   */
  readonly bareRiseMm: PlaneVector;
  readonly drift: {
    /** not-told: two sweeps fit any response. */
    readonly finding: 'none' | 'seen' | 'not-told';
    /** Distance of each sweep from the common fit, mm. */
    readonly residualMm: readonly number[];
    /** The sweep that fits worst, counted from 0. */
    readonly worstSweep: number;
  };
}

/**
 * The response from any number of sweeps of one wheel with different known weights on it, weighted
 * by their covariances: A_j = a − k̂·V_j for all j at once (generalised least squares, k̂ complex).
 * Sweeps shared by two steps are thereby counted once. Scatter beyond the stated errors (χ² over its
 * 99 % point) is flagged as drift and widens the covariance by χ²/ν (Birge's ratio). Where the sweeps
 * fit a mirrored wheel decidedly better, the turn sense is wrong and the mirrored response is given.
 */
export function pooledResponse(
  sweeps: readonly LoadedSweep[],
  uncertainty: TrialUncertainty = ASSUMED_TRIAL_UNCERTAINTY,
): BalanceOutcome<PooledResponse> {
  if (sweeps.length < 2) return failed('sweeps-too-few', { sweeps: sweeps.length, needed: 2 });
  for (const sweep of sweeps) {
    const bad =
      rejectVectors({ riseMm: sweep.rise.riseMm, addedGmm: sweep.addedGmm }) ??
      rejectCovariances({ riseMm: sweep.rise.covarianceMm2 });
    if (bad) return bad;
  }
  const bad = rejectTrialUncertainty(uncertainty);
  if (bad) return bad;
  const straight = fitRiseAgainstWeights(sweeps, false);
  const mirrored = fitRiseAgainstWeights(sweeps, true);
  if (!straight || !mirrored) return failed('trial-too-small', { sweeps: sweeps.length });
  const degreesOfFreedom = 2 * sweeps.length - 4;
  const isMirrored =
    degreesOfFreedom > 0 && straight.chiSquare - mirrored.chiSquare > chiSquare99(degreesOfFreedom);
  const fit = isMirrored ? mirrored : straight;
  const drift = driftOf(fit, degreesOfFreedom);
  const covariance = addCovariances(
    scaleCovariance(fit.covariance, drift.widening),
    trialCovariance(fit.coefficient, uncertainty),
  );
  const summary = coefficientSummary(fit.coefficient, covariance, largestStep(sweeps));
  const angle = isMirrored
    ? { ...summary.angle, finding: 'turn-sense-wrong' as const, alsoPossible: [] }
    : summary.angle;
  const { finding, residualMm, worstSweep } = drift;
  return succeeded({
    ...summary,
    angle,
    bareRiseMm: fit.bareRiseMm,
    drift: { finding, residualMm, worstSweep },
  });
}

function driftOf(fit: RiseFit, degreesOfFreedom: number) {
  const worstSweep = fit.distances.indexOf(Math.max(...fit.distances));
  const residualMm = fit.residualsMm.map(vectorAmount);
  if (degreesOfFreedom === 0) {
    return { finding: 'not-told' as const, residualMm, worstSweep, widening: 1 };
  }
  const seen = fit.chiSquare > chiSquare99(degreesOfFreedom);
  const widening = seen ? fit.chiSquare / degreesOfFreedom : 1;
  return {
    finding: seen ? ('seen' as const) : ('none' as const),
    residualMm,
    worstSweep,
    widening,
  };
}

/** The largest weight vector relative to the first sweep's: the one that decides the angle. */
function largestStep(sweeps: readonly LoadedSweep[]): PlaneVector {
  const steps = sweeps.map((s) => subtractVectors(s.addedGmm, sweeps[0]!.addedGmm));
  return steps.reduce(
    (a, b) => (vectorAmount(b) > vectorAmount(a) ? b : a),
    scaleVector(steps[0]!, 0),
  );
}
