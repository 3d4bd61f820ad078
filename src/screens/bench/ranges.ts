import {
  StandSchema,
  StockPieceSchema,
  WeightRingSchema,
  WheelSchema,
} from '../../contract/logbook.ts';

/** What a field takes is what the logbook takes: the bounds are read out of its own schema. */
export type FieldRange = readonly [low: number, high: number];

interface Bounded {
  readonly pipe: readonly unknown[];
}

function boundsOf({ pipe }: Bounded): FieldRange {
  const limit = (type: string): number => {
    for (const part of pipe) {
      const { type: name, requirement } = part as { type: string; requirement?: unknown };
      if (name === type && typeof requirement === 'number') return requirement;
    }
    throw new Error(`the logbook's schema has no ${type} here`);
  };
  return [limit('min_value'), limit('max_value')];
}

const wheel = WheelSchema.entries;
const stand = StandSchema.entries;
const screws = stand.screws.wrapped.entries;

export const WHEEL_RANGES = {
  massKg: boundsOf(wheel.massKg.entries.value),
  edgeRadiusMm: boundsOf(wheel.edgeRadiusMm.entries.value),
  boreDiameterMm: boundsOf(wheel.boreDiameterMm.wrapped.entries.value),
  ballDiameterMm: boundsOf(wheel.ballDiameterMm.entries.value),
  pendulumDepthMm: boundsOf(wheel.pendulumDepthMm.entries.value),
  ringRadiusMm: boundsOf(WeightRingSchema.entries.radiusMm.entries.value),
  weightStepG: boundsOf(wheel.weightStepG),
  markWidthMm: boundsOf(wheel.mark.entries.widthMm),
} as const;

export const STAND_RANGES = {
  circleRadiusMm: boundsOf(screws.circleRadiusMm),
  threadPitchMm: boundsOf(screws.threadPitchMm),
  lineAbovePlateMm: boundsOf(stand.lineAbovePlateMm.wrapped.entries.value),
  downTiltDeg: boundsOf(stand.camera.entries.downTiltDeg.entries.value),
  horizontalFovDeg: boundsOf(stand.camera.entries.horizontalFovDeg.wrapped.entries.value),
  pieceMassG: boundsOf(StockPieceSchema.entries.massG),
  pieceLengthMm: boundsOf(StockPieceSchema.entries.lengthMm),
  onHand: boundsOf(StockPieceSchema.entries.onHand.wrapped),
} as const;

/** Any direction of the wheel or the room. */
export const DIRECTION_RANGE_DEG: FieldRange = [0, 359];

/** One press changes a depth by this, in the unit shown: a whole millimetre would be an eighth. */
export const DEPTH_STEP = { metric: 0.5, 'inch-pound': 0.02 } as const;
