import type { StandRecord, WheelRecord } from '../contract/logbook.ts';
import type { AcceptedReading, Weight } from '../contract/reading.ts';
import { failed, succeeded, type Outcome } from '../contract/outcome.ts';
import { chooseWeights, type WeightChoice, type WeightPlace } from '../balance/weightChoice.ts';
import type { WeightRing } from '../balance/weightStock.ts';
import { vectorAmount, vectorAngleDeg, vectorFromPolar } from '../quantities/vector.ts';
import { kindsOnHand } from './kindsOnHand.ts';

/** What is to be stuck on for one reading, and what it will leave. */
export interface WeightPlan {
  /** Empty where nothing that is on hand would make it better. */
  readonly places: readonly WeightPlace[];
  /** Piece by piece, each where its middle sits. */
  readonly pieces: readonly Weight[];
  readonly leftGmm: number;
  readonly leftHeavyDeg: number;
}

export interface PlanWishes {
  /** All in one place, or split over two where that leaves less. */
  readonly places: 1 | 2;
  /** Index of the ring to use; null for whichever leaves least. */
  readonly ring: number | null;
}

export type PlanTrouble = 'place-unknown' | 'stock-empty' | 'stock-too-large' | 'input-invalid';

/** What a plan needs to know of the sweep. */
export type PlanReading = Pick<AcceptedReading, 'unbalance'>;

/** What a plan needs to know of the wheel. */
export type PlanWheel = Pick<WheelRecord, 'rings' | 'forbiddenArcs' | 'weightStepG'>;

/** More pieces than this at one place make a long strip; fewer are tried where that takes too long. */
const PIECES_AT_ONE_PLACE = [12, 8, 5] as const;

/**
 * The weights for a reading from the stock on hand, on the wheel's rings and off its forbidden
 * arcs (`chooseWeights`). Nothing is proposed where the least that can be had leaves no less than
 * doing nothing, nor where no side is clearly heavy: a weight there would be a guess.
 */
export function weightPlan(
  reading: PlanReading,
  wheel: PlanWheel,
  stand: Pick<StandRecord, 'stock'>,
  wishes: PlanWishes,
): Outcome<WeightPlan, PlanTrouble> {
  const { amountGmm, heavySpotDeg, ci95 } = reading.unbalance;
  if (ci95.angleDeg === null) return failed('place-unknown', {});
  const unbalanceGmm = vectorFromPolar(amountGmm, heavySpotDeg);
  const rings = wheel.rings.filter((_, i) => wishes.ring === null || i === wishes.ring);
  const kinds = kindsOnHand(stand, wheel).filter((kind) =>
    rings.some((ring) => ring.accepts.includes(kind.fitting)),
  );
  for (const maxPieces of PIECES_AT_ONE_PLACE) {
    const chosen = chooseWeights({
      unbalanceGmm,
      kinds,
      rings: rings.map(({ radiusMm, accepts }): WeightRing => ({
        radiusMm: radiusMm.value,
        accepts,
        forbidden: wheel.forbiddenArcs,
        maxPieces,
      })),
      places: wishes.places,
    });
    if (chosen.ok) return succeeded(planOf(chosen.value, reading));
    if (chosen.failure.code !== 'stock-too-large') {
      const code = chosen.failure.code === 'stock-empty' ? 'stock-empty' : 'input-invalid';
      return failed(code, chosen.failure.evidence);
    }
  }
  return failed('stock-too-large', { kinds: kinds.length });
}

/** One place is easier for a hand than two: it is enough where it leaves less than half a step. */
export function simplestWishes(
  reading: PlanReading,
  wheel: PlanWheel,
  stand: Pick<StandRecord, 'stock'>,
): PlanWishes {
  const inOne = { places: 1, ring: null } as const;
  const plan = weightPlan(reading, wheel, stand, inOne);
  const enoughGmm = (wheel.weightStepG / 2) * wheel.rings[0]!.radiusMm.value;
  return plan.ok && plan.value.leftGmm <= enoughGmm ? inOne : { places: 2, ring: null };
}

/** What is proposed before the person has wished for anything: the same on every screen. */
export function proposedPlan(
  reading: PlanReading,
  wheel: PlanWheel,
  stand: Pick<StandRecord, 'stock'>,
): Outcome<WeightPlan, PlanTrouble> {
  return weightPlan(reading, wheel, stand, simplestWishes(reading, wheel, stand));
}

function planOf(choice: WeightChoice, reading: PlanReading): WeightPlan {
  const { amountGmm, heavySpotDeg } = reading.unbalance;
  if (choice.residualAmountGmm >= amountGmm) {
    return { places: [], pieces: [], leftGmm: amountGmm, leftHeavyDeg: heavySpotDeg };
  }
  return {
    places: choice.places,
    pieces: choice.weights,
    leftGmm: vectorAmount(choice.residualGmm),
    leftHeavyDeg: vectorAngleDeg(choice.residualGmm),
  };
}

/** One weight a place: what a hand holds when it is led to the spot. */
export function weightsByPlace(plan: WeightPlan): readonly Weight[] {
  return plan.places.map(({ massG, radiusMm, angleDeg }) => ({ massG, radiusMm, angleDeg }));
}
