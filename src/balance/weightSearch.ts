import type { FreeWay } from './freeArcs.ts';
import type { Load } from './weightStock.ts';
import { isOpposed, mayPair, ROUNDING_GMM, type PairRule, type Placed } from './weightPairs.ts';
import { cellOf, fitsAt, weightTables, type Fitted, type Tables } from './weightTables.ts';

export interface Found {
  readonly placed: readonly Placed[];
  readonly residualGmm: number;
}

export interface SearchSpace {
  /** Pull wanted along step 0 of the grid, g·mm. */
  readonly wantedGmm: number;
  /** Steps of the grid in a turn. */
  readonly count: number;
  readonly loads: readonly Load[];
  /** One for each ring. */
  readonly free: readonly FreeWay[];
  /** How many there are of each kind. */
  readonly onHand: readonly number[];
  /** What is left counts as the same within this, g·mm. */
  readonly sameGmm: number;
  /** Places that work against one another must leave less than others by more than this, g·mm. */
  readonly enoughGmm: number;
  readonly maxPlaces: 1 | 2;
  /** Places to look at where the best two work against one another. */
  readonly elsePlaces: 1 | 2;
}

/**
 * Exact search over at most two places. Where the best two would work against one another
 * (`goTogether`) they are taken only if all others leave more by `enoughGmm`; and then as little of
 * them as the same number of pieces allows.
 */
export function searchPlaces(space: SearchSpace): Found {
  const tables = weightTables(space.loads, space.free, space.count);
  const best = fewestPieces(space, tables, ANY_PAIR);
  if (!isOpposed(best.found, tables)) return best.found;
  const enough = best.found.residualGmm + Math.max(space.sameGmm, space.enoughGmm);
  const others = { ...space, maxPlaces: space.elsePlaces };
  const { found } = fewestPieces(others, tables, TOGETHER, enough + ROUNDING_GMM);
  return found.residualGmm > enough ? lightest(space, tables, best) : found;
}

const TOGETHER: PairRule = { mayOppose: false, belowGmm: Infinity };
const ANY_PAIR: PairRule = { mayOppose: true, belowGmm: Infinity };

interface Fewest {
  readonly found: Found;
  /** What counts as left the same, g·mm. */
  readonly limitGmm: number;
}

/** Of a pair the one with the least to stick on, of as many pieces and within the same limit. */
function lightest(space: SearchSpace, tables: Tables, { found, limitGmm }: Fewest): Found {
  let light = found;
  while (light.placed.length === 2) {
    const [a, b] = light.placed as [Placed, Placed];
    const belowGmm = a.load.momentGmm + b.load.momentGmm - ROUNDING_GMM;
    const rule: PairRule = { mayOppose: true, belowGmm };
    const pieces = a.load.pieces + b.load.pieces;
    const lighter = bestPair(space, tables, pieces, limitGmm + ROUNDING_GMM, rule);
    if (!lighter) break;
    light = lighter;
  }
  return light;
}

/**
 * First the least that any choice leaves, many pieces first, ended early by one that leaves no more
 * than `sameGmm`; that makes the limit: `sameGmm`, or the least plus it. Then the fewest pieces, and
 * of those the fewest places, that keep within the limit, and of those again the least: with the
 * limit known, nearly everything is cut off at once. Of choices that leave `belowGmm` or more none
 * but doing nothing is looked at.
 */
function fewestPieces(
  space: SearchSpace,
  tables: Tables,
  rule: PairRule,
  belowGmm = Infinity,
): Fewest {
  const { sameGmm, wantedGmm } = space;
  const levels = levelsOf(space.maxPlaces, tables.groups.length - 1);
  let least: Found = { placed: [], residualGmm: wantedGmm };
  let leastLevel = -1;
  for (let i = levels.length - 1; i >= 0 && least.residualGmm > sameGmm; i -= 1) {
    const { search, pieces } = levels[i]!;
    const below = Math.min(least.residualGmm, belowGmm);
    const found = search(space, tables, pieces, below, rule);
    if (found) {
      least = found;
      leastLevel = i;
    }
  }
  const limitGmm = least.residualGmm <= sameGmm ? sameGmm : least.residualGmm + sameGmm;
  if (wantedGmm <= limitGmm) return { found: { placed: [], residualGmm: wantedGmm }, limitGmm };
  for (const { search, pieces } of levels.slice(0, leastLevel)) {
    const found = search(space, tables, pieces, limitGmm + ROUNDING_GMM, rule);
    if (found) return { found, limitGmm };
  }
  return { found: least, limitGmm };
}

interface Level {
  readonly pieces: number;
  readonly search: Search;
}

/** Fewest pieces first, then fewest places. */
function levelsOf(maxPlaces: 1 | 2, mostAtOnePlace: number): Level[] {
  const single = Array.from({ length: mostAtOnePlace }, (_, i) => ({
    pieces: i + 1,
    search: bestSingle,
  }));
  const pairs = Array.from({ length: 2 * mostAtOnePlace - 1 }, (_, i) => ({
    pieces: i + 2,
    search: bestPair,
  }));
  return maxPlaces === 1 ? single : [...single, ...pairs].sort((p, q) => p.pieces - q.pieces);
}

/** What is still wanted, g·mm along and across step 0, and the cell of its direction. */
interface Pull {
  readonly vx: number;
  readonly vy: number;
  readonly cell: number;
}

