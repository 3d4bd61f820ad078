import type { SightMemory } from '../../contract/sweep.ts';
import { wrapHalfTurnDeg } from '../../quantities/angle.ts';
import { carriedPoint } from './carriedPoint.ts';
import { sightOfGeometry } from './sightMemory.ts';
import type { SolvedGeometry } from './solvedSweep.ts';
import type { SweepRecording } from './sweepRecording.ts';
import type { WheelView } from './wheelView.ts';

/**
 * Whether what the whole sweep taught differs so much from the first look that the pictures are
 * worth reading again: the unrolled band was bent, the strips that tell the turn lay askew, or a
 * recording made anew had to do with fewer pictures than there are.
 */

/** Bend of the band between middle and flank, degrees of azimuth and mm of height, that is let pass. */
const BEND_LIMIT_DEG = 1;
const BEND_LIMIT_MM = 2;
/** A first lean wrong by more puts the strips several mm off at the flanks, radians. */
const LEAN_LIMIT = 0.02;
const FLANK_DEG = 35;
const PROBE_HEIGHTS_MM = [10, -20];

export function secondLook(
  recording: SweepRecording,
  geometry: SolvedGeometry,
  madeAnew: boolean,
): SightMemory | null {
  // An outline is found by looking for it, not beside a known edge: the first look stands.
  if (recording.edge.outline) return null;
  const { view, observations } = geometry;
  const first = observations.leans[0];
  const leanOff = Math.hypot(
    first.toward - recording.edge.lean.toward,
    first.across - recording.edge.lean.across,
  );
  if (!madeAnew && leanOff < LEAN_LIMIT && !isBent(recording.view, view)) return null;
  return sightOfGeometry(recording, geometry);
}

/** Whether a band unrolled with one view is bent in another: its points sent through the picture. */
export function isBent(from: WheelView, to: WheelView): boolean {
  for (const zMm of PROBE_HEIGHTS_MM) {
    const middle = carriedPoint(from, to, 0, zMm);
    for (const azimuthDeg of [-FLANK_DEG, FLANK_DEG]) {
      const flank = carriedPoint(from, to, azimuthDeg, zMm);
      if (!middle || !flank) return true;
      const turnedDeg = wrapHalfTurnDeg(flank.azimuthDeg - middle.azimuthDeg - azimuthDeg);
      if (Math.abs(turnedDeg) > BEND_LIMIT_DEG) return true;
      if (Math.abs(flank.zMm - middle.zMm) > BEND_LIMIT_MM) return true;
    }
  }
  return false;
}
