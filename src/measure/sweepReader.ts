import type { Outcome } from '../contract/outcome.ts';
import type { YuvPicture } from '../contract/picture.ts';
import type { RefusalCode } from '../contract/refusals.ts';
import type { SweepSetup } from '../contract/setup.ts';
import type {
  KnownCamera,
  SweepProgress,
  SightMemory,
  SweepReader,
  SweepReaderOptions,
  SweepResult,
} from '../contract/sweep.ts';
import type { NotePiece } from '../contract/sweepNotes.ts';
import { createNoteTaker, takeNotes } from './notes/noteTaker.ts';
import { AT_ONCE, cameraPace } from './pace/pace.ts';
import type { SlicedWork } from './pace/slicedWork.ts';
import { createLightMeter, lightTrouble, meterLight } from './sight/lightMeter.ts';
import { createSightFinder, lookForSight } from './sight/sightFinder.ts';
import { checkRecording } from './sweep/sweepChecks.ts';
import { createProgressKeeper, followingProgress, lookingProgress } from './sweep/sweepProgress.ts';
import { inLight, inLine, refusedResult, sweepResult } from './sweep/sweepResult.ts';
import { secondLook } from './sweep/secondLook.ts';
import { forgetOldFrames, thinOldFrames } from './sweep/forgetOldFrames.ts';
import {
  beginSettled,
  catchUp,
  createOpenRecording,
  isCaughtUp,
  keepWhileLooking,
  recordFirst,
  takePicture,
  workOn,
} from './sweep/openRecording.ts';
import {
  KNOWN_CAMERA_PICTURES,
  recordingAtKnownCamera,
  recordingFromMemory,
} from './sweep/recordingFromSight.ts';
import { sightOfGeometry, sightOfRecording } from './sweep/sightMemory.ts';
import {
  solveGeometry,
  solveSweep,
  type SolvedGeometry,
  type SolvedSweep,
} from './sweep/solvedSweep.ts';
import type { FrameRecord, SweepRecording } from './sweep/sweepRecording.ts';

/**
 * Reads one sweep: pictures in, in order of time; progress after each; a result at the end.
 *
 * At first it looks for line and edge, keeping pictures; once both are found these are taken up
 * first, so that nothing of the turn is lost, and from then on each picture is measured. Until the
 * view is settled some are kept, to be measured again in a better one (openRecording).
 */

/** A line or an edge not found in fewer pictures says nothing yet. */
const FEWEST_PICTURES = 24;

interface SolvedOnce {
  readonly recording: SweepRecording;
  /** The newest frame it was solved with. */
  readonly last: FrameRecord | undefined;
  readonly geometry: Outcome<SolvedGeometry, RefusalCode>;
}

export function createSweepReader(
  setup: SweepSetup,
  options: SweepReaderOptions = {},
): SweepReader {
  return createOpenSweepReader(setup, options);
}

/** What a reader holds, for tools that look at each stage; null parts are not there yet. */
export interface SweepInside {
  readonly recording: SweepRecording | null;
  readonly geometry: SolvedGeometry | null;
  readonly solved: SolvedSweep | null;
}

