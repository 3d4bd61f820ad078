import { heightScaleRelativeSd } from '../geometry/heightScale.ts';
import type { EdgeProposal } from '../edge/edgeProposal.ts';
import { outlineScaleSd } from './outlineView.ts';
import type { WheelView } from './wheelView.ts';

/** The tape's middle is found to a fraction of a degree; a hand sticks it on to about this, degrees. */
export const MARK_SD_DEG = 0.4;
/**
 * Heights told by gaps between blocks that step came out 2 to 5 % low on rendered films: what little is
 * left of standing light beside so shallow a dip holds the match back.
 */
const UNEVEN_RELATIVE_SD = 0.03;

/**
 * Relative standard deviation of the heights' scale: the camera's, the line's depth, and that of what
 * was followed.
 *
 * @param insetSdMm how well the depth is known at which the line lands; 0 on the rib's face
 */
export function scaleRelativeSd(
  view: WheelView,
  { outline }: Pick<EdgeProposal, 'outline'>,
  isUneven: boolean,
  insetSdMm: number,
): number {
  const radiusMm = view.setup.wheel.edgeRadiusMm;
  const ofCamera = heightScaleRelativeSd(view.sight.poseFit, radiusMm);
  // A line that lies so much deeper moves the camera, which sees the edge larger by as much as it is nearer.
  const ofDepth = insetSdMm / (view.sight.camera.pose.distanceMm - radiusMm);
  if (outline) return Math.hypot(ofCamera, ofDepth, outlineScaleSd(view, outline));
  return Math.hypot(ofCamera, ofDepth, isUneven ? UNEVEN_RELATIVE_SD : 0);
}
