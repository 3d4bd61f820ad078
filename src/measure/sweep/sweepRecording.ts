import { succeeded, type Outcome } from '../../contract/outcome.ts';
import type { YuvPicture } from '../../contract/picture.ts';
import type { SightMemory } from '../../contract/sweep.ts';
import { BAND_ROWS, rowOfZ, unrollPicture } from '../band/treadBand.ts';
import { markUsableCells } from '../band/laserMask.ts';
import { createRepeatWatch, isRepeated, type RepeatWatch } from '../band/repeatedPicture.ts';
import { blockProfiles, ANY_SHARE } from '../edge/blockProfiles.ts';
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
import { heightScaleMmPerPx } from '../geometry/heightScale.ts';
import { finished, type SlicedWork } from '../pace/slicedWork.ts';
import { createLineWatch, watchLine, type LineWatch } from '../sight/lineWatch.ts';
import {
  createTextureWork,
  STRIP_HEIGHTS_MM,
  treadTexture,
  type TextureWork,
} from '../turn/treadTexture.ts';
import { createTurnTracker, trackTurn, type TurnTracker } from '../turn/turnTracker.ts';
import { cylinderPointAtPixel } from '../geometry/cylinder.ts';
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
/** The strip about the line that is never used: its width, at least this, mm. */
const STRIP_HALF_MIN_MM = 0.8;
/** Half width of the line in RMS widths that still adds light. */
const STRIP_SPREADS = 1.6;
const STRIP_HALF_MAX_MM = 3;
/** Pictures averaged for the first look at the edge. */
const EDGE_PICTURES = 8;

/** Starts a recording from the first pictures in which the sight is known; null when no edge is found. */
export function* startRecording(
  view: WheelView,
  pictures: readonly YuvPicture[],
): SlicedWork<Outcome<SweepRecording, EdgeTrouble>> {
  const profiles = yield* meanProfiles(view, pictures.slice(0, EDGE_PICTURES));
  const edge = yield* proposeEdge(profiles, view.basis, view.setup.wheel.edgeRadiusMm, {
    tapMm: tapHeightMm(view),
  });
  return edge.ok ? succeeded(recordingWith(view, edge.value)) : edge;
}

/** Edge of an earlier pass or look. */
type KnownEdge = Pick<SightMemory, 'edgeHeightMm' | 'edgeAssumed'>;

/** A recording where camera, lean and about the edge's height are known from an earlier pass. */
export function startAgain(
  view: WheelView,
  picture: YuvPicture,
  lean: Lean,
  known: KnownEdge,
): SweepRecording | null {
  const profiles = finished(meanProfiles(view, [picture]));
  const edge = edgeAtLean(profiles, view.basis, lean, known.edgeHeightMm);
  return edge ? recordingWith(view, asKnown(edge, known)) : null;
}

/** A recording where the edge lies under the line; null when the rest of the tread shows no lean. */
export function* startOnLine(
  view: WheelView,
  pictures: readonly YuvPicture[],
): SlicedWork<SweepRecording | null> {
  const profiles = yield* meanProfiles(view, pictures.slice(0, EDGE_PICTURES));
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
  const profiles = yield* meanProfiles(view, pictures.slice(0, EDGE_PICTURES));
  const found = yield* proposeEdge(profiles, view.basis, view.setup.wheel.edgeRadiusMm, {
    atRestMm: known.edgeHeightMm,
  });
  const edge = found.ok && edgeAtLean(profiles, view.basis, found.value.lean, known.edgeHeightMm);
  return edge ? recordingWith(view, asKnown(edge, known)) : null;
}

/** An edge that was assumed once stays so, however often it is met where it was put. */
function asKnown(edge: EdgeProposal, { edgeAssumed }: KnownEdge): EdgeProposal {
  return edgeAssumed ? { ...edge, isAssumed: true } : edge;
}

/** A recording without a picture yet, of this edge seen so. */
export function recordingWith(view: WheelView, edge: EdgeProposal): SweepRecording {
  const sightEdgeMm = edge.heightMm + riseAt(view.basis, edge.lean, view.basis.gainMm.length >> 1);
  return {
    view,
    edge,
    tilt: createTiltTracker(view.basis, {
      first: Math.max(0, Math.round(rowOfZ(sightEdgeMm + WINDOW_ABOVE_MM))),
      last: Math.min(BAND_ROWS - 1, Math.round(rowOfZ(sightEdgeMm - WINDOW_BELOW_MM))),
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

/** Half height of the strip about the line that is left out, mm: the line's own width. */
function lineStripHalfMm(view: WheelView): number {
  const { camera, sightPx, lineSpreadPx } = view.sight;
  const radiusMm = view.setup.wheel.edgeRadiusMm;
  const spreadMm = lineSpreadPx * heightScaleMmPerPx(camera, radiusMm, sightPx.xPx, sightPx.yPx);
  return Math.min(STRIP_HALF_MAX_MM, Math.max(STRIP_HALF_MIN_MM, STRIP_SPREADS * spreadMm));
}

function* meanProfiles(view: WheelView, pictures: readonly YuvPicture[]): SlicedWork<Float32Array> {
  const stripHalfMm = lineStripHalfMm(view);
  const blocks = view.layout.azimuthsDeg.length;
  const sum = new Float32Array(blocks * BAND_ROWS);
  const count = new Float32Array(blocks * BAND_ROWS);
  const one = new Float32Array(blocks * BAND_ROWS);
  for (const picture of pictures) {
    yield;
    unrollPicture(view.band, picture);
    markUsableCells(view.band, view.sight.laserColour, stripHalfMm);
    blockProfiles(view.band, view.layout, one, ANY_SHARE);
    for (let i = 0; i < one.length; i++) {
      if (one[i] !== one[i]) continue;
      sum[i] += one[i];
      count[i]++;
    }
  }
  return sum.map((s, i) => (count[i] > 0 ? s / count[i] : NaN));
}

/** Height of the tapped point on the nominal tread, mm above the line; null without a tap on it. */
function tapHeightMm(view: WheelView): number | null {
  const tap = view.setup.sight.edgePoint;
  if (!tap) return null;
  const point = cylinderPointAtPixel(
    view.sight.camera,
    view.setup.wheel.edgeRadiusMm,
    tap.xPx,
    tap.yPx,
  );
  return point && Math.abs(point.zMm) < 30 ? point.zMm : null;
}

/** Takes up one picture; null when it only repeats the one before. */
export function recordPicture(recording: SweepRecording, picture: YuvPicture): FrameRecord | null {
  const { view, tilt, turn, frames } = recording;
  unrollPicture(view.band, picture);
  if (isRepeated(recording.repeatWatch, view.band, turn.rateDegPerS)) {
    recording.repeated++;
    return null;
  }
  markUsableCells(view.band, view.sight.laserColour, recording.stripHalfMm);
  const profiles = new Float32Array(view.layout.azimuthsDeg.length * BAND_ROWS);
  blockProfiles(view.band, view.layout, profiles);
  const lean = trackLean(tilt, profiles);
  edgeRows(view, recording.edge.heightMm, absoluteLean(recording, tilt.last), recording.edgeRow);
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

/** The tracker counts leans from the first picture's; the edge found there says what that one was. */
export function absoluteLean(recording: SweepRecording, lean: Lean | null): Lean {
  const first = recording.edge.lean;
  return {
    liftMm: lean?.liftMm ?? 0,
    toward: first.toward + (lean?.toward ?? 0),
    across: first.across + (lean?.across ?? 0),
  };
}
