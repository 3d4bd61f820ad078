import { succeeded } from '../contract/outcome.ts';
import type { BalanceOutcome } from './failures.ts';
import { NOT_NEGATIVE, POSITIVE, rejectNumbers, SIGNED } from './inputs.ts';

/** Said wherever a result is shown: the limit of the whole method. */
export const COUPLE_CAUTION =
  'A wheel balanced on a stand is balanced at rest. Couple unbalance, which shows only when the ' +
  'wheel spins, is neither seen nor cured here.';

export interface CoupleInput {
  /** Moment of the correction weights, g·mm. */
  readonly correctionGmm: number;
  /** Axial distance of the weights from the plane of the centre of mass, mm, either sign. */
  readonly axialDistanceMm: number;
  /** Permissible static unbalance of the wheel, g·mm. */
  readonly permissibleGmm: number;
  /** Distance of the two planes over which the tolerance is shared (rim width), mm. */
  readonly planeSpacingMm: number;
}

export interface AddedCouple {
  /** U·z, g·mm². */
  readonly coupleGmm2: number;
  readonly permissibleGmm2: number;
  /** Added over permissible. */
  readonly share: number;
  readonly finding: 'slight' | 'noticeable' | 'too-much';
  readonly advice: string;
}

/** A quarter of what is allowed leaves the rest to the wheel itself, which nobody measured here. */
const SLIGHT_SHARE = 0.25;

const ADVICE: Readonly<Record<AddedCouple['finding'], string>> = {
  slight: 'The weights sit near enough to the wheel’s middle plane.',
  noticeable: 'Stick the weights nearer to the middle of the rim’s width if there is room.',
  'too-much':
    'Stick the weights near the middle of the rim’s width, or share them between both sides.',
};

/**
 * Couple unbalance that a correction away from the plane of the centre of mass adds: U·z, g·mm²,
 * against (U_per/2)·L, the couple of a permissible unbalance shared by two planes L apart and
 * opposite. Source: two-plane allocation of ISO 21940-11; definitions of ISO 21940-2.
 */
export function addedCouple(input: CoupleInput): BalanceOutcome<AddedCouple> {
  const bad = rejectNumbers({
    correctionGmm: [input.correctionGmm, NOT_NEGATIVE],
    axialDistanceMm: [input.axialDistanceMm, SIGNED],
    permissibleGmm: [input.permissibleGmm, POSITIVE],
    planeSpacingMm: [input.planeSpacingMm, POSITIVE],
  });
  if (bad) return bad;
  const coupleGmm2 = input.correctionGmm * Math.abs(input.axialDistanceMm);
  const permissibleGmm2 = (input.permissibleGmm / 2) * input.planeSpacingMm;
  const share = coupleGmm2 / permissibleGmm2;
  const finding = share <= SLIGHT_SHARE ? 'slight' : share <= 1 ? 'noticeable' : 'too-much';
  return succeeded({ coupleGmm2, permissibleGmm2, share, finding, advice: ADVICE[finding] });
}
