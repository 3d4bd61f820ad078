import { failed, succeeded } from '../contract/outcome.ts';
import type { Weight } from '../contract/reading.ts';
import { RAD_PER_DEG } from '../quantities/angle.ts';
import {
  addVectors,
  divideAsComplex,
  scaleVector,
  subtractVectors,
  vectorAmount,
  vectorFromPolar,
  ZERO_VECTOR,
  type PlaneCovariance,
  type PlaneVector,
} from '../quantities/vector.ts';
import type { BalanceFailed, BalanceOutcome } from './failures.ts';
import {
  DIRECTION_DEG,
  FRACTION,
  NOT_NEGATIVE,
  POSITIVE,
  rejectCovariances,
  rejectNumbers,
  rejectVectors,
  SIGNED,
} from './inputs.ts';
import {
  across,
  addCovariances,
  covarianceTimesComplex,
  outerCovariance,
  varianceAlong,
} from './planeCovariance.ts';
import { judgeResponseAngle, type ResponseAngleJudgement } from './responseAngle.ts';

/** Rise of the tread edge per unbalance, mm per g·mm: k in DESIGN, always positive. */
export interface Response {
  readonly mmPerGmm: number;
  readonly standardError: number;
  readonly source: 'model' | 'trial';
}

/** The edge's once-round rise A as read in one sweep: points at the HIGH spot, wheel frame, mm. */
export interface EdgeRise {
  readonly riseMm: PlaneVector;
  readonly covarianceMm2: PlaneCovariance;
}

/** Relative standard deviations of the model's inputs. */
interface ModelUncertainty {
  readonly massRelativeSd: number;
  readonly edgeRadiusRelativeSd: number;
  readonly pendulumDepthRelativeSd: number;
}

/**
 * Assumed until measured: a household scale (0.1–0.2 kg in 16 kg), a tape round the tread, and the
 * depth h as found from ball, bore and weighings (0.1–0.2 mm in 8 mm).
 */
const ASSUMED_MODEL_UNCERTAINTY: ModelUncertainty = {
  massRelativeSd: 0.01,
  edgeRadiusRelativeSd: 0.005,
  pendulumDepthRelativeSd: 0.015,
};

export interface ModelResponseInput {
  /** M, kg. */
  readonly massKg: number;
  /** r_e, mm. */
  readonly edgeRadiusMm: number;
  /** h, centre of mass below the ball's centre, mm. */
  readonly pendulumDepthMm: number;
  readonly uncertainty?: ModelUncertainty;
}

const GRAMS_PER_KG = 1000;

/**
 * The response by formula: k = r_e / (M h), mm per g·mm, with M in g and lengths in mm (the lean is
 * θ = U/(M h) rad, and the edge rises by r_e·θ). Relative errors add in squares.
 * Source: statics of a round-footed body, DESIGN section 3; small lean (tan θ ≈ θ).
 */
export function modelResponse(input: ModelResponseInput): BalanceOutcome<Response> {
  const { massKg, edgeRadiusMm, pendulumDepthMm } = input;
  const uncertainty = input.uncertainty ?? ASSUMED_MODEL_UNCERTAINTY;
  const bad = rejectNumbers({
    massKg: [massKg, POSITIVE],
    edgeRadiusMm: [edgeRadiusMm, POSITIVE],
    pendulumDepthMm: [pendulumDepthMm, POSITIVE],
    massRelativeSd: [uncertainty.massRelativeSd, FRACTION],
    edgeRadiusRelativeSd: [uncertainty.edgeRadiusRelativeSd, FRACTION],
    pendulumDepthRelativeSd: [uncertainty.pendulumDepthRelativeSd, FRACTION],
  });
  if (bad) return bad;
  const mmPerGmm = edgeRadiusMm / (massKg * GRAMS_PER_KG * pendulumDepthMm);
  const relative = Math.hypot(
    uncertainty.massRelativeSd,
    uncertainty.edgeRadiusRelativeSd,
    uncertainty.pendulumDepthRelativeSd,
  );
  return succeeded({ mmPerGmm, standardError: mmPerGmm * relative, source: 'model' });
}

/** How well the trial weight itself is known: its moment (mass × radius) and its place. */
export interface TrialUncertainty {
  readonly momentRelativeSd: number;
  readonly placeSdDeg: number;
}

/** Assumed until stated: a weight good to 1 %, a radius good to 1 mm, a place good to 1°. */
export const ASSUMED_TRIAL_UNCERTAINTY: TrialUncertainty = {
  momentRelativeSd: 0.012,
  placeSdDeg: 1,
};

