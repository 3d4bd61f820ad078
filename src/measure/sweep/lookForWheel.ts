import type { YuvPicture } from '../../contract/picture.ts';
import type { KnownCamera, SightMemory } from '../../contract/sweep.ts';
import type { SlicedWork } from '../pace/slicedWork.ts';
import { knowLine } from '../sight/lineWatch.ts';
import { lightTrouble } from '../sight/lightMeter.ts';
import { lookForSight } from '../sight/sightFinder.ts';
import { beginSettled, keepWhileLooking, recordFirst } from './openRecording.ts';
import type { ReaderState } from './readerState.ts';
import {
  KNOWN_CAMERA_PICTURES,
  recordingAtKnownCamera,
  recordingFromMemory,
} from './recordingFromSight.ts';

/** Looks for line and edge in one more picture, which is kept; work that takes longer is put aside. */
export function lookForWheel(state: ReaderState, picture: YuvPicture): void {
  const { open, finder, trouble, known } = state;
  if (trouble === null || trouble === 'line-lost') state.withoutLineUntilS = picture.timeS;
  keepWhileLooking(open, picture);
  if (known) {
    const isEnough = open.kept.pictures.length >= KNOWN_CAMERA_PICTURES;
    if (isEnough) open.work ??= tryKnownCamera(state, known);
  } else if (!open.work) {
    const sighting = lookForSight(finder, picture);
    if (sighting) open.work = tryToRecord(state, sighting);
  }
}

/** Nothing is looked for: camera and edge were learnt from the same pictures before. */
export function beginFromMemory(
  state: ReaderState,
  memory: SightMemory,
  picture: YuvPicture,
): void {
  const recording = recordingFromMemory(state.setup, memory, picture);
  if (!recording) return;
  const { seenLine } = state.options;
  if (seenLine) knowLine(recording.lineWatch, seenLine);
  beginSettled(state.open, recording);
}

function* tryKnownCamera(state: ReaderState, camera: KnownCamera): SlicedWork<void> {
  const { setup, open } = state;
  const recording = yield* recordingAtKnownCamera(setup, camera, [...open.kept.pictures]);
  state.known = null;
  if (recording) beginSettled(open, recording);
}

function* tryToRecord(
  state: ReaderState,
  sighting: ReturnType<typeof lookForSight> & object,
): SlicedWork<void> {
  const { light, open } = state;
  const sight = yield* sighting;
  if (!sight.ok) state.trouble = lightTrouble(light) ?? sight.failure.code;
  else {
    const edge = yield* recordFirst(open, sight.value);
    state.trouble = edge && (lightTrouble(light) ?? edge);
  }
}
