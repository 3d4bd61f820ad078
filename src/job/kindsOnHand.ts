import { COMMON_STOCK, type WeightKind } from '../balance/weightStock.ts';
import type { StandRecord, WheelRecord } from '../contract/logbook.ts';

/** Length along the rim for one gram, mm: that of the smallest common strip. */
const MM_PER_G = COMMON_STOCK[0]!.lengthMm / COMMON_STOCK[0]!.massG;

/**
 * The weights to choose from. As long as no stock was entered: pieces of the wheel's own weight step,
 * fixed the way its rings take them, so that whoever works in 5 g pieces is offered no others.
 */
export function kindsOnHand(
  { stock }: Pick<StandRecord, 'stock'>,
  { rings, weightStepG }: Pick<WheelRecord, 'rings' | 'weightStepG'>,
): readonly WeightKind[] {
  if (stock.length > 0) return stock as readonly WeightKind[];
  const fittings = new Set(rings.flatMap(({ accepts }) => accepts));
  return [...fittings].map((fitting) => ({
    label: `${weightStepG} g`,
    massG: weightStepG,
    lengthMm: weightStepG * MM_PER_G,
    fitting,
  }));
}
