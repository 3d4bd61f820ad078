import type { SweepObservations } from '../../contract/observations.ts';
import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import { LEAST_HEIGHTS_PER_FRAME, binFrames } from './frameBins.ts';
import { describeFrames } from './frameMotion.ts';
import { DEFAULT_PERIOD_PRIOR, type RockingPrior } from './rockingEstimate.ts';
import { deviationScale, settleHeights } from './settledHeights.ts';
import { settleMotion } from './settledMotion.ts';
import { smoothResidual } from './smoothedBins.ts';
import {
  COMMON_UNKNOWNS,
  FIRST_WAVE,
  HIGHER_WAVES,
  type TiltFit,
  type TiltFitFailure,
  type TiltFitOptions,
} from './tiltFit.ts';
import { measureTurnCoverage } from './turnCoverage.ts';
import { addToCommon, measureMotionUncertainty } from './motionUncertainty.ts';
import { wheelChange } from './wheelChange.ts';
import { fitWhole, type WholeFit } from './wholeFit.ts';

/** Spin over transverse moment of inertia of a car wheel (DESIGN section 3). */
const SPIN_RATIO = 1.7;
/** Wheels differ by about this much in it. */
const SPIN_RATIO_SD = 0.1;
/** Under two seconds at 30 frames a second nothing can be said of a swing. */
const LEAST_FRAMES = 60;
/** Tenths of a second with a plane that the motion's six parameters need. */
const LEAST_BINS = 40;
/** Under this span stand and wheel cannot be told apart well enough, degrees; a safety net. */
const LEAST_COVERED_DEG = 300;
/** A stretch of the turn wider than this without any frame leaves the waves open, degrees. */
const WIDEST_GAP_DEG = 100;
/** Rocking, rms of one component, that no camera follows well, mm at the edge. */
const STRONGEST_ROCKING_MM = 12;
/** A ± (95 %) of the rise as large as a reading by eye has (a quarter ounce lifts it 3 mm), mm. */
const LARGEST_RADIUS_95_MM = 3;
/** √5.991: half axis of the 95 % region in standard deviations, two freedoms. */
const RADIUS_95_PER_SD = 2.4477;

/**
 * Fits stand, wheel and random motion to a whole sweep's heights.
 *
 * Model and signs: see `TiltFit`. Rocking is a damped gyroscopic swing with random kicks, plus a
 * slow random change, plus the picture's own sway, plus white noise, its parameters found by restricted maximum likelihood;
 * the unknowns by generalised least squares through the same filter, so that the covariance holds
 * for rocking too (DESIGN section 8.7). Wild heights and wild frames are weighed down.
 *
 * @returns `too-few-frames`, `turn-incomplete`, `wheel-changed` or `rocking-too-strong` with what was seen.
 * @throws RangeError when the observations' arrays do not fit each other.
 */
