import type { StandRecord, WheelRecord } from '../contract/logbook.ts';
import type { AcceptedReading, Weight } from '../contract/reading.ts';
import { failed, succeeded, type Outcome } from '../contract/outcome.ts';
import { chooseWeights, type WeightChoice, type WeightPlace } from '../balance/weightChoice.ts';
import type { WeightKind, WeightRing } from '../balance/weightStock.ts';
import { vectorAmount, vectorAngleDeg, vectorFromPolar } from '../quantities/vector.ts';

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

export type PlanTrouble = 'stock-empty' | 'stock-too-large' | 'input-invalid';

/** More pieces than this at one place make a long strip; fewer are tried where that takes too long. */
const PIECES_AT_ONE_PLACE = [12, 8, 5] as const;

/**
 * The weights for a reading from the stock on hand, on the wheel's rings and off its forbidden
 * arcs (`chooseWeights`). Nothing is proposed where the least that can be had leaves no less than
 * doing nothing.
 */
export function weightPlan(
  reading: AcceptedReading,
  wheel: Pick<WheelRecord, 'rings' | 'forbiddenArcs'>,
  stand: Pick<StandRecord, 'stock'>,
  wishes: PlanWishes,
): Outcome<WeightPlan, PlanTrouble> {
  const { amountGmm, heavySpotDeg } = reading.unbalance;
  const unbalanceGmm = vectorFromPolar(amountGmm, heavySpotDeg);
  const rings = wheel.rings.filter((_, i) => wishes.ring === null || i === wishes.ring);
  const kinds = stand.stock.filter((kind) =>
    rings.some((ring) => ring.accepts.includes(kind.fitting)),
  ) as WeightKind[];
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

function planOf(choice: WeightChoice, reading: AcceptedReading): WeightPlan {
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
