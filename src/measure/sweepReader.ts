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
import { createLightMeter, lightTrouble, meterLight } from './sight/lightMeter.ts';
import { createSightFinder, lookForSight } from './sight/sightFinder.ts';
import { checkRecording } from './sweep/sweepChecks.ts';
import { createProgressKeeper, followingProgress, lookingProgress } from './sweep/sweepProgress.ts';
import { refusedResult, sweepResult } from './sweep/sweepResult.ts';
import { secondLook } from './sweep/secondLook.ts';
import { forgetOldFrames } from './sweep/forgetOldFrames.ts';
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
import { recordPicture, startRecording, type SweepRecording } from './sweep/sweepRecording.ts';
import { createWheelView } from './sweep/wheelView.ts';

/**
 * Reads one sweep: pictures in, in order of time; progress after each; a result at the end.
 *
 * At first it looks for line and edge, keeping the latest pictures; once both are found these are
 * taken up first, so that nothing of the turn is lost, and from then on each picture is measured
 * and let go.
 */

/** Pictures kept while looking: two seconds at 12 a second; more would fill a tablet's memory. */
const KEPT_PICTURES = 24;

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
  const keeper = createProgressKeeper(options);
  const light = createLightMeter();
  let kept: YuvPicture[] = [];
  let recording: SweepRecording | null = null;
  let trouble: RefusalCode | null = null;
  let framesSeen = 0;
  let size = '';
  let known = options.sameCamera ?? null;
  let solved: { frames: number; geometry: Outcome<SolvedGeometry, RefusalCode> } | null = null;

  /** Solved once for the pictures so far: result and second look both ask. */
  function geometryOf(current: SweepRecording): Outcome<SolvedGeometry, RefusalCode> {
    if (solved?.frames !== current.frames.length) {
      solved = { frames: current.frames.length, geometry: solveGeometry(current) };
    }
    return solved.geometry;
  }

  function look(picture: YuvPicture): void {
    kept.push(copyOf(picture));
    if (kept.length > KEPT_PICTURES) kept.shift();
    if (known) return tryKnownCamera(known);
    const sight = lookForSight(finder, picture);
    if (!sight) return;
    if (!sight.ok) {
      trouble = lightTrouble(light) ?? sight.failure.code;
      return;
    }
    const view = createWheelView(setup, sight.value, picture.yStride);
    recording = startRecording(view, kept);
    if (!recording) {
      trouble = lightTrouble(light) ?? 'edge-lost';
      return;
    }
    takeUpKept(recording);
  }

  function tryKnownCamera(camera: KnownCamera): void {
    if (kept.length < KNOWN_CAMERA_PICTURES) return;
    recording = recordingAtKnownCamera(setup, camera, kept);
    known = null;
    if (recording) takeUpKept(recording);
  }

  function takeUpKept(current: SweepRecording): void {
    trouble = null;
    for (const earlierPicture of kept) recordPicture(current, earlierPicture);
    kept = [];
  }

  return {
    addFrame(picture: YuvPicture): SweepProgress {
      const pictureSize = `${picture.widthPx}×${picture.heightPx}×${picture.yStride}`;
      if (pictureSize !== size) {
        // Another size is another camera to all that was found; what is kept cannot be mixed.
        size = pictureSize;
        kept = [];
        recording = null;
        known = options.sameCamera ?? null;
        solved = null;
      }
      framesSeen++;
      meterLight(light, picture);
      if (!recording && options.sight)
        recording = recordingFromMemory(setup, options.sight, picture);
      if (recording && options.followOnly) forgetOldFrames(recording);
      if (recording) recordPicture(recording, picture);
      else look(picture);
      return recording
        ? followingProgress(recording, keeper, framesSeen)
        : lookingProgress(framesSeen, picture.timeS, trouble);
    },
    finish(): SweepResult {
      if (!recording) {
        const code =
          framesSeen < KEPT_PICTURES
            ? 'too-few-frames'
            : (lightTrouble(light) ?? trouble ?? 'line-lost');
        return refusedResult({ code, evidence: { pictures: framesSeen } }, null);
      }
      return sweepResult(recording, geometryOf(recording), options);
    },
    secondLook(): SightMemory | null {
      // A turn cut short stays short however well it is seen.
      if (!recording || options.sight || checkRecording(recording) !== null) return null;
      const geometry = geometryOf(recording);
      return geometry.ok ? secondLook(recording, geometry.value) : null;
    },
    inside(): SweepInside {
      const geometry = recording && geometryOf(recording);
      if (!recording || !geometry?.ok) return { recording, geometry: null, solved: null };
      const whole = solveSweep(recording, geometry.value);
      return { recording, geometry: geometry.value, solved: whole.ok ? whole.value : null };
    },
    sightNow(): SightMemory | null {
      if (!recording) return null;
      return solved?.frames === recording.frames.length && solved.geometry.ok
        ? sightOfGeometry(recording, solved.geometry.value)
        : sightOfRecording(recording);
    },
  };
}

function copyOf(picture: YuvPicture): YuvPicture {
  // NV12's two chroma planes share one buffer, V one byte after U: copied apart they stay valid.
  return { ...picture, y: picture.y.slice(), u: picture.u.slice(), v: picture.v.slice() };
}
