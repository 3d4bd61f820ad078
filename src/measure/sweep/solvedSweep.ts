import { evenCovariance } from '../../balance/planeCovariance.ts';
import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import type { RefusalCode } from '../../contract/refusals.ts';
import type { PlaneCovariance } from '../../quantities/vector.ts';
import { CHROMA_COLUMN_STEP } from '../band/treadBand.ts';
import { fitTilt } from '../fit/fitTilt.ts';
import type { TiltFit } from '../fit/tiltFit.ts';
import { findTapes, shoulderPanorama, type Tape } from '../mark/tapes.ts';
import { valveMark } from '../mark/valveMark.ts';
import { closeTurn, type TurnClosure } from '../turn/closedTurn.ts';
import type { EdgeProposal } from '../edge/edgeProposal.ts';
import type { EdgeObservations } from './edgeObservations.ts';
import { faceOutward, withoutOutward } from './faceOutward.ts';
import { assumedEdgeCovariance, hiddenEdgeCovariance, hiddenEdgeSdMm } from './assumedEdge.ts';
import type { FaceLine } from './faceLine.ts';
import { carriedPoint } from './carriedPoint.ts';
import { closedCamera } from './closedCamera.ts';
import type { LineInset } from './lineInset.ts';
import { observedEdge } from './observedEdge.ts';
import { outlineCreepSdMm } from './outlineView.ts';
import { refineShifts, type RefinedShifts } from './refinedShifts.ts';
import type { SweepRecording } from './sweepRecording.ts';
import { shownEdge } from './shownEdge.ts';
import { STAND_LEAN_SD } from './templatePlace.ts';
import { windowSpeeds } from './textureSpans.ts';
import type { WheelView } from './wheelView.ts';

/** A whole sweep worked out, from what was kept of its pictures. */
export interface SolvedSweep {
  readonly view: WheelView;
  readonly edge: EdgeProposal;
  readonly line: FaceLine;
  readonly lineInset: LineInset;
  readonly closure: TurnClosure;
  readonly mark: Tape;
  readonly refined: RefinedShifts;
  readonly observations: EdgeObservations;
  readonly fit: TiltFit;
  /**
   * What the place of an edge that was only assumed, or an outline's creep, adds to the tilt's covariance,
   * mm²; null where an edge was seen.
   */
  readonly edgePlaceMm2: PlaneCovariance | null;
}

/** Once-round radial run-out that is not known beforehand, a component: the allowance of the ±, mm. */
const RUN_OUT_SD_MM = 0.2;
/** A line that is one circle scatters less than this about it, px for a picture 1280 wide. */
const MAX_FACE_RESIDUAL_PX = 1;
/** The line must lie on the face over 35°; with the sight far aside little more is in view. */
const MIN_FACE_BLOCKS = 7;
const MIN_OBSERVATIONS = 30;
/** About where the shoulder is looked at for the tape, mm. */
const MARK_ABOVE_LINE_MM = 10;

/** Camera and leans of a whole sweep; the turn still by its raw sum. */
export interface SolvedGeometry {
  readonly view: WheelView;
  /** As all pictures together show it. */
  readonly edge: EdgeProposal;
  readonly line: FaceLine;
  readonly lineInset: LineInset;
  readonly refined: RefinedShifts;
  readonly observations: EdgeObservations;
  /** Null when no two views a turn apart match. */
  readonly closure: TurnClosure | null;
}

export function solveGeometry(followed: SweepRecording): Outcome<SolvedGeometry, RefusalCode> {
  const refined = refineShifts(followed);
  return solveAtEdge(followed, refined, shownEdge(followed, refined.template));
}

function solveAtEdge(
  followed: SweepRecording,
  refined: RefinedShifts,
  edge: EdgeProposal,
): Outcome<SolvedGeometry, RefusalCode> {
  const recording = { ...followed, edge };
  const turnDegOf = turnOf(recording, 1, 0);
  const first = observedEdge(recording, refined, recording.view, turnDegOf);
  if (first.timeS.length < MIN_OBSERVATIONS) {
    return failed('too-few-frames', { picturesFollowed: first.timeS.length });
  }
  const closed = closeTurn(recording.turn);
  // With the sight far aside the line alone leaves the camera open; elsewhere it does without.
  const isTold = closed !== null || recording.view.sight.asideDeg !== 0;
  const speeds = isTold ? windowSpeeds(recording) : [];
  const start = { recording, refined, observations: first, closure: closed, speeds, turnDegOf };
  const { camera, closure } = closedCamera(start);
  const { view, line, observations, isSolved, insetMm, insetSdMm } = camera;
  const residualPx = (view.sight.poseFit.residualPx * 1280) / view.sight.camera.pose.widthPx;
  if (!isSolved || line.blocksSeen < MIN_FACE_BLOCKS || residualPx > MAX_FACE_RESIDUAL_PX) {
    return failed('line-lost', {
      what: 'the line is not one circle',
      residualPx,
      blocks: line.blocksSeen,
    });
  }
  const lineInset = { insetMm, insetSdMm };
  return succeeded({ view, edge, line, lineInset, refined, observations, closure });
}

