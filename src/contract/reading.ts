import type { PlaneCovariance } from '../quantities/vector.ts';
import type { FollowedEdge } from './followedEdge.ts';
import type { RefusalCode } from './refusals.ts';
import type { TurnSense } from './setup.ts';
import type { WarningCode } from './warnings.ts';

/** A weight to stick on (or, with negative mass, to take off). */
export interface Weight {
  readonly massG: number;
  readonly radiusMm: number;
  /** Wheel angle in [0, 360) degrees, clockwise seen from above, 0 at the valve. */
  readonly angleDeg: number;
}

interface Refusal {
  readonly code: RefusalCode;
  readonly message: string;
  readonly remedy: string;
  readonly evidence?: Readonly<Record<string, number | string | boolean>>;
}

/** Something that the figures rest on and that the pictures could not settle. */
export interface ReadingWarning {
  readonly code: WarningCode;
  readonly message: string;
  readonly remedy: string;
}

export interface TurnSummary {
  readonly coveredDeg: number;
  readonly sense: TurnSense;
  /** How far the texture's own turn was from 360° between two views of the same tread, before closing. */
  readonly closureDeg: number | null;
}

/** `tiltsweep.reading/1`. A refused reading carries no figure of the wheel. */
export type Reading = AcceptedReading | RefusedReading;

export interface RefusedReading {
  readonly format: 'tiltsweep.reading/1';
  readonly status: 'refused';
  readonly refusals: readonly Refusal[];
  readonly turn: TurnSummary | null;
}

export interface AcceptedReading {
  readonly format: 'tiltsweep.reading/1';
  readonly status: 'ok';
  readonly refusals: readonly [];
  /** Missing when there is none. */
  readonly warnings?: readonly ReadingWarning[];
  readonly turn: TurnSummary;
  /** What was followed round the wheel; missing in older readings. */
  readonly edge?: FollowedEdge;
  readonly tilt: {
    /** Amplitude of the edge's once-round rise on the still wheel, mm. */
    readonly edgeRiseMm: number;
    readonly highSpotDeg: number;
    /** Lean of the axis that stays in the room, mrad, and the azimuth of its high side. */
    readonly standMrad: number;
    readonly standHighAzimuthDeg: number;
    /** Standard error of that lean in its least known direction, mrad; missing in older readings. */
    readonly standMradStandardError?: number;
    /** Covariance of the rise's components along β = 0° and 90°, mm². */
    readonly covarianceMm2: PlaneCovariance;
  };
  readonly unbalance: {
    readonly amountGmm: number;
    readonly heavySpotDeg: number;
    readonly lightSpotDeg: number;
    /** Covariance of U's components along β = 0° and 90°, (g·mm)². */
    readonly covarianceGmm2: PlaneCovariance;
    /** `angleDeg` runs clockwise from its first to its second value about the heavy spot; null when the angle is not known at all. */
    readonly ci95: {
      readonly amountGmm: readonly [number, number];
      readonly angleDeg: readonly [number, number] | null;
    };
  };
  readonly response: {
    readonly mmPerGmm: number;
    readonly source: 'model' | 'trial';
    readonly standardError: number;
  };
  readonly correction: readonly Weight[];
  /** |U + Σ weights| that remains when the correction is stuck on, g·mm. */
  readonly residualGmm: number;
}
