import type { EdgeKind, FollowedEdge } from '../../contract/followedEdge.ts';
import { lightBand } from '../edge/lightBand.ts';
import { bandOffSquareMm } from './bandOffSquare.ts';
import type { RefinedShifts } from './refinedShifts.ts';
import type { SolvedSweep } from './solvedSweep.ts';
import type { SweepRecording } from './sweepRecording.ts';
import { UNEVEN_MM, unevenMm } from './unevenEdge.ts';

/** Newest pictures by which it is told while they come. */
const RECENT = 48;

/** What is followed, as far as the pictures so far tell, and whether it is a band and nothing else. */
export function edgeNow(recording: SweepRecording): { kind: EdgeKind; onBandAlone: boolean } {
  const { tilt, edge } = recording;
  if (edge.outline) return { kind: 'outline', onBandAlone: false };
  const band = lightBand(tilt.template, tilt.basis, edge.lean, tilt.window);
  return {
    kind: kindOf(band !== null, unevenMm(recording, RECENT)),
    onBandAlone: band !== null && !band.treadTells,
  };
}

/** What was followed in a whole sweep, and how well. */
export function followedEdge(
  recording: SweepRecording,
  { refined, observations, fit }: Pick<SolvedSweep, 'refined' | 'observations' | 'fit'>,
): FollowedEdge {
  const { heightMm } = observations;
  let [seen, squares, known] = [0, 0, 0];
  for (let i = 0; i < heightMm.length; i++) {
    if (heightMm[i] === heightMm[i]) seen++;
    const left = fit.residualMm[i];
    if (left !== left) continue;
    squares += left * left;
    known++;
  }
  const scatterMm = known > 0 ? Math.sqrt(squares / known) : 0;
  const looked = recording.frames.length * observations.azimuthsDeg.length;
  return {
    kind: recording.edge.outline
      ? 'outline'
      : kindOf(refined.band !== null, Math.max(refined.unevenMm, scatterMm)),
    seenShare: looked > 0 ? seen / looked : 0,
    scatterMm,
    ...(refined.band ? { bandOffSquareMm: bandOffSquareMm(recording, refined.band) } : {}),
  };
}

/** Whether what was followed is a band that a hand stuck on, and nothing else told its error. */
export function isOnBandAlone({ band }: Pick<RefinedShifts, 'band'>): boolean {
  return band !== null && !band.treadTells;
}

function kindOf(hasBand: boolean, uneven: number): EdgeKind {
  if (hasBand) return 'band';
  return uneven > UNEVEN_MM ? 'blocks' : 'rib';
}
