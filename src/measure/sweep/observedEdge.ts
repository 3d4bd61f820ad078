import { edgeObservations, type EdgeObservations } from './edgeObservations.ts';
import { evenGains } from './evenGains.ts';
import { outlineView } from './outlineView.ts';
import type { RefinedShifts } from './refinedShifts.ts';
import type { SweepRecording } from './sweepRecording.ts';
import { STAND_LEAN_SD } from './templatePlace.ts';
import type { WheelView } from './wheelView.ts';

/**
 * On a tread without an edge the sheet lies on its face all over. As far as all else asks the edge
 * stands so far below it, mm: the middle of what counts as on the face.
 */
const FACE_BELOW_MM = 12;

/** The final camera's view of what was followed. */
export function viewOfEdge({ edge }: Pick<SweepRecording, 'edge'>, view: WheelView): WheelView {
  return edge.outline ? outlineView(view, edge.outline) : view;
}

/** Heights of what was followed; those of an outline carried out to the tread edge's radius. */
export function observedEdge(
  recording: SweepRecording,
  refined: RefinedShifts,
  view: WheelView,
  turnDegOf: (frame: number) => number | null,
): EdgeObservations {
  if (!recording.edge.outline) return edgeObservations(recording, refined, view, turnDegOf);
  const followed = { ...recording, view: recording.edgeView };
  const seen = edgeObservations(followed, refined, viewOfEdge(recording, view), turnDegOf);
  const edgeRadiusMm = view.setup.wheel.edgeRadiusMm;
  const larger = edgeRadiusMm / seen.edgeRadiusMm;
  const gains = evenGains(seen);
  const carried = (mm: number, at: number) => (mm * larger) / gains[at % gains.length];
  return {
    ...seen,
    heightMm: seen.heightMm.map((heightMm, at) => carried(heightMm, at) - FACE_BELOW_MM),
    standardErrorMm: seen.standardErrorMm.map(carried),
    edgeRadiusMm,
    // Taken to stand level (placedLevel): what is told of the stand is told by nothing but that.
    azimuthBiasSdMm: STAND_LEAN_SD * edgeRadiusMm,
    offsetMm: -FACE_BELOW_MM,
    // Steps of the outline are not steps of the face on which the line lies.
    unevenMm: 0,
  };
}
