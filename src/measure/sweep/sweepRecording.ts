import { succeeded, type Outcome } from '../../contract/outcome.ts';
import type { YuvPicture } from '../../contract/picture.ts';
import type { SightMemory } from '../../contract/sweep.ts';
import { BAND_ROWS, rowOfZ, unrollPicture } from '../band/treadBand.ts';
import { markUsableCells } from '../band/laserMask.ts';
import { createRepeatWatch, isRepeated, type RepeatWatch } from '../band/repeatedPicture.ts';
import { blockProfiles } from '../edge/blockProfiles.ts';
import {
  edgeAtLean,
  proposeEdge,
  type EdgeProposal,
  type EdgeTrouble,
} from '../edge/edgeProposal.ts';
import {
  createTiltTracker,
  trackLean,
  type FrameLean,
  type TiltTracker,
} from '../edge/tiltTracker.ts';
import { riseAt, type Lean } from '../edge/leanFit.ts';
import { shoulderColour, type ShoulderColour } from '../mark/shoulderColour.ts';
import { finished, type SlicedWork } from '../pace/slicedWork.ts';
import { createLineWatch, watchLine, type LineWatch } from '../sight/lineWatch.ts';
import {
  createTextureWork,
  STRIP_HEIGHTS_MM,
  treadTexture,
  type TextureWork,
} from '../turn/treadTexture.ts';
import { createTurnTracker, trackTurn, type TurnTracker } from '../turn/turnTracker.ts';
import { firstLook, lineStripHalfMm } from './firstLook.ts';
import { outlineProfiles } from './outlineProfiles.ts';
import { outlineView } from './outlineView.ts';
import { edgeRows, type WheelView } from './wheelView.ts';

/** What is kept of each picture: enough to fit everything again at the end, without the picture. */
export interface FrameRecord {
  readonly timeS: number;
  /** Height profiles, blocks × rows, NaN where nothing could be seen. */
  readonly profiles: Float32Array;
  readonly colour: ShoulderColour;
  /** Null when the tread was not seen well enough. */
  readonly lean: FrameLean | null;
  /** Index into the turn tracker's frames, or null when the turn could not be told. */
  readonly turnIndex: number | null;
  readonly lineShare: number;
  /** Row of the line in each block, px below the first look's curve; NaN where not seen. */
  readonly lineOffsetPx: Float32Array;
}

export interface SweepRecording {
  readonly view: WheelView;
  /** By which the edge is followed: the same, or that of the shoulder's outline. */
  readonly edgeView: WheelView;
  readonly edge: EdgeProposal;
  readonly tilt: TiltTracker;
  readonly turn: TurnTracker;
  readonly lineWatch: LineWatch;
  readonly frames: FrameRecord[];
  readonly repeatWatch: RepeatWatch;
  /** Pictures left out because they were the one before once more. */
  repeated: number;
  readonly stripHalfMm: number;
  readonly edgeRow: Float32Array;
  readonly work: TextureWork;
}

/** Rows of the profile that are matched, above and below the edge, mm: the rib and what lies under it. */
const WINDOW_ABOVE_MM = 12;
const WINDOW_BELOW_MM = 45;
/**
 * The same about an outline: the shoulder above it, and as little as will do of what stands still
 * behind it.
 */
const OUTLINE_WINDOW_ABOVE_MM = 16;
const OUTLINE_WINDOW_BELOW_MM = 8;
/** Starts a recording from the first pictures in which the sight is known; null when no edge is found. */
export function* startRecording(
  view: WheelView,
  pictures: readonly YuvPicture[],
): SlicedWork<Outcome<SweepRecording, EdgeTrouble>> {
  const { profiles, tapMm } = yield* firstLook(view, pictures);
  const edge = yield* proposeEdge(profiles, view.basis, view.setup.wheel.edgeRadiusMm, { tapMm });
  return edge.ok ? succeeded(recordingWith(view, edge.value)) : edge;
}

/** Edge of an earlier pass or look; of a look by this view also the plainest one of the tread. */
type KnownEdge = Pick<SightMemory, 'edgeHeightMm' | 'edgeAssumed'> & {
  readonly plainestMm?: number;
};

/** Grooves of a car's tread lie 20 mm and more apart: nearer than half of that it is the same one, mm. */
const SAME_GROOVE_MM = 10;

/**
 * The known edge's height at the lean of other profiles. Each picture's lean toward the camera is looked for
 * by itself, and where the blocks in view all stand about as far toward it (from aside) it is off by up to a
 * centimetre of rim: all heights at lean zero are, by as much. What lies between two edges is not.
 */
function heightBesidePlainest(known: KnownEdge, plainestMm: number): number {
  const movedMm = known.plainestMm === undefined ? 0 : plainestMm - known.plainestMm;
  return known.edgeHeightMm + (Math.abs(movedMm) <= SAME_GROOVE_MM ? movedMm : 0);
}

/** A recording where camera, lean and about the edge's height are known from an earlier pass. */
export function startAgain(
  view: WheelView,
  picture: YuvPicture,
  lean: Lean,
  known: KnownEdge,
): SweepRecording | null {
  const { profiles } = finished(firstLook(view, [picture]));
  const edge = edgeAtLean(profiles, view.basis, lean, known.edgeHeightMm);
  return edge ? recordingWith(view, asKnown(edge, known)) : null;
}

