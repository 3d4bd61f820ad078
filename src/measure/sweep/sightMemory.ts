import type { SightMemory } from '../../contract/sweep.ts';
import type { EdgeProposal } from '../edge/edgeProposal.ts';
import { seenTurnRatio } from './seenTurnRatio.ts';
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
