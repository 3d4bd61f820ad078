import type { LeadInstruction } from '../../job/leadInstruction.ts';

/** Pitch at half a turn from the spot, Hz, and the octaves that it climbs on the way to it. */
const FARTHEST_HZ = 220;
const OCTAVES = 2;
/** Time from note to note at half a turn, and at the spot, s: they come closer as it comes closer. */
const SLOWEST_BEAT_S = 0.9;
const QUICKEST_BEAT_S = 0.22;

/** 1 at the spot, 0 half a turn away and beyond. */
function nearness(byDeg: number): number {
  return 1 - Math.min(Math.abs(byDeg), 180) / 180;
}

/** Pitch of the leading tone, Hz: climbs evenly, to the ear, toward the spot. */
export function leadPitchHz(byDeg: number): number {
  return FARTHEST_HZ * 2 ** (OCTAVES * nearness(byDeg));
}

/** Time to the next note, s. */
export function leadBeatS(byDeg: number): number {
  return SLOWEST_BEAT_S + (QUICKEST_BEAT_S - SLOWEST_BEAT_S) * nearness(byDeg);
}

/** From here on the hand should slow down, degrees. */
const NEAR_DEG = 20;

/** What is to be told aloud while a hand is led: only what is new. */
export type LeadWord = 'turn' | 'near' | 'here' | 'find-tape' | 'lost';

/** The word for what changed between two instructions; null when the hand goes on as it does. */
export function leadWordBetween(
  before: LeadInstruction | null,
  now: LeadInstruction,
): LeadWord | null {
  if (now.kind === 'at-spot') return before?.kind === 'at-spot' ? null : 'here';
  if (now.kind !== 'turn') return before?.kind === now.kind ? null : now.kind;
  if (before?.kind !== 'turn' || before.byDeg * now.byDeg < 0) return 'turn';
  return Math.abs(now.byDeg) <= NEAR_DEG && Math.abs(before.byDeg) > NEAR_DEG ? 'near' : null;
}
