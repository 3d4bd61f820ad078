import { addCovariances, evenCovariance } from '../../balance/planeCovariance.ts';
import { modelResponse } from '../../balance/response.ts';
import { unbalanceFromRise, type Unbalance } from '../../balance/unbalance.ts';
import type { EdgeKind } from '../../contract/followedEdge.ts';
import type { RunningTiltNow } from '../fit/runningTilt.ts';
import { hiddenEdgeCovariance, hiddenEdgeSdMm } from './assumedEdge.ts';
import { edgeRise } from './edgeRise.ts';
import { MARK_SD_DEG, scaleRelativeSd } from './heightErrors.ts';
import { viewOfEdge } from './observedEdge.ts';
import { outlineCreepSdMm } from './outlineView.ts';
import { runOutOf, wholeRunOutSdMm } from './runOutOf.ts';
import type { SweepRecording } from './sweepRecording.ts';
import { STAND_LEAN_SD } from './templatePlace.ts';

/** What a reading's ± takes in beside what the sweep itself scatters, by what is followed as of now. */
export interface ErrorsNow {
  readonly scaleSd: number;
  readonly runOutSdMm: number;
  /** Standard deviation of a component by what an outline does not tell of creep, mm; 0 beside an edge. */
  readonly creepSdMm: number;
  /** How far an edge that was only assumed may lie from the line, mm; null where it was seen. */
  readonly hiddenSdMm: number | null;
}

/** By the reading's own functions; null where a reading would be refused. Costs some milliseconds. */
export function errorsNow(
  recording: SweepRecording,
  kind: EdgeKind | null,
  onBandAlone: boolean,
): ErrorsNow | null {
  const { view, edge, tilt } = recording;
  const runOut = runOutOf(viewOfEdge(recording, view), onBandAlone);
  if (!runOut) return null;
  return {
    scaleSd: scaleRelativeSd(view, edge, kind === 'blocks', 0),
    runOutSdMm: wholeRunOutSdMm(runOut),
    creepSdMm: edge.outline ? outlineCreepSdMm(view, edge.outline, STAND_LEAN_SD) : 0,
    hiddenSdMm: edge.isAssumed ? hiddenEdgeSdMm(tilt.template) : null,
  };
}

/** What a reading by formula made of the running tilt would say; null where it would be refused. */
export function worthNow(
  { view, edge }: SweepRecording,
  { tiltMm, tiltSdMm }: RunningTiltNow,
  { scaleSd, runOutSdMm, creepSdMm, hiddenSdMm }: ErrorsNow,
): Unbalance | null {
  const { wheel, stand } = view.setup;
  const response = modelResponse({ ...wheel, ...stand });
  if (!response.ok) return null;
  const even = evenCovariance(tiltSdMm ** 2 + creepSdMm ** 2);
  const tiltCovarianceMm2 =
    hiddenSdMm === null
      ? even
      : addCovariances(even, hiddenEdgeCovariance(view, edge, tiltMm, hiddenSdMm));
  const rise = edgeRise({ tiltMm, tiltCovarianceMm2 }, scaleSd, MARK_SD_DEG);
  const unbalance = unbalanceFromRise({ rise, response: response.value, runOutSdMm });
  return unbalance.ok ? unbalance.value : null;
}
