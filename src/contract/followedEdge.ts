/**
 * What is followed round the wheel: the border of a rib or groove; gaps between blocks that step from
 * one to the next; a band of light tape stuck round the shoulder; the outline of the lower shoulder
 * before what lies behind it.
 */
export type EdgeKind = 'rib' | 'blocks' | 'band' | 'outline';

/** What was followed, and how good it is. */
export interface FollowedEdge {
  readonly kind: EdgeKind;
  /** Share of the places looked at, in all pictures, in which it was seen. */
  readonly seenShare: number;
  /** How far these heights lie from the fitted wheel, its waves and its rocking, root mean square, mm. */
  readonly scatterMm: number;
  /**
   * Of a band: how far off square it is stuck on, mm, as the tread beside it tells; then it is left
   * out of the figures. Null where the tread does not tell, missing where there is no band.
   */
  readonly bandOffSquareMm?: number | null;
}