/** A recording where the edge lies under the line; null when the rest of the tread shows no lean. */
export function* startOnLine(
  view: WheelView,
  pictures: readonly YuvPicture[],
): SlicedWork<SweepRecording | null> {
  const { profiles } = yield* firstLook(view, pictures);
  const edge = yield* proposeEdge(profiles, view.basis, view.setup.wheel.edgeRadiusMm, {
    tapMm: 0,
  });
  return edge.ok ? recordingWith(view, { ...edge.value, isAssumed: true }) : null;
}

/** A recording where camera and edge are known from another sweep, and the lean is not. */
export function* startAtKnownEdge(
  view: WheelView,
  pictures: readonly YuvPicture[],
  known: KnownEdge,
): SlicedWork<SweepRecording | null> {
  const { profiles } = yield* firstLook(view, pictures);
  const found = yield* proposeEdge(profiles, view.basis, view.setup.wheel.edgeRadiusMm, {
    atRestMm: known.edgeHeightMm,
  });
  if (!found.ok) return null;
  const heightMm = heightBesidePlainest(known, found.value.plainestMm);
  const edge = edgeAtLean(profiles, view.basis, found.value.lean, heightMm);
  return edge ? recordingWith(view, asKnown(edge, known)) : null;
}

/** An edge that was assumed once stays so, however often it is met where it was put. */
function asKnown(edge: EdgeProposal, { edgeAssumed }: KnownEdge): EdgeProposal {
  return edgeAssumed ? { ...edge, isAssumed: true } : edge;
}

/** A recording without a picture yet, of this edge seen so. */
export function recordingWith(view: WheelView, edge: EdgeProposal): SweepRecording {
  const edgeView = edge.outline ? outlineView(view, edge.outline) : view;
  const { basis } = edgeView;
  const sightEdgeMm = edge.heightMm + riseAt(basis, edge.lean, basis.gainMm.length >> 1);
  const aboveMm = edge.outline ? OUTLINE_WINDOW_ABOVE_MM : WINDOW_ABOVE_MM;
  const belowMm = edge.outline ? OUTLINE_WINDOW_BELOW_MM : WINDOW_BELOW_MM;
  return {
    view,
    edgeView,
    edge,
    tilt: createTiltTracker(basis, {
      first: Math.max(0, Math.round(rowOfZ(sightEdgeMm + aboveMm))),
      last: Math.min(BAND_ROWS - 1, Math.round(rowOfZ(sightEdgeMm - belowMm))),
    }),
    turn: createTurnTracker(view.band.columns, STRIP_HEIGHTS_MM.length),
    lineWatch: createLineWatch(view),
    frames: [],
    repeatWatch: createRepeatWatch(),
    repeated: 0,
    stripHalfMm: lineStripHalfMm(view),
    edgeRow: new Float32Array(view.band.columns),
    work: createTextureWork(view.band.columns),
  };
}

/** Takes up one picture; null when it only repeats the one before. */
export function recordPicture(recording: SweepRecording, picture: YuvPicture): FrameRecord | null {
  const { view, edge, tilt, turn, frames } = recording;
  unrollPicture(view.band, picture);
  if (isRepeated(recording.repeatWatch, view.band, turn.rateDegPerS)) {
    recording.repeated++;
    return null;
  }
  markUsableCells(view.band, view.sight.laserColour, recording.stripHalfMm);
  const profiles = new Float32Array(view.layout.azimuthsDeg.length * BAND_ROWS);
  if (edge.outline) outlineProfiles(recording.edgeView, edge.outline, picture, profiles);
  else blockProfiles(view.band, view.layout, profiles);
  const lean = trackLean(tilt, profiles);
  edgeRows(view, treadEdgeMm(recording), absoluteLean(recording, tilt.last), recording.edgeRow);
  const texture = treadTexture(view.band, recording.edgeRow, recording.work);
  const step = trackTurn(turn, texture, picture.timeS);
  const line = watchLine(recording.lineWatch, view, picture);
  const frame: FrameRecord = {
    timeS: picture.timeS,
    profiles,
    colour: shoulderColour(view.band, recording.edgeRow),
    lean,
    turnIndex: step ? turn.turnDeg.length - 1 : null,
    lineShare: line.share,
    lineOffsetPx: line.offsetPx,
  };
  frames.push(frame);
  return frame;
}

/** Height above the line at which the tread's edge is taken to lie; where there is none, on the line. */
export function treadEdgeMm({ edge }: Pick<SweepRecording, 'edge'>): number {
  return edge.outline ? 0 : edge.heightMm;
}

/** The tracker counts leans from the first picture's; the edge found there says what that one was. */
export function absoluteLean(recording: SweepRecording, lean: Lean | null): Lean {
  const first = recording.edge.lean;
  return {
    liftMm: lean?.liftMm ?? 0,
    toward: first.toward + (lean?.toward ?? 0),
    across: first.across + (lean?.across ?? 0),
  };
}
