import type { YuvPicture } from '../../contract/picture.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import type { KnownCamera, KnownView, SightMemory } from '../../contract/sweep.ts';
import type { PoseFit } from '../geometry/poseFromLine.ts';
import type { SlicedWork } from '../pace/slicedWork.ts';
import { createLineWatch, watchLine } from '../sight/lineWatch.ts';
import { sightOfPose } from '../sight/sightFinder.ts';
import {
  startAgain,
  startAtKnownEdge,
  startRecording,
  type SweepRecording,
} from './sweepRecording.ts';
import { createWheelView, type WheelView } from './wheelView.ts';

/** A recording of pictures that were read before: lean and edge of the first one are known too. */
export function recordingFromMemory(
  setup: SweepSetup,
  memory: SightMemory,
  picture: YuvPicture,
): SweepRecording | null {
  const view = viewOfMemory(setup, memory, picture);
  if (!view) return null;
  const lean = { liftMm: 0, toward: memory.firstLeanToward, across: memory.firstLeanAcross };
  return startAgain(view, picture, lean, memory);
}

/** Pictures that a known camera is held against before it is believed. */
export const KNOWN_CAMERA_PICTURES = 8;
/**
 * Line off its place by more says that the camera or the laser moved, px of a picture 1280 wide: as
 * for a sweep (`cameraStill`), and a little for a few pictures instead of many.
 */
const MOVED_PX = 4;
/** The line lies on the face at least in the lower quarter of the blocks, else in the groove above. */
const FACE_QUANTILE = 0.75;
const MIN_BLOCKS = 5;

/** A recording before a camera that stood here before; null when the line is not where it was. */
export function* recordingAtKnownCamera(
  setup: SweepSetup,
  { sight, edgeKnown }: KnownCamera,
  pictures: readonly YuvPicture[],
): SlicedWork<SweepRecording | null> {
  const view = viewOfMemory(setup, sight, pictures[0]!);
  yield;
  if (!view || !lineIsInPlace(view, pictures)) return null;
  if (edgeKnown) return yield* startAtKnownEdge(view, pictures, sight);
  const started = yield* startRecording(view, pictures);
  return started.ok ? started.value : null;
}

/** The view of a camera that is known, in pictures of this size; null where it was known for others. */
export function viewOfMemory(
  setup: SweepSetup,
  memory: KnownView,
  picture: Pick<YuvPicture, 'widthPx' | 'heightPx' | 'yStride'>,
): WheelView | null {
  const { pose } = memory;
  if (pose.widthPx !== picture.widthPx || pose.heightPx !== picture.heightPx) return null;
  const poseFit: PoseFit = {
    pose,
    residualPx: memory.poseResidualPx,
    covariance: memory.poseCovariance,
    inlierShare: 1,
    strayShare: 0,
    inliers: new Uint8Array(0),
  };
  const sight = sightOfPose(setup, poseFit, memory);
  return sight.ok ? createWheelView(setup, sight.value, picture.yStride) : null;
}

function lineIsInPlace(view: WheelView, pictures: readonly YuvPicture[]): boolean {
  const watch = createLineWatch(view);
  const offsets = pictures
    .flatMap((picture) => [...watchLine(watch, view, picture).offsetPx])
    .filter((offset) => offset === offset)
    .sort((a, b) => a - b);
  if (offsets.length < MIN_BLOCKS * pictures.length) return false;
  const face = offsets[Math.floor(offsets.length * FACE_QUANTILE)]!;
  return Math.abs(face) <= (MOVED_PX * view.sight.camera.pose.widthPx) / 1280;
}
