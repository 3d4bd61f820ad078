import type { SightMemory } from '../../contract/sweep.ts';
import type { EdgeProposal } from '../edge/edgeProposal.ts';
import { carriedPoint } from './carriedPoint.ts';
import type { SolvedGeometry } from './solvedSweep.ts';
import type { SweepRecording } from './sweepRecording.ts';
import type { WheelView } from './wheelView.ts';

/** Camera, line and edge as the whole sweep taught them, and its turn's scale where that closed. */
export function sightOfGeometry(
  recording: SweepRecording,
  { view, edge, observations, closure }: SolvedGeometry,
): SightMemory {
  const first = observations.leans[0];
  return {
    ...cameraOf(view),
    ...(closure ? { turnScale: closure.scale / seenTurnRatio(recording.view, view) } : {}),
    ...aboutEdge(edge, observations.offsetMm),
    firstLeanToward: first.toward,
    firstLeanAcross: first.across,
  };
}

/** Camera, line and edge as the first look found them. */
export function sightOfRecording({ view, edge }: SweepRecording): SightMemory {
  return {
    ...cameraOf(view),
    ...aboutEdge(edge, edge.heightMm),
    firstLeanToward: edge.lean.toward,
    firstLeanAcross: edge.lean.across,
  };
}

function aboutEdge({ isAssumed }: EdgeProposal, edgeHeightMm: number) {
  return { edgeHeightMm, ...(isAssumed ? { edgeAssumed: true } : {}) };
}

function cameraOf({ sight }: WheelView) {
  const { poseFit, laserColour, lineSpreadPx, originColumnPx } = sight;
  return {
    pose: poseFit.pose,
    poseCovariance: poseFit.covariance,
    poseResidualPx: poseFit.residualPx,
    laserColour,
    lineSpreadPx,
    originColumnPx,
  };
}

const PROBE_DEG = 20;

/** How much larger the same movement of the tread looks, in degrees, by another camera's band. */
export function seenTurnRatio(from: WheelView, to: WheelView): number {
  const left = carriedPoint(from, to, PROBE_DEG, -10);
  const right = carriedPoint(from, to, -PROBE_DEG, -10);
  return left && right ? (left.azimuthDeg - right.azimuthDeg) / (2 * PROBE_DEG) : 1;
}
