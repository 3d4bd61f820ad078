import type { PlaneCovariance, PlaneVector } from '../../quantities/vector.ts';

/**
 * What the fit says of a sweep. All lengths are heights of the edge in millimetres.
 *
 * y(t, α) = g₀ + stand·(cos α, sin α) + c_α + Σₙ (aₙ cos nβ + bₙ sin nβ) + rocking·(cos α, sin α),
 * β = α − φ(t). The n = 1 wave is that of the wheel at rest, i.e. with the effect of turning on it
 * taken out.
 */
export interface TiltFit {
  /** g₀, mean height of the edge above the line. */
  readonly offsetMm: number;
  /** Lean that stays in the room; points at the azimuth of its high side. */
  readonly standMm: PlaneVector;
  readonly standCovarianceMm2: PlaneCovariance;
  /** (a₁, b₁): rise of the edge on the still wheel; points at the wheel angle of the high spot. */
  readonly tiltMm: PlaneVector;
  readonly tiltCovarianceMm2: PlaneCovariance;
  /** aₙ and bₙ for n = 1..4. */
  readonly waveCosMm: readonly number[];
  readonly waveSinMm: readonly number[];
  /** 11×11, row by row, mm²; order g₀, stand 0°, stand 90°, a₁, b₁, … a₄, b₄. */
  readonly covarianceMm2: Float64Array;
  /** c_α, length A. */
  readonly azimuthBiasMm: Float64Array;
  readonly rocking: RockingSummary;
  /** Factor by which the heights scatter more than their standard errors say, within a frame. */
  readonly whiteScale: number;
  /** The same for the plane of a whole frame: above `whiteScale` where errors run along azimuth. */
  readonly planeScale: number;
  /**
   * Tilt of each frame beyond stand and still wheel (rocking, slow change, effect of turning), by
   * components along azimuth 0° and 90°; length 2F, NaN for frames outside the fitted span.
   */
  readonly rockingMm: Float32Array;
  /** Change of the offset of each frame, smoothed; length F. */
  readonly offsetDriftMm: Float32Array;
  /** Height minus everything fitted, rocking included; length F·A, NaN where no height. */
  readonly residualMm: Float32Array;
  readonly sway: SwaySummary;
  /** Weight of each frame in the fit, 0 (not used, or wild) to 1; length F. */
  readonly frameWeight: Float32Array;
  readonly counts: FitCounts;
}

interface RockingSummary {
  readonly frequencyHz: number;
  /** Standard deviation of the natural logarithm of the frequency. */
  readonly frequencyLogSd: number;
  readonly dampingRatio: number;
  /** Root mean square of one component over the sweep, mm at the edge. */
  readonly rmsMm: number;
  /**
   * Logarithm of the likelihood ratio against "nothing swings". Noise alone, searched over all
   * periods and both axes, reaches 5 to 8; above SWING_EVIDENCE the frequency can be believed,
   * below it is little more than the prior's.
   */
  readonly evidence: number;
  /** Slow random change of lean: standard deviation of one component and its correlation time. */
  readonly slowMm: number;
  readonly slowTimeS: number;
}

/** How the picture itself goes to and fro, as a rise and a lean across the sight: rms, mm at the edge. */
interface SwaySummary {
  readonly downMm: number;
  readonly acrossMm: number;
}

interface FitCounts {
  readonly frames: number;
  readonly heights: number;
  /** Sum of the frames' weights. */
  readonly effectiveFrames: number;
  /** Span of turn over the frames used, degrees. */
  readonly coveredDeg: number;
  /** Widest stretch of the turn, modulo 360°, in which no frame was used, degrees. */
  readonly widestGapDeg: number;
}

export interface TiltFitOptions {
  /** s: moment of inertia about the axle over that about a diameter. Default 1.7 (car wheels). */
  readonly spinRatio?: number;
  /** Believed period of rocking, s, and the standard deviation of its natural logarithm. */
  readonly rockingPeriod?: { readonly periodS: number; readonly logSd: number };
  /** Standard deviation assumed for `spinRatio`; enters the ±. Default 0.1. */
  readonly spinRatioSd?: number;
}

export type TiltFitFailure =
  | 'too-few-frames'
  | 'turn-incomplete'
  | 'wheel-changed'
  | 'rocking-too-strong';

/** Unknowns common to all frames: g₀, stand (2), waves n = 1..4 (8). */
export const COMMON_UNKNOWNS = 11;
/** Index of a₁ among them. */
export const FIRST_WAVE = 3;
/** Waves n = 2..4, cosine and sine. */
export const HIGHER_WAVES = 6;
/**
 * Heights are never more exact than a hundredth of their stated error, no unit: it keeps drawn
 * heights without any noise from dividing by nothing.
 */
export const LEAST_NOISE_SCALE = 0.01;

/** `RockingSummary.evidence` from which a swing is believed: e⁻¹⁰ for one of noise. */
export const SWING_EVIDENCE = 10;
