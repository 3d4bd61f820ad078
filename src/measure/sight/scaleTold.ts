import { heightScaleRelativeSd } from '../geometry/heightScale.ts';
import type { KnownOfCamera } from '../geometry/poseBelief.ts';
import type { PoseFit } from '../geometry/poseFromLine.ts';

/** Relative standard deviation of the scale of heights, at most: as is asked of one without a field of view. */
const MOST_SD = 0.02;
/**
 * The same while the turn has not closed: no figure comes of it then, and the camera is there to look again
 * with. Set with one drawn sweep in view, in which it was told to 7.5 %.
 */
const MOST_SD_BEFORE_CLOSING = 0.1;

/**
 * Whether the way of the tread over a whole sweep ties the camera where the line alone is too short to. With
 * the sight far aside the outline is near, and seven to nine blocks are seen: what counts is how well the scale
 * of heights is told by line and turn together.
 */
export function isScaleTold(
  fit: PoseFit,
  radiusMm: number,
  { spans, isTurnScaleOpen }: Pick<KnownOfCamera, 'spans' | 'isTurnScaleOpen'>,
): boolean {
  if (!spans?.length) return false;
  const mostSd = isTurnScaleOpen ? MOST_SD_BEFORE_CLOSING : MOST_SD;
  return heightScaleRelativeSd(fit, radiusMm) <= mostSd;
}
