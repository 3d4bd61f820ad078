import type { SightMemory } from '../../contract/sweep.ts';
import { RAD_PER_DEG, wrapHalfTurnDeg } from '../../quantities/angle.ts';
import type { Lean } from '../edge/leanFit.ts';
import { carriedPoint } from './carriedPoint.ts';
import { sightOfGeometry } from './sightMemory.ts';
import type { SolvedGeometry } from './solvedSweep.ts';
import type { SweepRecording } from './sweepRecording.ts';
import { edgeGainMm, type WheelView } from './wheelView.ts';

/**
 * Whether what the whole sweep taught differs so much from the first look that the pictures are
 * worth reading again: the unrolled band was bent, the strips that tell the turn lay askew, or a
 * recording made anew had to do with pictures too far apart. What is less is made up for by carrying over
 * to the better view what was measured with the first one.
 */

/** How far a point at the flanks lies off, held against the middle: degrees of azimuth and mm of height. */
export interface Bend {
  readonly deg: number;
  readonly mm: number;
}

/** How a recording was made anew: from pictures that stand for all of them, or too far apart for that. */
export type MadeAnew = 'closely' | 'coarsely';

/** Worth measuring again the few pictures that are kept of a sweep that goes on, or a film with no figure. */
export const WORTH_LITTLE: Bend = { deg: 1, mm: 2 };
/**
 * Worth measuring again a film that was read: as far as the strips that tell the turn are high, and at the
 * flanks out of step with the middle by a sixth of a tread pitch over the way to a key frame. Films looked
 * at with views bent on purpose by up to 2.5° and 2 mm read 0.2 g beside the best view's reading and no
 * farther off the truth; with half a degree it was 0.1 g.
 */
const WORTH_A_READING: Bend = { deg: 1.5, mm: 3 };
const FLANK_DEG = 35;
const PROBE_HEIGHTS_MM = [10, -20];

/** @param isRefused asked only where it counts: whether no figure came of the first look */
export function secondLook(
  recording: SweepRecording,
  geometry: SolvedGeometry,
  madeAnew: MadeAnew | null,
  isRefused: () => boolean,
): SightMemory | null {
  // An outline is found by looking for it, not beside a known edge: the first look stands.
  if (recording.edge.outline) return null;
  const isOff = (limit: Bend): boolean =>
    isBent(recording.view, geometry.view, limit) || edgeAskewMm(recording, geometry) > limit.mm;
  const isWorthIt =
    madeAnew === 'coarsely' ||
    isOff(WORTH_A_READING) ||
    // What spoilt the reading may be the view: a smaller error of it is enough to try again.
    ((madeAnew !== null || isOff(WORTH_LITTLE)) && isRefused());
  return isWorthIt ? sightOfGeometry(recording, geometry) : null;
}

/** Whether a band unrolled with one view is bent by more in another: its points sent through the picture. */
export function isBent(from: WheelView, to: WheelView, limit: Bend): boolean {
  for (const zMm of PROBE_HEIGHTS_MM) {
    const middle = carriedPoint(from, to, 0, zMm);
    for (const azimuthDeg of [-FLANK_DEG, FLANK_DEG]) {
      const flank = carriedPoint(from, to, azimuthDeg, zMm);
      if (!middle || !flank) return true;
      const turnedDeg = wrapHalfTurnDeg(flank.azimuthDeg - middle.azimuthDeg - azimuthDeg);
      if (Math.abs(turnedDeg) > limit.deg) return true;
      if (Math.abs(flank.zMm - middle.zMm) > limit.mm) return true;
    }
  }
  return false;
}

/**
 * How far the first look's edge lies off the whole sweep's at the flanks, held against the middle, in the
 * first picture, mm: in the first look's own band, where its strips were laid along it. A lean toward the
 * camera and the height of that camera look alike; so neither is asked for alone.
 */
export function edgeAskewMm(
  { view: first, edge }: Pick<SweepRecording, 'view' | 'edge'>,
  { view, observations }: Pick<SolvedGeometry, 'view' | 'observations'>,
): number {
  const offMm = (azimuthDeg: number): number => {
    const zMm = observations.offsetMm + riseMm(view, azimuthDeg, observations.leans[0]);
    const seen = carriedPoint(view, first, azimuthDeg, zMm);
    if (!seen) return Infinity;
    return seen.zMm - edge.heightMm - riseMm(first, seen.azimuthDeg, edge.lean);
  };
  const middleMm = offMm(0);
  return Math.max(...[-FLANK_DEG, FLANK_DEG].map((deg) => Math.abs(offMm(deg) - middleMm)));
}

function riseMm(view: WheelView, azimuthDeg: number, { toward, across }: Lean): number {
  const azimuth = azimuthDeg * RAD_PER_DEG;
  return (
    edgeGainMm(view, azimuthDeg, 0) * (toward * Math.cos(azimuth) + across * Math.sin(azimuth))
  );
}
