import { failed, succeeded } from '../contract/outcome.ts';
import {
  addVectors,
  scaleVector,
  subtractVectors,
  vectorAmount,
  type PlaneVector,
  ZERO_VECTOR,
} from '../quantities/vector.ts';
import type { BalanceOutcome } from './failures.ts';
import { rejectCovariances, rejectVectors } from './inputs.ts';
import {
  addCovariances,
  evenCovariance,
  NO_COVARIANCE,
  scaleCovariance,
} from './planeCovariance.ts';
import { fPointTwoAbove } from './quantiles.ts';
import { describeUnbalance, type Unbalance } from './unbalance.ts';

export type RepeatedSweep = Pick<Unbalance, 'unbalanceGmm' | 'covarianceGmm2'>;

export interface PooledRepeats {
  /** Mean of the sweeps kept, with a covariance that allows for their small number. */
  readonly mean: Unbalance;
  /** Standard deviation of one sweep about the mean, each component, g·mm. */
  readonly scatterGmm: number;
  /** What of that the sweeps' own stated errors do not explain: lifting and seating, g·mm. */
  readonly seatErrorGmm: number;
  /** Sweeps left out of the mean, counted from 0, in the order found. */
  readonly outliers: readonly number[];
}

/** Share of sound series in which the test throws one sweep out wrongly. */
const OUTLIER_SHARE = 0.01;
/**
 * At most this share of the sweeps may be left out: of fewer than four none can be called the odd
 * one, and more outliers than that are no outliers but a loose seat.
 */
const OUTLIERS_MAX_SHARE = 0.25;
/** 95 % point of χ² with two degrees of freedom. */
const CHI2_2_95 = 5.991465;

/**
 * Several sweeps of one wheel, lifted and seated again in between. The seat's scatter is as large
 * for each, so the plain vector mean is taken. Outlier: distance from the mean of the others against
 * their scatter, |d|²·(n − 1)/n/2/s² ~ F(2, 2(n − 2)), at 1 % for the whole series (Bonferroni).
 * Seat error² = scatter² − mean stated variance. Covariance of the mean: scatter²/n, widened by
 * F₀.₉₅(2, 2(n − 1))·2/χ²₀.₉₅ so that 95 % intervals hold for few sweeps, and never under the
 * stated errors' own.
 */
export function poolRepeats(sweeps: readonly RepeatedSweep[]): BalanceOutcome<PooledRepeats> {
  if (sweeps.length < 2) return failed('sweeps-too-few', { sweeps: sweeps.length, needed: 2 });
  for (const sweep of sweeps) {
    const bad =
      rejectVectors({ unbalanceGmm: sweep.unbalanceGmm }) ??
      rejectCovariances({ unbalanceGmm: sweep.covarianceGmm2 });
    if (bad) return bad;
  }
  const outliers: number[] = [];
  let kept = sweeps.map((sweep, index) => ({ sweep, index }));
  while (outliers.length + 1 <= OUTLIERS_MAX_SHARE * sweeps.length) {
    const odd = oddOne(kept.map(({ sweep }) => sweep));
    if (odd === null) break;
    outliers.push(kept[odd]!.index);
    kept = kept.filter((_, i) => i !== odd);
  }
  return succeeded({ ...summaryOf(kept.map(({ sweep }) => sweep)), outliers });
}

function summaryOf(sweeps: readonly RepeatedSweep[]): Omit<PooledRepeats, 'outliers'> {
  const n = sweeps.length;
  const middle = meanOf(sweeps);
  const variance = varianceAbout(sweeps, middle);
  const stated = scaleCovariance(
    sweeps.reduce((sum, s) => addCovariances(sum, s.covarianceGmm2), NO_COVARIANCE),
    1 / n,
  );
  const statedVariance = (stated[0][0] + stated[1][1]) / 2;
  const widening = (fPointTwoAbove(2 * (n - 1), 0.05) * 2) / CHI2_2_95;
  const scattered = evenCovariance((variance * widening) / n);
  const covariance =
    variance * widening > statedVariance ? scattered : scaleCovariance(stated, 1 / n);
  return {
    mean: describeUnbalance(middle, covariance),
    scatterGmm: Math.sqrt(variance),
    seatErrorGmm: Math.sqrt(Math.max(0, variance - statedVariance)),
  };
}

/** Index of the sweep that stands out, or null. */
function oddOne(sweeps: readonly RepeatedSweep[]): number | null {
  const n = sweeps.length;
  const limit = fPointTwoAbove(2 * (n - 2), OUTLIER_SHARE / n);
  let odd: number | null = null;
  let farthest = 0;
  sweeps.forEach((sweep, index) => {
    const others = sweeps.filter((_, i) => i !== index);
    const middle = meanOf(others);
    // Scatter is not believed below what the sweeps state of themselves.
    const [[a], [, d]] = sweep.covarianceGmm2;
    const variance = Math.max(varianceAbout(others, middle), (a + d) / 2);
    const distance = vectorAmount(subtractVectors(sweep.unbalanceGmm, middle));
    const ratio = (distance * distance * (n - 1)) / n / 2 / Math.max(variance, VARIANCE_MIN_GMM2);
    if (ratio > limit && ratio > farthest) {
      odd = index;
      farthest = ratio;
    }
  });
  return odd;
}

/** Scatter of a g·mm and less is none: no reading resolves it, (g·mm)². */
const VARIANCE_MIN_GMM2 = 1;

function meanOf(sweeps: readonly RepeatedSweep[]): PlaneVector {
  const sum = sweeps.reduce((total, s) => addVectors(total, s.unbalanceGmm), ZERO_VECTOR);
  return scaleVector(sum, 1 / sweeps.length);
}

/** Variance of one component about a mean of the same sweeps, 2(n − 1) degrees of freedom. */
function varianceAbout(sweeps: readonly RepeatedSweep[], middle: PlaneVector): number {
  const squares = sweeps.map((s) => vectorAmount(subtractVectors(s.unbalanceGmm, middle)) ** 2);
  return squares.reduce((sum, v) => sum + v, 0) / (2 * (sweeps.length - 1));
}
