import type { YuvPicture } from '../contract/picture.ts';
import type { SweepSetup } from '../contract/setup.ts';
import type {
  SecondLook,
  SightMemory,
  SweepProgress,
  SweepReader,
  SweepReaderOptions,
  SweepResult,
} from '../contract/sweep.ts';
import { createNoteTaker, takeNotes } from './notes/noteTaker.ts';
import { AT_ONCE, cameraPace } from './pace/pace.ts';
import { isPartCovered } from './sight/coveredPart.ts';
import { lightTrouble, meterLight } from './sight/lightMeter.ts';
import { pooledLine } from './sight/linePool.ts';
import { forgetOldFrames, thinOldFrames } from './sweep/forgetOldFrames.ts';
import { beginFromMemory, lookForWheel } from './sweep/lookForWheel.ts';
import { isCaughtUp, takePicture, workOn } from './sweep/openRecording.ts';
import {
  createReaderState,
  geometryKnown,
  geometryOf,
  mindSize,
  resultOf,
  wholeRecording,
  type ReaderState,
} from './sweep/readerState.ts';
import { secondLook } from './sweep/secondLook.ts';
import { sightOfGeometry, sightOfRecording } from './sweep/sightMemory.ts';
import { solveSweep, type SolvedGeometry, type SolvedSweep } from './sweep/solvedSweep.ts';
import { checkRecording } from './sweep/sweepChecks.ts';
import { createProgressKeeper, followingProgress, lookingProgress } from './sweep/sweepProgress.ts';
import type { SweepRecording } from './sweep/sweepRecording.ts';
import { inCover, inLight, inLine, refusedResult, sweepResult } from './sweep/sweepResult.ts';
import { isNeededForView } from './sweep/neededForView.ts';

/**
 * Reads one sweep: pictures in, in order of time; progress after each; a result at the end.
 *
 * At first it looks for line and edge, keeping pictures; once both are found these are taken up
 * first, so that nothing of the turn is lost, and from then on each picture is measured. Until the
 * view is settled some are kept, to be measured again in a better one (openRecording).
 */

/** A line or an edge not found in fewer pictures says nothing yet. */
const FEWEST_PICTURES = 24;

export function createSweepReader(
  setup: SweepSetup,
  options: SweepReaderOptions = {},
): SweepReader {
  return readerOf(createReaderState(setup, options));
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
  const state = createReaderState(setup, options);
  return { ...readerOf(state), inside: () => insideOf(state) };
}

function readerOf(state: ReaderState): SweepReader {
  const notes = createNoteTaker();
  const progressNow = progressTeller(state);
  const needs = needTeller(state);
  return {
    needs,
    addFrame(picture) {
      addPicture(state, picture);
      return progressNow(picture);
    },
    finish: () => finish(state),
    takeNotes() {
      const { open, light, options } = state;
      const facts = { light: lightTrouble(light), options };
      return open.recording && takeNotes(notes, open.recording, facts);
    },
    secondLook: () => lookAgain(state),
    sightNow: () => sightNow(state),
  };
}

function addPicture(state: ReaderState, picture: YuvPicture): void {
  mindSize(state, picture);
  const { options, open, light } = state;
  state.framesSeen++;
  if (state.framesSeen === 1) state.firstS = picture.timeS;
  meterLight(light, picture);
  if (!open.recording && options.sight) beginFromMemory(state, options.sight, picture);
  if (open.recording && isCaughtUp(open)) {
    if (options.followOnly) forgetOldFrames(open.recording);
    else thinOldFrames(open.recording);
  }
  const pace = options.live ? cameraPace(picture.timeS - state.lastS) : AT_ONCE;
  state.lastS = picture.timeS;
  if (open.recording) takePicture(open, picture, pace);
  else lookForWheel(state, picture);
  workOn(open, pace);
}

/** Asked before each picture: it also learns how far they lie apart. */
function needTeller(state: ReaderState): SweepReader['needs'] {
  let askedS = -Infinity;
  return (timeS) => {
    const { open } = state;
    const stepS = timeS - askedS;
    askedS = timeS;
    return !open.viewOnly || !open.recording || isNeededForView(open.recording, timeS, stepS);
  };
}

/** A recording made anew counts its turn anew. */
function progressTeller(state: ReaderState): (picture: YuvPicture) => SweepProgress {
  let keeper = createProgressKeeper(state.options);
  let shown: SweepRecording | null = null;
  return (picture) => {
    const { open, framesSeen, trouble } = state;
    const { recording } = open;
    if (!recording) return lookingProgress(framesSeen, picture.timeS, trouble);
    if (recording !== shown) keeper = createProgressKeeper(state.options);
    shown = recording;
    return followingProgress(recording, keeper, framesSeen);
  };
}

function finish(state: ReaderState): SweepResult {
  const { framesSeen, light, trouble, options, firstS, withoutLineUntilS } = state;
  const recording = wholeRecording(state);
  if (!recording) {
    const code =
      framesSeen < FEWEST_PICTURES
        ? 'too-few-frames'
        : (lightTrouble(light) ?? coverTrouble(state) ?? trouble ?? 'line-lost');
    return refusedResult({ code, evidence: { pictures: framesSeen } }, null);
  }
  const result = resultOf(state, recording, (geometry) =>
    sweepResult(recording, () => geometry, options),
  );
  const withoutLine = { fromS: firstS, untilS: withoutLineUntilS };
  const lined = inLine(result, recording, withoutLine);
  return inLight(inCover(lined, recording), lightTrouble(light));
}

/** A line that is covered in part shows no camera or no edge, and the picture that it is covered. */
function coverTrouble({ trouble, open, finder }: ReaderState): 'view-blocked' | null {
  if (trouble === 'picture-upside-down') return null;
  return isPartCovered(open.kept.pictures, pooledLine(finder.pool).points) ? 'view-blocked' : null;
}

function lookAgain(state: ReaderState): SecondLook | 'whole' | null {
  const { open, options } = state;
  const recording = wholeRecording(state);
  if (!recording || options.sight) return null;
  const withoutBetter = open.viewOnly ? 'whole' : null;
  // A turn cut short stays short however well it is seen.
  if (checkRecording(recording, options) !== null) return withoutBetter;
  const geometry = geometryOf(state, recording);
  if (!geometry.ok) return withoutBetter;
  const isRefused = () => finish(state).reading.status === 'refused';
  const sight = secondLook(recording, geometry.value, open.madeAnew, isRefused);
  if (!sight) return withoutBetter;
  const { curvePx, kept } = recording.lineWatch;
  return { sight, seenLine: { curvePx, rows: kept ?? new Map() } };
}

function sightNow(state: ReaderState): SightMemory | null {
  const { recording } = state.open;
  if (!recording) return null;
  const geometry = geometryKnown(state, recording);
  return geometry?.ok ? sightOfGeometry(recording, geometry.value) : sightOfRecording(recording);
}

function insideOf(state: ReaderState): SweepInside {
  const recording = wholeRecording(state);
  const geometry = recording && geometryOf(state, recording);
  if (!recording || !geometry?.ok) return { recording, geometry: null, solved: null };
  const whole = solveSweep(recording, geometry.value);
  return { recording, geometry: geometry.value, solved: whole.ok ? whole.value : null };
}
