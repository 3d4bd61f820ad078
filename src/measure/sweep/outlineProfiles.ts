import type { YuvPicture } from '../../contract/picture.ts';
import { unrollPicture } from '../band/treadBand.ts';
import { ANY_SHARE, blockProfiles } from '../edge/blockProfiles.ts';
import type { OutlinePlace } from '../edge/edgeProposal.ts';
import { invertLuma } from '../edge/outlineProposal.ts';
import type { WheelView } from './wheelView.ts';

/**
 * Height profiles about the outline as a picture shows them, the light side of it above. The line does not
 * come there: every cell in the picture counts.
 *
 * @param view as `outlineView` makes it
 */
export function outlineProfiles(
  view: WheelView,
  { isLighterBehind }: Pick<OutlinePlace, 'isLighterBehind'>,
  picture: YuvPicture,
  out: Float32Array,
): void {
  unrollPicture(view.band, picture);
  view.band.usable.set(view.band.inPicture);
  blockProfiles(view.band, view.layout, out, ANY_SHARE);
  if (isLighterBehind) invertLuma(out);
}
