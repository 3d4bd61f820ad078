/**
 * The shoulder of a usual car tyre as the outline needs it: where a line of sight that comes down from
 * outside grazes it. Nothing in the pictures tells that place along the line of sight; how far the
 * outline moves for a lean hangs on it.
 */
export interface ShoulderShape {
  /** By so much the radius is smaller where the shoulder begins than at the tread edge, mm. */
  readonly crownDropMm: number;
  /** Radius of the rounding from tread to sidewall, mm. */
  readonly roundingMm: number;
}

/** Crowns of car tyres fall by 2 to 6 mm from the edge of the rib; their shoulders are 15 to 40 mm round. */
export const USUAL_SHOULDER: ShoulderShape = { crownDropMm: 4, roundingMm: 27 };
/** One standard deviation of these, mm. */
export const SHOULDER_SD: ShoulderShape = { crownDropMm: 2, roundingMm: 8 };

/**
 * By how much the radius of the grazed point is smaller than the tread edge's, mm. The surface there
 * runs along the line of sight, so its normal stands κ to 1 in the half plane through the axis.
 *
 * @param sightSlope κ: how far the line of sight rises for each mm outward
 */
export function outlineDropMm(
  sightSlope: number,
  { crownDropMm, roundingMm }: ShoulderShape,
): number {
  const cos = sightSlope / Math.hypot(1, sightSlope);
  return crownDropMm + roundingMm * (1 - cos);
}
