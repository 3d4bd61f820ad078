import type { WheelRecord } from '../contract/logbook.ts';
import { tyreDimensions } from '../balance/tyreDimensions.ts';
import { tyreSizeFromText } from '../balance/tyreSize.ts';
import type { BalanceFailureCode } from '../balance/failures.ts';

/** A wheel with the size printed on its tyre, and why that size could not be read. */
export interface TyreProposal {
  readonly wheel: WheelRecord;
  readonly problem: BalanceFailureCode | null;
}

/**
 * Takes the size over, and proposes the radii that go with it where they are still assumed: what
 * was entered or measured stays.
 */
export function withTyre(wheel: WheelRecord, tyre: string): TyreProposal {
  const named = { ...wheel, tyre };
  if (tyre.trim() === '') return { wheel: named, problem: null };
  const size = tyreSizeFromText(tyre);
  if (!size.ok) return { wheel: named, problem: size.failure.code };
  const dimensions = tyreDimensions(size.value);
  if (!dimensions.ok) return { wheel: named, problem: dimensions.failure.code };
  const { edgeRadius, adhesiveWeightRadius, clipOnWeightRadius } = dimensions.value;
  const proposed = (valueMm: number) => ({
    value: Math.round(valueMm),
    origin: 'assumed' as const,
  });
  const { edgeRadiusMm, rings } = wheel;
  return {
    wheel: {
      ...named,
      edgeRadiusMm: edgeRadiusMm.origin === 'assumed' ? proposed(edgeRadius.valueMm) : edgeRadiusMm,
      rings: rings.map((ring) => {
        if (ring.radiusMm.origin !== 'assumed') return ring;
        const isClipOn = !ring.accepts.includes('adhesive');
        const { valueMm } = isClipOn ? clipOnWeightRadius : adhesiveWeightRadius;
        return { ...ring, radiusMm: proposed(valueMm) };
      }),
    },
    problem: null,
  };
}
