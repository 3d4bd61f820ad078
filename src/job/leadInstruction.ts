import { wrapHalfTurnDeg } from '../quantities/angle.ts';
import type { SweepProgress } from '../contract/sweep.ts';

/** What to tell the hand that turns the wheel until a spot of it stands at the sight. */
export type LeadInstruction =
  /** The tape has not passed the sight yet: the turn is not known. */
  | { readonly kind: 'find-tape' }
  /** The wheel cannot be followed in this moment. */
  | { readonly kind: 'lost' }
  /** Turn by so much; positive clockwise seen from above. */
  | { readonly kind: 'turn'; readonly byDeg: number }
  | { readonly kind: 'at-spot'; readonly byDeg: number };

/** Nearer than this the spot stands at the sight: 5 mm on the rim, what a hand can stick to, degrees. */
const ARRIVED_DEG = 1.5;
/** Only further away than this it has left again: a wheel rocks a little in its turn, degrees. */
const LEFT_DEG = 3;
/** Past half a turn the way round is changed only when the other one is shorter by so much, degrees. */
const CHANGE_OF_WAY_DEG = 30;

/**
 * Wheel angle β stands at azimuth β + φ at turn φ, so the sight is reached after a further turn of
 * −(β + φ). `before` is the instruction given last for the same spot: it holds until it is clearly
 * wrong, so that words and tones do not flicker.
 */
export function leadInstruction(
  targetDeg: number,
  progress: Pick<SweepProgress, 'stage' | 'turnDeg' | 'markSeen'> | null,
  before: LeadInstruction | null,
): LeadInstruction {
  if (progress === null || progress.stage !== 'following' || progress.turnDeg === null) {
    return { kind: 'lost' };
  }
  if (!progress.markSeen) return { kind: 'find-tape' };
  const shortestDeg = wrapHalfTurnDeg(-(targetDeg + progress.turnDeg));
  const limitDeg = before?.kind === 'at-spot' ? LEFT_DEG : ARRIVED_DEG;
  if (Math.abs(shortestDeg) <= limitDeg) return { kind: 'at-spot', byDeg: shortestDeg };
  return { kind: 'turn', byDeg: sameWay(shortestDeg, before) };
}

function sameWay(shortestDeg: number, before: LeadInstruction | null): number {
  if (before?.kind !== 'turn' || shortestDeg * before.byDeg > 0) return shortestDeg;
  const otherDeg = shortestDeg - 360 * Math.sign(shortestDeg);
  const isShorterBy = Math.abs(otherDeg) - Math.abs(shortestDeg);
  return isShorterBy <= CHANGE_OF_WAY_DEG ? otherDeg : shortestDeg;
}
