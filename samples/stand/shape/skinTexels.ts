/**
 * The tyre's skin unrolled, one texel every half millimetre: colour and the depth of cuts across
 * the ribs, by wheel angle (column 0 is the valve, clockwise) and way along the profile (row 0 is
 * the lowest, `fromWayMm`). Grooves round the wheel are not in it: their rims must be
 * exact, so both renderers take them from the pattern itself.
 */
export interface TreadMap {
  readonly columns: number;
  readonly rows: number;
  readonly fromWayMm: number;
  readonly wayPerRowMm: number;
  /** Red, green, blue as 255·√reflectance; then depth as 255·depth/{@link DEPTH_RANGE_MM}. */
  readonly texels: Uint8Array;
}

export const DEPTH_RANGE_MM = 8;

/** Reflectance of what lies on rubber and tape alike, linear. */
export const DUST = [0.19, 0.155, 0.115] as const;
