import type { YuvPicture } from '../../contract/picture.ts';
import type { SlicedWork } from '../pace/slicedWork.ts';
import { FIRST_PICTURES } from './keptPictures.ts';
import {
  startAtKnownEdge,
  startOnLine,
  startRecording,
  type SweepRecording,
} from './sweepRecording.ts';
import { startOnOutline } from './startOnOutline.ts';
import type { WheelView } from './wheelView.ts';

/**
 * An edge that the line's glow has hidden for so long may lie under it all round, as on a wheel that
 * is nearly balanced, s. Waiting longer, of the pictures kept meanwhile too few would be left to
 * follow the turn in.
 */
const HIDDEN_S = 4;

/**
 * An edge that the line's glow hid in the first pictures comes free when the wheel has turned and
 * leans otherwise: its height from the newest pictures, all from the first on. One that never comes
 * free is taken to lie at the line: the tread's other grooves show the lean all the same, and a few
 * millimetres of height are the same all round. Null as long as neither is known.
 */
export function* recordingByLaterEdge(
  view: WheelView,
  pictures: readonly YuvPicture[],
): SlicedWork<SweepRecording | null> {
  if (pictures.length < 2 * FIRST_PICTURES) return null;
  const first = pictures.slice(0, FIRST_PICTURES);
  const later = yield* startRecording(view, pictures.slice(-FIRST_PICTURES));
  if (later.ok) {
    const { heightMm, plainestMm } = later.value.edge;
    return yield* startAtKnownEdge(view, first, { edgeHeightMm: heightMm, plainestMm });
  }
  const seenS = pictures[pictures.length - 1].timeS - pictures[0].timeS;
  if (seenS < HIDDEN_S) return null;
  return (yield* startOnLine(view, first)) ?? (yield* startOnOutline(view, first));
}
