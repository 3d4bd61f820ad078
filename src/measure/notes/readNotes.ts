import type { NoteHead, NotesBegin } from '../../contract/sweepNotes.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import type { SweepReaderOptions, SweepResult } from '../../contract/sweep.ts';
import { BAND_ROWS } from '../band/treadBand.ts';
import { addToTemplate } from '../edge/tiltTracker.ts';
import { viewOfMemory } from '../sweep/recordingFromSight.ts';
import { solveGeometry } from '../sweep/solvedSweep.ts';
import { coveredDeg } from '../sweep/sweepChecks.ts';
import { recordingWith, type SweepRecording } from '../sweep/sweepRecording.ts';
import { inLight, refusedResult, sweepResult } from '../sweep/sweepResult.ts';
import {
  LEAN_NUMBERS,
  LUMA_STEP,
  piecesOf,
  UNSEEN_LUMA_CODE,
  type NoteLists,
} from './notePiece.ts';

interface NotedRecording {
  readonly recording: SweepRecording;
  /** How it stood with the latest piece. */
  head: NoteHead;
}

/**
 * Reads a sweep from its notes: the reading that it would have had if it had ended with the last
 * of them. Where none can be made out, `too-few-frames`.
 */
export function readNotes(
  notes: ArrayBuffer,
  setup: SweepSetup,
  options: Pick<SweepReaderOptions, 'earlier'> = {},
): SweepResult {
  const noted = widestOf(recordingsIn(notes, setup));
  if (!noted) return refusedResult({ code: 'too-few-frames', evidence: { pictures: 0 } }, null);
  const { recording, head } = noted;
  const asBegun = {
    ...options,
    mayMirror: head.mayMirror,
    ...(head.askedSense ? { askedSense: head.askedSense } : {}),
  };
  return inLight(
    sweepResult(recording, () => solveGeometry(recording), asBegun),
    head.light,
  );
}

/** A recording made anew counts once it has caught up with the one before it. */
function widestOf(all: readonly NotedRecording[]): NotedRecording | null {
  let widest: NotedRecording | null = null;
  let widestDeg = -1;
  for (const noted of all) {
    const covered = coveredDeg(noted.recording.turn.turnDeg);
    if (covered < widestDeg) continue;
    widestDeg = covered;
    widest = noted;
  }
  return widest;
}

function recordingsIn(notes: ArrayBuffer, setup: SweepSetup): NotedRecording[] {
  const all: NotedRecording[] = [];
  let last: NotedRecording | null = null;
  for (const { head, lists } of piecesOf(notes)) {
    if (head.begin) {
      const recording = begun(head.begin, setup);
      if (!recording) return all;
      last = { recording, head };
      all.push(last);
    }
    if (!last || !isNext(last.recording, head, lists)) return all;
    addPiece(last.recording, head, lists);
    last.head = head;
  }
  return all;
}

function begun(begin: NotesBegin, setup: SweepSetup): SweepRecording | null {
  const { edge: noted, rowBytes, pose, poseCovariance, originColumnPx, ...sight } = begin;
  const view = viewOfMemory(
    setup,
    {
      ...{ ...sight, pose, poseCovariance: Float64Array.from(poseCovariance) },
      ...(originColumnPx === undefined ? {} : { originColumnPx }),
    },
    { widthPx: pose.widthPx, heightPx: pose.heightPx, yStride: rowBytes },
  );
  const { isAssumed = false, outline, ...edge } = noted;
  const known = { ...edge, isAssumed, ...(outline ? { outline } : {}) };
  return view && recordingWith(view, known);
}

/** Whether a piece goes on where the recording stands, and its numbers can be. */
function isNext(recording: SweepRecording, head: NoteHead, lists: NoteLists): boolean {
  const { view, turn, frames } = recording;
  const followed = lists.isFollowed.reduce((sum, is) => sum + (is === 0 ? 0 : 1), 0);
  let beforeS = frames.at(-1)?.timeS ?? -Infinity;
  const inOrder = lists.timeS.every((timeS) => {
    const isLater = timeS > beforeS && Number.isFinite(timeS);
    beforeS = timeS;
    return isLater;
  });
  return (
    inOrder &&
    head.blocks === view.layout.azimuthsDeg.length &&
    head.textureCells === turn.standing.length &&
    head.colourColumns === view.band.chromaColumns &&
    followed === head.followed &&
    head.turnsFrom <= turn.turnDeg.length &&
    head.turnsFrom + head.turns === turn.turnDeg.length + followed &&
    lists.turnDeg.every(Number.isFinite) &&
    lists.correlation.every(Number.isFinite)
  );
}

function addPiece(recording: SweepRecording, head: NoteHead, lists: NoteLists): void {
  const { turn, frames } = recording;
  recording.repeated = head.repeated;
  turn.turnDeg.splice(head.turnsFrom, Infinity, ...lists.turnDeg);
  const part = <T extends { subarray(from: number, to: number): T }>(
    list: T,
    i: number,
    length: number,
  ) => list.subarray(i * length, (i + 1) * length);
  const { blocks, colourColumns, textureCells } = head;
  let followed = 0;
  for (let i = 0; i < head.frames; i++) {
    const timeS = lists.timeS[i]!;
    let turnIndex: number | null = null;
    if (lists.isFollowed[i] !== 0) {
      turnIndex = turn.textures.length;
      turn.textures.push(part(lists.textures, followed, textureCells));
      turn.timeS.push(timeS);
      turn.correlation.push(lists.correlation[followed]!);
      followed++;
    }
    const [liftMm, toward, across, residualMm, blocksUsed] = part(lists.lean, i, LEAN_NUMBERS);
    const lean = { liftMm: liftMm!, toward: toward!, across: across! };
    const isLeanKnown = Number.isFinite(liftMm! + toward! + across!);
    const profiles = lumaOf(part(lists.profiles, i, blocks * BAND_ROWS));
    // As the sweep itself went along: a band of tape is told by it.
    if (isLeanKnown) addToTemplate(recording.tilt, profiles, lean);
    frames.push({
      ...{ timeS, turnIndex, lineShare: lists.lineShare[i]! },
      profiles,
      colour: {
        y: part(lists.colourY, i, colourColumns),
        u: part(lists.colourU, i, colourColumns),
        v: part(lists.colourV, i, colourColumns),
      },
      lean: isLeanKnown
        ? {
            lean: { ...lean, residualMm: residualMm!, blocksUsed: blocksUsed! },
            shiftMm: part(lists.shiftMm, i, blocks),
            standardErrorMm: part(lists.standardErrorMm, i, blocks),
          }
        : null,
      lineOffsetPx: part(lists.lineOffsetPx, i, blocks),
    });
  }
}

function lumaOf(codes: Uint16Array): Float32Array {
  const luma = new Float32Array(codes.length);
  for (let k = 0; k < codes.length; k++) {
    luma[k] = codes[k] === UNSEEN_LUMA_CODE ? NaN : codes[k]! * LUMA_STEP;
  }
  return luma;
}