/** The same reader with a door into it: for tests and tools, never for the app. */
export function createOpenSweepReader(
  setup: SweepSetup,
  options: SweepReaderOptions = {},
): SweepReader & { inside(): SweepInside } {
  const finder = createSightFinder(setup);
  const light = createLightMeter();
  const notes = createNoteTaker();
  const boundFrames = options.followOnly ? forgetOldFrames : thinOldFrames;
  let open = createOpenRecording(finder);
  let keeper = createProgressKeeper(options);
  let shown: SweepRecording | null = null;
  let trouble: RefusalCode | null = null;
  let framesSeen = 0;
  let lastS = -Infinity;
  /** Time of the first picture, and of the last in which no line was found yet. */
  let firstS = NaN;
  let withoutLineUntilS = NaN;
  let size = '';
  let known = options.sameCamera ?? null;
  let solved: SolvedOnce | null = null;

  /** Solved once for the pictures so far: result and second look both ask. */
  function geometryOf(current: SweepRecording): Outcome<SolvedGeometry, RefusalCode> {
    const last = current.frames.at(-1);
    if (solved?.recording !== current || solved.last !== last) {
      solved = { recording: current, last, geometry: solveGeometry(current) };
    }
    return solved.geometry;
  }

  function look(picture: YuvPicture): void {
    if (trouble === null || trouble === 'line-lost') withoutLineUntilS = picture.timeS;
    keepWhileLooking(open, picture);
    if (known) {
      if (open.kept.pictures.length >= KNOWN_CAMERA_PICTURES) open.work ??= tryKnownCamera(known);
    } else if (!open.work) {
      const sighting = lookForSight(finder, picture);
      if (sighting) open.work = tryToRecord(sighting);
    }
  }

  function* tryKnownCamera(camera: KnownCamera): SlicedWork<void> {
    const recording = yield* recordingAtKnownCamera(setup, camera, [...open.kept.pictures]);
    known = null;
    if (recording) beginSettled(open, recording);
  }

  function* tryToRecord(sighting: ReturnType<typeof lookForSight> & object): SlicedWork<void> {
    const sight = yield* sighting;
    if (!sight.ok) trouble = lightTrouble(light) ?? sight.failure.code;
    else {
      const edge = yield* recordFirst(open, sight.value);
      trouble = edge && (lightTrouble(light) ?? edge);
    }
  }

  /** What is recorded, the kept pictures taken in. */
  function wholeRecording(): SweepRecording | null {
    workOn(open, AT_ONCE);
    catchUp(open, AT_ONCE.again);
    return open.recording;
  }

  function progressNow(picture: YuvPicture): SweepProgress {
    const { recording } = open;
    if (!recording) return lookingProgress(framesSeen, picture.timeS, trouble);
    // A recording made anew counts its turn anew.
    if (recording !== shown) keeper = createProgressKeeper(options);
    shown = recording;
    return followingProgress(recording, keeper, framesSeen);
  }

  function beginFromMemory(memory: SightMemory, picture: YuvPicture): void {
    const recording = recordingFromMemory(setup, memory, picture);
    if (recording) beginSettled(open, recording);
  }

  return {
    addFrame(picture: YuvPicture): SweepProgress {
      const pictureSize = `${picture.widthPx}×${picture.heightPx}×${picture.yStride}`;
      if (pictureSize !== size) {
        // Another size is another camera to all that was found; what is kept cannot be mixed.
        size = pictureSize;
        open = createOpenRecording(finder);
        known = options.sameCamera ?? null;
        solved = null;
      }
      framesSeen++;
      if (framesSeen === 1) firstS = picture.timeS;
      meterLight(light, picture);
      if (!open.recording && options.sight) beginFromMemory(options.sight, picture);
      if (open.recording && isCaughtUp(open)) boundFrames(open.recording);
      const pace = options.live ? cameraPace(picture.timeS - lastS) : AT_ONCE;
      lastS = picture.timeS;
      if (open.recording) takePicture(open, picture, pace);
      else look(picture);
      workOn(open, pace);
      return progressNow(picture);
    },
    finish(): SweepResult {
      const recording = wholeRecording();
      if (!recording) {
        const code =
          framesSeen < FEWEST_PICTURES
            ? 'too-few-frames'
            : (lightTrouble(light) ?? trouble ?? 'line-lost');
        return refusedResult({ code, evidence: { pictures: framesSeen } }, null);
      }
      const geometry = geometryOf(recording);
      const result = sweepResult(recording, () => geometry, options);
      const withoutLine = { fromS: firstS, untilS: withoutLineUntilS };
      return inLight(inLine(result, recording, withoutLine), lightTrouble(light));
    },
    takeNotes(): NotePiece | null {
      const { recording } = open;
      return recording && takeNotes(notes, recording, { light: lightTrouble(light), options });
    },
    secondLook(): SightMemory | null {
      const recording = wholeRecording();
      // A turn cut short stays short however well it is seen.
      if (!recording || options.sight || checkRecording(recording, options) !== null) return null;
      const geometry = geometryOf(recording);
      return geometry.ok ? secondLook(recording, geometry.value, open.madeAnew) : null;
    },
    inside(): SweepInside {
      const recording = wholeRecording();
      const geometry = recording && geometryOf(recording);
      if (!recording || !geometry?.ok) return { recording, geometry: null, solved: null };
      const whole = solveSweep(recording, geometry.value);
      return { recording, geometry: geometry.value, solved: whole.ok ? whole.value : null };
    },
    sightNow(): SightMemory | null {
      const { recording } = open;
      if (!recording) return null;
      const isSolved = solved?.recording === recording && solved.last === recording.frames.at(-1);
      return isSolved && solved?.geometry.ok
        ? sightOfGeometry(recording, solved.geometry.value)
        : sightOfRecording(recording);
    },
  };
}
