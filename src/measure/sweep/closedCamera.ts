import { closeTurnNear, type TurnClosure } from '../turn/closedTurn.ts';
import { cameraByLine, type LineInset } from './lineInset.ts';
import { seenTurnRatio } from './seenTurnRatio.ts';
import type { CameraStart, SolvedCamera } from './solvedCamera.ts';

export interface ClosedCamera {
  readonly camera: SolvedCamera & LineInset;
  /** Null when no two views a turn apart match, wherever they are looked for. */
  readonly closure: TurnClosure | null;
}

/**
 * The whole sweep's camera, and the turn closed by it where it did not close before. With the sight far aside
 * a first look's camera can be so far off that the raw sum of a revolution lies beyond the reach in which a match
 * is looked for; the whole sweep's line and the parts of the picture beside each other make a better camera
 * all the same, and how much less the tread moves by that one says where to look.
 */
export function closedCamera(start: CameraStart): ClosedCamera {
  const { recording, closure } = start;
  const camera = cameraByLine(start);
  const isOpen = closure === null && start.speeds.length > 0 && camera.isSolved;
  if (!isOpen) return { camera, closure };
  const revolutionDeg = 360 / seenTurnRatio(recording.view, camera.view);
  const found = closeTurnNear(recording.turn, revolutionDeg);
  if (!found) return { camera, closure };
  return { camera: cameraByLine({ ...start, closure: found }), closure: found };
}