export function fitTilt(
  observations: SweepObservations,
  options: TiltFitOptions = {},
): Outcome<TiltFit, TiltFitFailure> {
  const bins = binFrames(observations);
  if (bins.usedFrames < LEAST_FRAMES || bins.count < LEAST_BINS) {
    return failed('too-few-frames', {
      framesWithAPlane: bins.usedFrames,
      needed: LEAST_FRAMES,
      heightsPerFrameNeeded: LEAST_HEIGHTS_PER_FRAME,
    });
  }
  const coverage = measureTurnCoverage(observations, bins);
  if (coverage.coveredDeg < LEAST_COVERED_DEG || coverage.widestGapDeg > WIDEST_GAP_DEG) {
    return failed('turn-incomplete', { ...coverage });
  }
  const spinRatio = options.spinRatio ?? SPIN_RATIO;
  const prior = priorOf(options);
  const settled = settleHeights(observations, bins);
  const motion = settleMotion(settled, spinRatio, observations.azimuthBiasSdMm, prior);
  const whole = fitWhole(
    settled.planes,
    motion.verdicts,
    motion.offsetSdMm,
    motion.estimate.motion,
    spinRatio,
    observations.azimuthBiasSdMm,
    deviationScale(settled),
  );
  if (whole === null) return failed('turn-incomplete', { ...coverage, unknowns: 'not separable' });
  const changed = wheelChange(motion, spinRatio, prior);
  if (changed !== null) {
    return failed('wheel-changed', {
      aboutSecond: Math.round(changed.atS),
      changeMm: changed.changeMm,
    });
  }
  const uncertainty = measureMotionUncertainty(
    motion,
    spinRatio,
    options.spinRatioSd ?? SPIN_RATIO_SD,
    prior,
  );
  const covariance = addToCommon(whole.covariance, uncertainty);
  const { smoothed, turning } = smoothResidual(
    whole.series,
    whole.coefficients,
    motion.estimate.motion,
    spinRatio,
  );
  const frames = describeFrames(observations, bins, settled, whole, motion, smoothed, turning);
  const radius95Mm = RADIUS_95_PER_SD * Math.sqrt(largestVariance(covariance));
  if (frames.rmsMm > STRONGEST_ROCKING_MM || radius95Mm > LARGEST_RADIUS_95_MM) {
    return failed('rocking-too-strong', { rockingRmsMm: frames.rmsMm, radius95Mm });
  }
  const { rateRadPerS, dampingRatio, slowMm, slowTimeS, planeScale, swayDownMm, swayAcrossMm } =
    motion.estimate.motion;
  return succeeded({
    ...commonUnknowns(whole, covariance, observations.azimuthsDeg.length),
    rocking: {
      frequencyHz: rateRadPerS / (2 * Math.PI),
      frequencyLogSd: uncertainty.frequencyLogSd,
      dampingRatio,
      rmsMm: frames.rmsMm,
      evidence: uncertainty.evidence,
      slowMm,
      slowTimeS,
    },
    sway: { downMm: swayDownMm, acrossMm: swayAcrossMm },
    whiteScale: settled.weights.whiteScale,
    planeScale,
    rockingMm: frames.rockingMm,
    offsetDriftMm: frames.offsetDriftMm,
    residualMm: frames.residualMm,
    frameWeight: frames.frameWeight,
    counts: { ...frames.counts, ...coverage },
  });
}

function priorOf(options: TiltFitOptions): RockingPrior {
  if (options.rockingPeriod === undefined) return DEFAULT_PERIOD_PRIOR;
  const { periodS, logSd } = options.rockingPeriod;
  if (!(periodS > 0 && logSd > 0)) {
    throw new RangeError(`rocking period ${periodS} s ± ${logSd} must be positive`);
  }
  return { periodS, periodLogSd: logSd };
}

function largestVariance(covariance: Float64Array): number {
  const at = FIRST_WAVE * COMMON_UNKNOWNS + FIRST_WAVE;
  const [a, b, c] = [covariance[at], covariance[at + 1], covariance[at + COMMON_UNKNOWNS + 1]];
  return (a + c) / 2 + Math.hypot((a - c) / 2, b);
}

function commonUnknowns(whole: WholeFit, covariance: Float64Array, azimuths: number) {
  const c = whole.coefficients;
  const a1 = c[c.length - 2];
  const b1 = c[c.length - 1];
  const block = (at: number) => {
    const i = at * COMMON_UNKNOWNS + at;
    return [
      [covariance[i], covariance[i + 1]],
      [covariance[i + 1], covariance[i + COMMON_UNKNOWNS + 1]],
    ] as const;
  };
  const azimuthBiasMm = new Float64Array(azimuths);
  const constants = c.length - 2 - 3 - HIGHER_WAVES;
  for (let a = 0; a < constants; a++) azimuthBiasMm[a] = c[3 + HIGHER_WAVES + a];
  return {
    offsetMm: c[0],
    standMm: { along0: c[1], along90: c[2] },
    standCovarianceMm2: block(1),
    tiltMm: { along0: a1, along90: b1 },
    tiltCovarianceMm2: block(FIRST_WAVE),
    waveCosMm: [a1, c[3], c[5], c[7]],
    waveSinMm: [b1, c[4], c[6], c[8]],
    covarianceMm2: covariance,
    azimuthBiasMm,
  };
}