export interface InfluenceCoefficient {
  /** k̂ as a complex number, mm per g·mm; along 0° is the real part. */
  readonly coefficientMmPerGmm: PlaneVector;
  readonly covariance: PlaneCovariance;
  /** |k̂| with its standard error: the response, measured. */
  readonly response: Response;
  readonly angle: ResponseAngleJudgement;
}

export interface TrialSweeps {
  readonly before: EdgeRise;
  readonly after: EdgeRise;
  /** What was stuck on between the two (negative mass: taken off). */
  readonly added: readonly Weight[];
  readonly uncertainty?: TrialUncertainty;
}

/** A trial of less moment than this divides by nothing, g·mm: far under any weight made. */
const TRIAL_MIN_GMM = 1e-6;

/**
 * Influence coefficient from a sweep before and one after adding a known weight vector W:
 * k̂ = −(A₁ − A₀)/W as complex numbers, mm per g·mm (minus: the side with the added mass sinks).
 * Run-out τ is the same in both sweeps and drops out. Covariance of k̂ = (C₀ + C₁) turned and scaled
 * by 1/W, plus the trial's own error: |k̂|·relative along k̂, |k̂|·angle across it.
 * Source: influence-coefficient method, ISO 21940-13 terms; DESIGN section 3.
 */
export function measuredResponse(trial: TrialSweeps): BalanceOutcome<InfluenceCoefficient> {
  const { before, after } = trial;
  const uncertainty = trial.uncertainty ?? ASSUMED_TRIAL_UNCERTAINTY;
  const bad =
    rejectVectors({ before: before.riseMm, after: after.riseMm }) ??
    rejectCovariances({ before: before.covarianceMm2, after: after.covarianceMm2 }) ??
    rejectTrialUncertainty(uncertainty);
  if (bad) return bad;
  const moment = weightVectorGmm(trial.added);
  if (!moment.ok) return moment;
  if (vectorAmount(moment.value) < TRIAL_MIN_GMM) return failed('trial-too-small', {});
  const change = subtractVectors(after.riseMm, before.riseMm);
  const perMoment = divideAsComplex({ along0: -1, along90: 0 }, moment.value);
  const coefficient = scaleVector(divideAsComplex(change, moment.value), -1);
  const reading = covarianceTimesComplex(
    addCovariances(before.covarianceMm2, after.covarianceMm2),
    perMoment,
  );
  const covariance = addCovariances(reading, trialCovariance(coefficient, uncertainty));
  return succeeded(coefficientSummary(coefficient, covariance, moment.value));
}

/** Refuses uncertainties of a trial that are no shares of one or no angle. */
export function rejectTrialUncertainty(uncertainty: TrialUncertainty): BalanceFailed | null {
  return rejectNumbers({
    momentRelativeSd: [uncertainty.momentRelativeSd, FRACTION],
    placeSdDeg: [uncertainty.placeSdDeg, NOT_NEGATIVE],
  });
}

/** Error of k̂ from the trial itself: along k̂ by its moment, across by its place. */
export function trialCovariance(
  coefficient: PlaneVector,
  uncertainty: TrialUncertainty,
): PlaneCovariance {
  return addCovariances(
    outerCovariance(coefficient, uncertainty.momentRelativeSd ** 2),
    outerCovariance(across(coefficient), (uncertainty.placeSdDeg * RAD_PER_DEG) ** 2),
  );
}

/** |k̂|, its standard error along k̂, and what its angle says. */
export function coefficientSummary(
  coefficient: PlaneVector,
  covariance: PlaneCovariance,
  momentGmm: PlaneVector,
): InfluenceCoefficient {
  const mmPerGmm = vectorAmount(coefficient);
  const direction = mmPerGmm > 0 ? coefficient : { along0: 1, along90: 0 };
  return {
    coefficientMmPerGmm: coefficient,
    covariance,
    response: {
      mmPerGmm,
      standardError: Math.sqrt(varianceAlong(covariance, direction)),
      source: 'trial',
    },
    angle: judgeResponseAngle(coefficient, covariance, momentGmm),
  };
}

/** Σ mass·radius at each weight's angle, g·mm, wheel frame. */
export function weightVectorGmm(weights: readonly Weight[]): BalanceOutcome<PlaneVector> {
  let sum: PlaneVector = ZERO_VECTOR;
  for (const { massG, radiusMm, angleDeg } of weights) {
    const bad = rejectNumbers({
      massG: [massG, SIGNED],
      radiusMm: [radiusMm, NOT_NEGATIVE],
      angleDeg: [angleDeg, DIRECTION_DEG],
    });
    if (bad) return bad;
    sum = addVectors(sum, vectorFromPolar(massG * radiusMm, angleDeg));
  }
  return succeeded(sum);
}
