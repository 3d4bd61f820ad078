import type { YuvPicture } from '../../contract/picture.ts';
import { BAND_ROWS } from '../band/treadBand.ts';
import type { EdgeProposal } from '../edge/edgeProposal.ts';
import { outlineStep, type OutlineStep } from '../edge/outlineProposal.ts';
import { addToTemplate, createTiltTracker, trackLean } from '../edge/tiltTracker.ts';
import type { SlicedWork } from '../pace/slicedWork.ts';
import { outlineProfiles } from './outlineProfiles.ts';
import { outlineView } from './outlineView.ts';
import { recordingWith, type SweepRecording } from './sweepRecording.ts';
import type { WheelView } from './wheelView.ts';

/**
 * Planes beside which the outline of the lower shoulder is looked for, mm: a car tyre is 145 to 255 mm
 * wide and the line lies on its upper part, so that the outline lies 60 to 180 mm below it. A plane's
 * band reaches from 40 mm above to 60 mm below.
 */
const PLANES_MM = [-80, -110, -140];
/** Seen so near to the border of its band it is another plane's, mm. */
const FROM_TOP_MM = 20;
const FROM_BOTTOM_MM = -35;

/**
 * A recording that follows the tyre's outline before what lies behind it: the last resort on a tread
 * without anything else that runs all round. Null where no outline is plain.
 */
export function* startOnOutline(
  view: WheelView,
  pictures: readonly YuvPicture[],
): SlicedWork<SweepRecording | null> {
  let best: (OutlineStep & { planeMm: number }) | null = null;
  for (const planeMm of PLANES_MM) {
    const step = yield* stepBeside(view, pictures, planeMm);
    if (!step || step.heightMm > FROM_TOP_MM || step.heightMm < FROM_BOTTOM_MM) continue;
    if (!best || step.strength > best.strength) best = { ...step, planeMm };
  }
  if (!best) return null;
  // Once more beside its own plane: the radius at which it lies, and so the lean, hang on that.
  const planeMm = best.planeMm + best.heightMm;
  const step = yield* stepBeside(view, pictures, planeMm);
  return step && recordingWith(view, proposalOf(step, planeMm));
}

function proposalOf(
  { heightMm, strength, lean, isLighterBehind }: OutlineStep,
  planeMm: number,
): EdgeProposal {
  const outline = { planeMm, isLighterBehind };
  return { heightMm, strength, lean, plainestMm: heightMm, outline };
}

/** The outline beside one plane, in the pictures averaged as the first look at an edge averages them. */
function* stepBeside(
  view: WheelView,
  pictures: readonly YuvPicture[],
  planeMm: number,
): SlicedWork<OutlineStep | null> {
  const seen = outlineView(view, { planeMm });
  const blocks = seen.layout.azimuthsDeg.length;
  const tracker = createTiltTracker(seen.basis, { first: 0, last: BAND_ROWS - 1 });
  const one = new Float32Array(blocks * BAND_ROWS);
  for (const picture of pictures) {
    yield;
    outlineProfiles(seen, { isLighterBehind: false }, picture, one);
    if (trackLean(tracker, one) === null) addToTemplate(tracker, one, tracker.last!);
  }
  return yield* outlineStep(tracker.template, seen.basis, seen.setup.wheel.edgeRadiusMm);
}
