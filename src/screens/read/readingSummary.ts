import { RAD_PER_DEG, shortWayDeg, wrapTurnDeg } from '../../quantities/angle.ts';
import type { AcceptedReading, Weight } from '../../contract/reading.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import { weightsByPlace, type WeightPlan } from '../../job/weightPlan.ts';

/** Half width of a 95 % range in standard errors of a normal distribution. */
export const NORMAL_95 = 1.96;

/** A reading in the terms of the person at the stand: grams at the weight radius, and where. */
export interface ReadingSummary {
  /** |U| / weight radius, g. */
  readonly amountG: number;
  /** Larger half of the amount's 95 % interval, g. */
  readonly amountPlusMinusG: number;
  /** The amount's 95 % interval, g at the weight radius. */
  readonly amountRangeG: readonly [number, number];
  /** Null when no side is clearly heavy. */
  readonly spots: {
    readonly heavyDeg: number;
    readonly lightDeg: number;
    /** Half the width of the angle's 95 % interval, degrees. */
    readonly plusMinusDeg: number;
    /** Interval about the light spot, clockwise from first to second, degrees. */
    readonly lightRangeDeg: readonly [number, number];
  } | null;
  /** Empty when the place is not known: a weight there would be a guess. */
  readonly weights: readonly Weight[];
  /** What is left with `weights` stuck on, g at the weight radius. */
  readonly leftG: number;
  /** Edge rise for one gram at the weight radius, and its standard error, mm. */
  readonly riseMmPerG: number;
  readonly riseStandardErrorMmPerG: number;
  /** Standard error of the edge's once-round rise, mm, along the rise itself. */
  readonly edgeRiseStandardErrorMm: number;
  /** Stand lean as a rise at the tread edge, mm. */
  readonly standRiseMm: number;
  /** Half of the 95 % range of that rise; null in a reading that does not tell it. */
  readonly standPlusMinusMm: number | null;
  /** False where the lean is smaller than its own ±: its direction would be a guess. */
  readonly isStandTold: boolean;
}

/**
 * Without a known place nothing is stuck on, and all of the unbalance is left. With a `plan`, its
 * weights are proposed; without one, those that the reading's file names.
 */
export function readingSummary(
  reading: AcceptedReading,
  setup: SweepSetup,
  plan: WeightPlan | null = null,
): ReadingSummary {
  const { unbalance, response, tilt } = reading;
  const { weightRadiusMm, edgeRadiusMm } = setup.wheel;
  const [low, high] = unbalance.ci95.amountGmm;
  const spots = spotsOf(reading);
  const proposedLeftGmm = plan === null ? reading.residualGmm : plan.leftGmm;
  const proposed = plan === null ? reading.correction : weightsByPlace(plan);
  const leftGmm = spots === null ? unbalance.amountGmm : proposedLeftGmm;
  return {
    amountG: unbalance.amountGmm / weightRadiusMm,
    amountPlusMinusG:
      Math.max(high - unbalance.amountGmm, unbalance.amountGmm - low) / weightRadiusMm,
    amountRangeG: [low / weightRadiusMm, high / weightRadiusMm],
    spots,
    weights: spots === null ? [] : proposed,
    leftG: leftGmm / weightRadiusMm,
    riseMmPerG: response.mmPerGmm * weightRadiusMm,
    riseStandardErrorMmPerG: response.standardError * weightRadiusMm,
    edgeRiseStandardErrorMm: riseStandardErrorMm(tilt),
    standRiseMm: (tilt.standMrad / 1000) * edgeRadiusMm,
    ...standDoubt(tilt, edgeRadiusMm),
  };
}

/** Readings of earlier versions do not say how well they know the lean: it is told as it stands. */
function standDoubt(
  { standMrad, standMradStandardError: sdMrad }: AcceptedReading['tilt'],
  edgeRadiusMm: number,
): Pick<ReadingSummary, 'standPlusMinusMm' | 'isStandTold'> {
  if (sdMrad === undefined) return { standPlusMinusMm: null, isStandTold: true };
  const plusMinusMrad = NORMAL_95 * sdMrad;
  return {
    standPlusMinusMm: (plusMinusMrad / 1000) * edgeRadiusMm,
    isStandTold: standMrad > plusMinusMrad,
  };
}

/** √(uᵀ·C·u), u the unit vector toward the high spot. */
function riseStandardErrorMm(tilt: AcceptedReading['tilt']): number {
  const u = [Math.cos(tilt.highSpotDeg * RAD_PER_DEG), Math.sin(tilt.highSpotDeg * RAD_PER_DEG)];
  const [[c00, c01], [, c11]] = tilt.covarianceMm2;
  return Math.sqrt(u[0]! ** 2 * c00 + 2 * u[0]! * u[1]! * c01 + u[1]! ** 2 * c11);
}

function spotsOf(reading: AcceptedReading): ReadingSummary['spots'] {
  const { heavySpotDeg, lightSpotDeg, ci95 } = reading.unbalance;
  if (ci95.angleDeg === null) return null;
  const [from, to] = ci95.angleDeg;
  return {
    heavyDeg: heavySpotDeg,
    lightDeg: lightSpotDeg,
    plusMinusDeg: Math.max(
      Math.abs(shortWayDeg(heavySpotDeg, from)),
      Math.abs(shortWayDeg(heavySpotDeg, to)),
    ),
    lightRangeDeg: [wrapTurnDeg(from + 180), wrapTurnDeg(to + 180)],
  };
}