type Search = (
  space: SearchSpace,
  tables: Tables,
  pieces: number,
  below: number,
  rule: PairRule,
) => Found | null;

const bestSingle: Search = (space, tables, pieces, below) => {
  let found: Found | null = null;
  for (const fitted of tables.groups[pieces]!.fitted) {
    const limit: number = found?.residualGmm ?? below;
    const wanted: Pull = { vx: space.wantedGmm, vy: 0, cell: 0 };
    const best = bestStep(space.count, tables, fitted, wanted, limit * limit);
    if (best < 0) continue;
    const residualGmm = Math.sqrt(leftSquared(tables, fitted.load, best, wanted));
    found = { placed: [{ load: fitted.load, step: best }], residualGmm };
  }
  return found;
};

const bestPair: Search = (space, tables, pieces, below, rule) => {
  let found: Found | null = null;
  for (let more = Math.ceil(pieces / 2); more < pieces; more += 1) {
    for (const { load } of tables.groups[more]?.fitted ?? []) {
      const limit: number = found?.residualGmm ?? below;
      found = bestPartner(space, tables, load, pieces - more, limit, rule) ?? found;
    }
  }
  return found;
};

/**
 * For one load at every angle that it fits: the pull still wanted is v, and a partner of moment m
 * whose nearest free place is δ off leaves at least √(|v|² + m² − 2|v|·m·cos δ), so only those
 * within the limit are tried, the nearest in moment first.
 */
function bestPartner(
  space: SearchSpace,
  tables: Tables,
  load: Load,
  pieces: number,
  below: number,
  rule: PairRule,
): Found | null {
  const { fitted, moments, offCosine } = tables.groups[pieces]!;
  // Never empty where a larger group is not: the shorter part of a load that fits, fits too.
  const leastMoment = moments[0]!;
  const mostMoment = moments.at(-1)!;
  if (space.wantedGmm - load.momentGmm - mostMoment >= below) return null;
  const free = space.free[load.ring]!;
  let found: Found | null = null;
  let limit = below;
  for (const step of tables.outward) {
    const vx = space.wantedGmm - load.momentGmm * tables.cos[step]!;
    const vy = -load.momentGmm * tables.sin[step]!;
    const length = Math.sqrt(vx * vx + vy * vy);
    if (length - mostMoment >= limit || leastMoment - length >= limit) continue;
    if (!fitsAt(free, load, step)) continue;
    const cell = cellOf(space.count, vx, vy);
    const aligned = length * offCosine[cell]!;
    const nearest = Math.min(Math.max(aligned, leastMoment), mostMoment);
    if (length * length + nearest * (nearest - 2 * aligned) >= limit * limit) continue;
    const pull: Pull = { vx, vy, cell };
    const beside: Placed = { load, step };
    const tryPartner = (partner: Fitted): void => {
      if (load.momentGmm + partner.load.momentGmm >= rule.belowGmm) return;
      const best = bestStep(space.count, tables, partner, pull, limit * limit, { beside, rule });
      if (best < 0 || !areOnHand(space.onHand, load, partner.load)) return;
      limit = Math.sqrt(leftSquared(tables, partner.load, best, pull));
      found = { placed: [beside, { load: partner.load, step: best }], residualGmm: limit };
    };
    const middle = firstAbove(moments, length);
    for (let i = middle; i < fitted.length && moments[i]! - length < limit; i += 1) {
      tryPartner(fitted[i]!);
    }
    for (let i = middle - 1; i >= 0 && length - moments[i]! < limit; i -= 1) {
      tryPartner(fitted[i]!);
    }
  }
  return found;
}

/** Index of the first moment ≥ value in a sorted list. */
function firstAbove(moments: Float64Array, value: number): number {
  let low = 0;
  let high = moments.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (moments[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

function areOnHand(onHand: readonly number[], a: Load, b: Load): boolean {
  return onHand.every((count, kind) => a.counts[kind]! + b.counts[kind]! <= count);
}

/** Square of what a load at a step leaves of a pull. */
function leftSquared({ cos, sin }: Tables, load: Load, step: number, { vx, vy }: Pull): number {
  const dx = vx - load.momentGmm * cos[step]!;
  const dy = vy - load.momentGmm * sin[step]!;
  return dx * dx + dy * dy;
}

/**
 * The step at which a load leaves the least of a pull, if its square is less than `below`, or −1:
 * outward from the direction wanted on both sides, as far as anything better can lie.
 */
function bestStep(
  count: number,
  tables: Tables,
  { load, below: backward, above: forward }: Fitted,
  pull: Pull,
  below: number,
  pair?: { readonly beside: Placed; readonly rule: PairRule },
): number {
  const { cell } = pull;
  let best = -1;
  let least = below;
  for (const isForward of [false, true]) {
    let step = isForward ? forward[cell]! : backward[cell]!;
    // Each turn of the loop goes to the next free step; half a turn away nothing gets better.
    for (let travelled = 0; travelled <= count / 2;) {
      const squared = leftSquared(tables, load, step, pull);
      if (squared >= least) break;
      if (!pair || mayPair(count, tables, pair, load, step)) {
        best = step;
        least = squared;
        break;
      }
      const next = isForward ? forward[step]! : backward[(step - 1 + count) % count]!;
      travelled += (isForward ? next - step + count : step - next + count) % count || count;
      step = next;
    }
  }
  return best;
}
