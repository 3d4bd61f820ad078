import type { SettledMotion } from './settledMotion.ts';
import type { RockingPrior } from './rockingEstimate.ts';
import type { WholeFit } from './wholeFit.ts';

export interface MotionUncertainty {
  readonly covariance: Float64Array;
  readonly frequencyLogSd: number;
  readonly evidence: number;
}

export function describeUncertainty(
  _motion: SettledMotion,
  whole: WholeFit,
  _spinRatio: number,
  _spinRatioSd: number,
  _prior: RockingPrior,
): MotionUncertainty {
  return { covariance: whole.covariance, frequencyLogSd: 0, evidence: 0 };
}
