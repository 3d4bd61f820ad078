import type { TurnClosure } from '../turn/closedTurn.ts';
import type { EdgeObservations } from './edgeObservations.ts';
import { faceLine, type FaceLine } from './faceLine.ts';
import { finalView } from './finalView.ts';
import { observedEdge } from './observedEdge.ts';
import type { RefinedShifts } from './refinedShifts.ts';
import type { SweepRecording } from './sweepRecording.ts';
import { textureSpans, type WindowSpeed } from './textureSpans.ts';
import type { WheelView } from './wheelView.ts';

/** What camera and leans of a whole sweep are worked out from. */
export interface CameraStart {
  readonly recording: SweepRecording;
  readonly refined: RefinedShifts;
  /** As the recording's own camera has them. */
  readonly observations: EdgeObservations;
  readonly closure: TurnClosure | null;
  readonly speeds: readonly WindowSpeed[];
  readonly turnDegOf: (frame: number) => number | null;
}

export interface SolvedCamera {
  readonly view: WheelView;
  readonly line: FaceLine;
  readonly observations: EdgeObservations;
  /** False when no round's line made a camera: the view is still the recording's. */
  readonly isSolved: boolean;
}

/** Rounds of camera and leans: each needs the other; the third changes nothing that counts. */
const GEOMETRY_ROUNDS = 3;

/**
 * Camera and leans in turn, with the line's circle so far inside of the edge, mm. Of a line in the groove
 * all sightings are taken: by the edge alone none of them lies on the face.
 */
export function solvedCamera(
  start: CameraStart,
  lineInsetMm: number,
  isInGroove = lineInsetMm > 0,
): SolvedCamera {
  const { recording, refined, closure, speeds, turnDegOf } = start;
  let { view } = recording;
  let { observations } = start;
  let line = faceLine(recording, observations, view, isInGroove);
  let isSolved = false;
  for (let round = 0; round < GEOMETRY_ROUNDS; round++) {
    // A turn that did not close still tells the parts of the picture beside each other.
    const turned = {
      spans: textureSpans(recording, speeds, closure?.scale ?? 1, line.crownSlope),
      isTurnScaleOpen: closure === null,
    };
    const better = finalView(recording, line.points, turned, lineInsetMm);
    if (better) view = better;
    isSolved ||= better !== null;
    observations = observedEdge(recording, refined, view, turnDegOf);
    line = faceLine(recording, observations, view, isInGroove);
  }
  return { view, line, observations, isSolved };
}
