import { LEAST_WEIGHT, type BinVerdicts } from './planeSeries.ts';
import type { SmoothedMotion } from './rockingSmoother.ts';

/** Three freedoms exceed this squared distance once in a thousand times. */
const FLAT_UP_TO_SQUARED = 16.3;
/**
 * Weight that a wild bin keeps: its pull is nothing, yet it is still looked at in the next round
 * and can come back.
 */
const WILD_WEIGHT = 1e-5;
/** Change of a bin's weight that is worth a second search, no unit. */
const WEIGHT_CHANGE = 0.2;
/** Twice the logarithm of the odds against a knock in one bin: one in ten seconds, a hundred bins. */
export const KNOCK_ODDS = 2 * Math.log(100);
/** Bins on either side among which only one knock, the likeliest, is believed at a time. */
const ONE_KNOCK_WITHIN = 3;
/**
 * Share of the squared distance of the bins on either side that a jump has to explain. One wild bin
 * is a jump there and two back; a single jump explains little of it.
 */
const JUMP_EXPLAINS = 0.8;

/** Median of χ² with three freedoms. */
const ORDINARY_SQUARED = 2.366;

/**
 * Squared distance of each bin from the motion, in units of its noise before it was weighed down; where
 * half of all bins stand off further than their noise says, in units of what is ordinary among them:
 * not most of a sweep is wild, it is the noise that was told too small.
 */
export function plainDistance(
  { distance }: SmoothedMotion,
  { weight }: BinVerdicts,
  agreement: Float64Array,
): Float64Array {
  const plain = distance.map((d, b) =>
    weight[b] > LEAST_WEIGHT ? (d / weight[b]) * agreement[b] : 0,
  );
  const seen = plain.filter((d) => d > 0).sort();
  const ordinary = Math.max(1, (seen[seen.length >> 1] ?? 0) / ORDINARY_SQUARED);
  return plain.map((d) => d / ordinary);
}

/**
 * Weights of bins by their distance from the smoothed motion: full up to the limit, then falling
 * with its fourth power, so that what is far away has no pull at all on motion or tilt.
 *
 * @param agreement weight of each bin by itself, 0 to 1.
 */
export function weighBins(
  distance: Float64Array,
  { weight }: BinVerdicts,
  agreement: Float64Array,
): Float64Array {
  return agreement.map((a, b) => {
    if (weight[b] <= LEAST_WEIGHT) return weight[b];
    if (distance[b] <= FLAT_UP_TO_SQUARED) return a;
    return a * Math.max(WILD_WEIGHT, (FLAT_UP_TO_SQUARED / distance[b]) ** 2);
  });
}

export function verdictsChanged(before: BinVerdicts, after: BinVerdicts): boolean {
  return after.weight.some(
    (w, b) =>
      Math.abs(w - before.weight[b]) > WEIGHT_CHANGE || after.knocked[b] !== before.knocked[b],
  );
}

/**
 * Bins before which the wheel was knocked, beside those known: where a jump of the speed beats the
 * odds against it and its neighbours, and explains the bins on either side of it, which stand off
 * at a knock as a wild one does.
 */
export function newKnocks(
  { jump, knockGain }: SmoothedMotion,
  distance: Float64Array,
  known: Uint8Array,
  odds: number,
): number[] {
  const out: number[] = [];
  knockGain.forEach((gain, b) => {
    if (b === 0 || known[b] === 1 || !(gain > odds)) return;
    const end = Math.min(b + ONE_KNOCK_WITHIN + 1, knockGain.length);
    for (let j = Math.max(1, b - ONE_KNOCK_WITHIN); j < end; j++) {
      if (known[j] !== 1 && knockGain[j] > gain) return;
    }
    if (jump[b] >= JUMP_EXPLAINS * Math.max(distance[b - 1], distance[b])) out.push(b);
  });
  return out;
}
