import { failed, succeeded } from '../contract/outcome.ts';
import { DEG_PER_RAD, RAD_PER_DEG, shortWayDeg } from '../quantities/angle.ts';
import {
  addVectors,
  vectorAmount,
  vectorAngleDeg,
  vectorFromPolar,
  type PlaneVector,
} from '../quantities/vector.ts';
import type { BalanceOutcome } from './failures.ts';
import { DIRECTION_DEG, NOT_NEGATIVE, POSITIVE, rejectNumbers, rejectVectors } from './inputs.ts';

/** What a person read by eye: so many grams are wanted at the light spot. */
export interface EyeReading {
  readonly lightSpotDeg: number;
  readonly massG: number;
}

export interface EyeComparison {
  /** By eye less measured, [−180, 180), positive clockwise; null when there is nothing to point at. */
  readonly angleOffDeg: number | null;
  /** By eye less measured, g at the weight radius. */
  readonly massOffG: number;
  readonly measuredG: number;
  readonly leftOverGmm: PlaneVector;
  /** What would be left had the by-eye weights been stuck on, g at the weight radius. */
  readonly leftOverG: number;
}

/** Less than this is nothing to point at, g at the weight radius: a tenth of the finest weight sold. */
const NOTHING_G = 0.1;

/**
 * A reading by eye against the measured unbalance: difference in angle and grams, and
 * U + (by-eye weights) that would have been left.
 */
export function compareByEye(
  unbalanceGmm: PlaneVector,
  eye: EyeReading,
  weightRadiusMm: number,
): BalanceOutcome<EyeComparison> {
  const bad =
    rejectVectors({ unbalanceGmm }) ??
    rejectNumbers({
      lightSpotDeg: [eye.lightSpotDeg, DIRECTION_DEG],
      massG: [eye.massG, NOT_NEGATIVE],
      weightRadiusMm: [weightRadiusMm, POSITIVE],
    });
  if (bad) return bad;
  const measuredG = vectorAmount(unbalanceGmm) / weightRadiusMm;
  const leftOverGmm = addVectors(
    unbalanceGmm,
    vectorFromPolar(eye.massG * weightRadiusMm, eye.lightSpotDeg),
  );
  const hasDirection = measuredG >= NOTHING_G && eye.massG >= NOTHING_G;
  return succeeded({
    angleOffDeg: hasDirection
      ? shortWayDeg(vectorAngleDeg(unbalanceGmm) + 180, eye.lightSpotDeg)
      : null,
    massOffG: eye.massG - measuredG,
    measuredG,
    leftOverGmm,
    leftOverG: vectorAmount(leftOverGmm) / weightRadiusMm,
  });
}

export interface EyeHabit {
  readonly readings: number;
  /** Mean of the differences in angle (of those that have one) and their scatter; degrees. */
  readonly angleBiasDeg: number | null;
  readonly angleScatterDeg: number | null;
  /** Mean and standard deviation of the differences in grams. */
  readonly massBiasG: number;
  readonly massScatterG: number | null;
}

/** Mean directions shorter than this point nowhere: the differences go all round. */
const MEAN_DIRECTION_MIN = 0.05;

/**
 * Bias and scatter of one person's readings over a logbook. Angles are averaged as directions
 * (mean of unit vectors, length ρ); their scatter is the circular standard deviation √(−2·ln ρ).
 * Source: K. V. Mardia, Statistics of Directional Data (from memory).
 */
export function eyeHabit(
  log: readonly Pick<EyeComparison, 'angleOffDeg' | 'massOffG'>[],
): BalanceOutcome<EyeHabit> {
  if (log.length === 0) return failed('sweeps-too-few', { readings: 0, needed: 1 });
  for (const entry of log) {
    const bad = rejectNumbers({
      angleOffDeg: [entry.angleOffDeg ?? 0, DIRECTION_DEG],
      massOffG: [Math.abs(entry.massOffG), NOT_NEGATIVE],
    });
    if (bad) return bad;
  }
  const masses = log.map((entry) => entry.massOffG);
  const massBiasG = mean(masses);
  const spread = masses.reduce((sum, m) => sum + (m - massBiasG) ** 2, 0);
  return succeeded({
    readings: log.length,
    ...directionHabit(log.map((entry) => entry.angleOffDeg).filter((off) => off !== null)),
    massBiasG,
    massScatterG: log.length > 1 ? Math.sqrt(spread / (log.length - 1)) : null,
  });
}

function directionHabit(
  offsDeg: readonly number[],
): Pick<EyeHabit, 'angleBiasDeg' | 'angleScatterDeg'> {
  if (offsDeg.length === 0) return { angleBiasDeg: null, angleScatterDeg: null };
  const c = mean(offsDeg.map((off) => Math.cos(off * RAD_PER_DEG)));
  const s = mean(offsDeg.map((off) => Math.sin(off * RAD_PER_DEG)));
  const length = Math.min(1, Math.hypot(c, s));
  if (length < MEAN_DIRECTION_MIN) return { angleBiasDeg: null, angleScatterDeg: null };
  return {
    angleBiasDeg: Math.atan2(s, c) * DEG_PER_RAD,
    angleScatterDeg: offsDeg.length > 1 ? Math.sqrt(-2 * Math.log(length)) * DEG_PER_RAD : null,
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, v) => sum + v, 0) / values.length;
}