export function solveSweep(
  followed: SweepRecording,
  geometry: SolvedGeometry,
): Outcome<SolvedSweep, RefusalCode> {
  const solved = solveTilt(followed, geometry);
  const { outline, isAssumed } = geometry.edge;
  if (solved.ok && outline) {
    const creepSdMm = outlineCreepSdMm(geometry.view, outline, STAND_LEAN_SD);
    return succeeded({ ...solved.value, edgePlaceMm2: evenCovariance(creepSdMm ** 2) });
  }
  if (!solved.ok || !isAssumed) return solved;
  const tiltWith = (edge: EdgeProposal) => {
    const other = { ...followed, edge };
    const moved = solveAtEdge(other, refineShifts(other), edge);
    const tilted = moved.ok ? solveTilt(other, moved.value) : moved;
    return tilted.ok ? tilted.value.fit.tiltMm : null;
  };
  const { edge, fit, refined } = solved.value;
  const sdMm = hiddenEdgeSdMm(refined.template);
  const beforehandMm2 = hiddenEdgeCovariance(geometry.view, edge, fit.tiltMm, sdMm);
  const edgePlaceMm2 = assumedEdgeCovariance(edge, fit.tiltMm, sdMm, tiltWith, beforehandMm2);
  return succeeded({ ...solved.value, edgePlaceMm2 });
}

function solveTilt(
  followed: SweepRecording,
  geometry: SolvedGeometry,
): Outcome<SolvedSweep, RefusalCode> {
  const { view, edge, line, lineInset, refined, closure } = geometry;
  const recording = { ...followed, edge };
  if (!closure) return failed('turn-uncertain', { what: 'no two views a turn apart match' });
  const mark = markOf(recording, closure, view);
  if (!mark.ok) return mark;
  const turnDegOf = turnOf(recording, closure.scale, mark.value.middleDeg);
  const seen = observedEdge(recording, refined, view, turnDegOf);
  // What the crown's face does the shoulder's outline need not do, nor a groove's floor tell: run-out and
  // creep are in the ±. With the line on the floor what is taken to lie on the face is the rib's lip.
  const observations =
    edge.outline || lineInset.insetMm > 0
      ? seen
      : withoutOutward(seen, faceOutward(seen, line, view, RUN_OUT_SD_MM), view);
  const fit = fitTilt(observations);
  if (!fit.ok) return fit;
  return succeeded({
    view,
    edge,
    line,
    lineInset,
    closure,
    mark: mark.value,
    refined,
    observations,
    fit: fit.value,
    edgePlaceMm2: null,
  });
}

/** Turn of a recorded frame: the tracker's sum scaled, and counted from the mark. */
function turnOf(
  recording: SweepRecording,
  scale: number,
  markDeg: number,
): (frame: number) => number | null {
  return (frame) => {
    const { turnIndex } = recording.frames[frame];
    return turnIndex === null ? null : recording.turn.turnDeg[turnIndex] * scale + markDeg;
  };
}

/** Tape at the valve, its wheel angle counted from the first picture's turn; `view`: the camera that is known by now. */
export function markOf(
  recording: SweepRecording,
  closure: { readonly scale: number },
  view = recording.view,
): Outcome<Tape, 'mark-missing' | 'mark-ambiguous'> {
  const { band, setup } = recording.view;
  const frames = recording.frames.flatMap(({ turnIndex, colour }) =>
    turnIndex === null
      ? []
      : [{ colour, turnDeg: recording.turn.turnDeg[turnIndex] * closure.scale }],
  );
  const azimuthsDeg = Float64Array.from({ length: band.chromaColumns }, (_, i) => {
    const azimuthDeg = band.azimuthDeg[Math.min(i * CHROMA_COLUMN_STEP, band.columns - 1)];
    if (view === recording.view) return azimuthDeg;
    const carried = carriedPoint(recording.view, view, azimuthDeg, MARK_ABOVE_LINE_MM);
    return carried?.azimuthDeg ?? azimuthDeg;
  });
  const tapes = findTapes(shoulderPanorama(frames, azimuthsDeg));
  return valveMark(tapes, { ...setup.sight.valveMark, edgeRadiusMm: setup.wheel.edgeRadiusMm });
}
