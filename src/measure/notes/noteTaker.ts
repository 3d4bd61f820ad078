import type { NoteHead, NotePiece, NotesBegin } from '../../contract/sweepNotes.ts';
import type { SweepReaderOptions } from '../../contract/sweep.ts';
import { MOST_FRAMES } from '../sweep/forgetOldFrames.ts';
import { sightOfRecording } from '../sweep/sightMemory.ts';
import { coveredDeg } from '../sweep/sweepChecks.ts';
import type { FrameRecord, SweepRecording } from '../sweep/sweepRecording.ts';
import {
  LEAN_NUMBERS,
  LUMA_STEP,
  newPiece,
  UNSEEN_LUMA_CODE,
  type NoteLists,
} from './notePiece.ts';

/**
 * Writes down what of a recording is new since the last piece. A recording that was made anew begins
 * anew in the notes; turns that were put right later are told again.
 */
export interface NoteTaker {
  recording: SweepRecording | null;
  /** Frames and turns of it that are written, the turns as they were written. */
  frames: number;
  readonly turnDeg: number[];
  /** True once the sweep is longer than its notes may be: nothing more is written. */
  isFull: boolean;
}

export function createNoteTaker(): NoteTaker {
  return { recording: null, frames: 0, turnDeg: [], isFull: false };
}

/** What was noted besides the recording. */
export interface NotedAside {
  readonly light: NoteHead['light'];
  readonly options: Pick<SweepReaderOptions, 'mayMirror' | 'askedSense'>;
}

/** Frames in one piece at most: some seconds of a camera, 4 MB. */
const MOST_IN_PIECE = 300;

/** The next piece; null when nothing is new, or no more may be written. */
export function takeNotes(
  taker: NoteTaker,
  recording: SweepRecording,
  { light, options }: NotedAside,
): NotePiece | null {
  const isNew = taker.recording !== recording;
  if (isNew) Object.assign(taker, createNoteTaker(), { recording });
  // From then on old frames are left out, and those that are written cannot be told from the others.
  if (recording.frames.length >= MOST_FRAMES || recording.frames.length < taker.frames) {
    taker.isFull = true;
  }
  if (taker.isFull) return null;
  const frames = recording.frames.slice(taker.frames, taker.frames + MOST_IN_PIECE);
  if (frames.length === 0) return null;
  const followed = frames.flatMap(({ turnIndex }) => turnIndex ?? []);
  const turns = recording.turn.turnDeg.slice(0, taker.turnDeg.length + followed.length);
  const turnsFrom = firstChanged(taker.turnDeg, turns);
  const { bytes, lists } = newPiece({
    begin: isNew ? beginOf(recording) : null,
    ...sizesOf(recording),
    ...{ frames: frames.length, followed: followed.length },
    ...{ turnsFrom, turns: turns.length - turnsFrom, repeated: recording.repeated, light },
    mayMirror: options.mayMirror ?? false,
    askedSense: options.askedSense ?? null,
  });
  frames.forEach((frame, i) => writeFrame(lists, frame, i));
  followed.forEach((index, i) => {
    const texture = recording.turn.textures[index]!;
    lists.textures.set(texture, i * texture.length);
    lists.correlation[i] = recording.turn.correlation[index]!;
  });
  lists.turnDeg.set(turns.slice(turnsFrom));
  taker.frames += frames.length;
  taker.turnDeg.splice(turnsFrom, Infinity, ...turns.slice(turnsFrom));
  return { bytes, coveredDeg: coveredDeg(turns) };
}

function firstChanged(written: readonly number[], now: readonly number[]): number {
  const changed = written.findIndex((turnDeg, i) => now[i] !== turnDeg);
  return changed < 0 ? written.length : changed;
}

function sizesOf({ view, turn }: SweepRecording) {
  return {
    blocks: view.layout.azimuthsDeg.length,
    textureCells: turn.standing.length,
    colourColumns: view.band.chromaColumns,
  };
}

function beginOf(recording: SweepRecording): NotesBegin {
  const { edge, view } = recording;
  const { pose, poseCovariance, poseResidualPx, ...sight } = sightOfRecording(recording);
  return {
    ...{ pose: { ...pose }, poseResidualPx, poseCovariance: [...poseCovariance] },
    laserColour: sight.laserColour,
    lineSpreadPx: sight.lineSpreadPx,
    originColumnPx: sight.originColumnPx,
    rowBytes: view.band.tables.yStride,
    edge: {
      heightMm: edge.heightMm,
      lean: { liftMm: edge.lean.liftMm, toward: edge.lean.toward, across: edge.lean.across },
      strength: edge.strength,
      plainestMm: edge.plainestMm,
      ...(edge.isAssumed ? { isAssumed: true } : {}),
      ...(edge.outline ? { outline: { ...edge.outline } } : {}),
    },
  };
}

function writeFrame(lists: NoteLists, frame: FrameRecord, i: number): void {
  const { lean, profiles, colour, lineOffsetPx } = frame;
  lists.timeS[i] = frame.timeS;
  lists.lineShare[i] = frame.lineShare;
  lists.isFollowed[i] = frame.turnIndex === null ? 0 : 1;
  const numbers = lean
    ? [lean.lean.liftMm, lean.lean.toward, lean.lean.across, lean.lean.residualMm]
    : [NaN, NaN, NaN, NaN];
  lists.lean.set([...numbers, lean?.lean.blocksUsed ?? NaN], i * LEAN_NUMBERS);
  const blocks = lineOffsetPx.length;
  lists.lineOffsetPx.set(lineOffsetPx, i * blocks);
  if (lean) {
    lists.shiftMm.set(lean.shiftMm, i * blocks);
    lists.standardErrorMm.set(lean.standardErrorMm, i * blocks);
  }
  const start = i * profiles.length;
  for (let k = 0; k < profiles.length; k++) {
    const luma = profiles[k]!;
    lists.profiles[start + k] =
      luma === luma
        ? Math.min(UNSEEN_LUMA_CODE - 1, Math.round(luma / LUMA_STEP))
        : UNSEEN_LUMA_CODE;
  }
  const columns = colour.y.length;
  lists.colourY.set(colour.y, i * columns);
  lists.colourU.set(colour.u, i * columns);
  lists.colourV.set(colour.v, i * columns);
}
