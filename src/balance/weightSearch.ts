import type { FreeWay } from './freeArcs.ts';
import type { Load } from './weightStock.ts';

/** A load at an angle of the grid, counted from the light spot clockwise. */
export interface Placed {
  readonly load: Load;
  readonly step: number;
}

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
  readonly maxPlaces: 1 | 2;
}

/**
 * Exact search over at most two places. Levels are tried in order of pieces, then places; each is
 * searched only for what leaves less than all levels before it. The first level that leaves no more
 * than `sameGmm` ends it; where none does, the first one within `sameGmm` of the least wins.
 */
export function searchPlaces(space: SearchSpace): Found {
  const tables = tablesOf(space);
  const better: Found[] = [{ placed: [], residualGmm: space.wantedGmm }];
  const most = tables.groups.length - 1;
  for (let pieces = 1; pieces <= most * space.maxPlaces; pieces += 1) {
    for (const search of [bestSingle, bestPair].slice(0, space.maxPlaces)) {
      const least = better.at(-1)!.residualGmm;
      if (least <= space.sameGmm) return better.at(-1)!;
      const found = search(space, tables, pieces, least);
      if (found) better.push(found);
    }
  }
  const least = better.at(-1)!.residualGmm;
  const limit = least <= space.sameGmm ? space.sameGmm : least + space.sameGmm;
  return better.find((found) => found.residualGmm <= limit)!;
}

interface Tables {
  readonly cos: Float64Array;
  readonly sin: Float64Array;
  /** Loads by their number of pieces, each sorted by moment. */
  readonly groups: readonly (readonly Load[])[];
  readonly moments: readonly Float64Array[];
}

function tablesOf({ count, loads }: SearchSpace): Tables {
  const angle = (_: unknown, i: number): number => (i * 2 * Math.PI) / count;
  const most = loads.reduce((a, load) => Math.max(a, load.pieces), 0);
  const groups = Array.from({ length: most + 1 }, (_, pieces) =>
    loads.filter((load) => load.pieces === pieces).sort((a, b) => a.momentGmm - b.momentGmm),
  );
  return {
    cos: Float64Array.from({ length: count }, (_, i) => Math.cos(angle(_, i))),
    sin: Float64Array.from({ length: count }, (_, i) => Math.sin(angle(_, i))),
    groups,
    moments: groups.map((group) => Float64Array.from(group, (load) => load.momentGmm)),
  };
}

const fits = (free: FreeWay, load: Load, step: number): boolean =>
  free.aheadDeg[step]! >= load.aheadDeg && free.behindDeg[step]! >= load.behindDeg;

function bestSingle(
  space: SearchSpace,
  tables: Tables,
  pieces: number,
  below: number,
): Found | null {
  let found: Found | null = null;
  for (const load of tables.groups[pieces] ?? []) {
    const best = bestStep(space, tables, load, space.wantedGmm, 0, found?.residualGmm ?? below);
    if (best) found = { placed: [{ load, step: best.step }], residualGmm: best.residualGmm };
  }
  return found;
}

function bestPair(space: SearchSpace, tables: Tables, pieces: number, below: number): Found | null {
  let found: Found | null = null;
  for (let more = Math.ceil(pieces / 2); more < pieces; more += 1) {
    for (const load of tables.groups[more] ?? []) {
      const limit: number = found?.residualGmm ?? below;
      found = bestPartner(space, tables, load, pieces - more, limit) ?? found;
    }
  }
  return found;
}

/**
 * For one load at every angle that it fits: the pull still wanted is v, and a partner of moment m
 * leaves at least ||v| − m|, so only those within the limit are tried.
 */
function bestPartner(
  space: SearchSpace,
  { cos, sin, groups, moments }: Tables,
  load: Load,
  pieces: number,
  below: number,
): Found | null {
  const partners = groups[pieces]!;
  const partnerMoments = moments[pieces]!;
  if (partners.length === 0) return null;
  const free = space.free[load.ring]!;
  const tables: Tables = { cos, sin, groups, moments };
  let found: Found | null = null;
  let limit = below;
  for (let step = 0; step < space.count; step += 1) {
    const vx = space.wantedGmm - load.momentGmm * cos[step]!;
    const vy = -load.momentGmm * sin[step]!;
    const length = Math.sqrt(vx * vx + vy * vy);
    if (length > partnerMoments.at(-1)! + limit || length < partnerMoments[0]! - limit) continue;
    if (!fits(free, load, step)) continue;
    for (let i = firstAbove(partnerMoments, length - limit); i < partners.length; i += 1) {
      const partner = partners[i]!;
      if (partner.momentGmm > length + limit) break;
      if (!areOnHand(space.onHand, load, partner)) continue;
      const best = bestStep(space, tables, partner, vx, vy, limit, { load, step });
      if (!best) continue;
      limit = best.residualGmm;
      found = {
        placed: [
          { load, step },
          { load: partner, step: best.step },
        ],
        residualGmm: limit,
      };
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

/**
 * The angle at which a load leaves the least of (vx, vy), if that is less than `below`: outward from
 * the direction wanted on both sides, as far as anything better can lie.
 */
function bestStep(
  space: SearchSpace,
  { cos, sin }: Tables,
  load: Load,
  vx: number,
  vy: number,
  below: number,
  beside?: Placed,
): { readonly step: number; readonly residualGmm: number } | null {
  const { count } = space;
  const m = load.momentGmm;
  const free = space.free[load.ring]!;
  const middle = Math.floor((Math.atan2(vy, vx) / (2 * Math.PI)) * count);
  let bestStepFound = -1;
  let bestSquared = below * below;
  for (const side of [-1, 1]) {
    for (let k = 0; k <= count / 2; k += 1) {
      const step = (((middle + (side < 0 ? -k : 1 + k)) % count) + count) % count;
      const dx = vx - m * cos[step]!;
      const dy = vy - m * sin[step]!;
      const squared = dx * dx + dy * dy;
      if (squared >= bestSquared) break;
      const isClear = fits(free, load, step) && (!beside || standApart(space, beside, load, step));
      if (!isClear) continue;
      bestStepFound = step;
      bestSquared = squared;
      break;
    }
  }
  return bestStepFound < 0 ? null : { step: bestStepFound, residualGmm: Math.sqrt(bestSquared) };
}

/** Two loads on one ring may touch but not lie on each other. */
export function standApart(
  { count }: Pick<SearchSpace, 'count'>,
  first: Placed,
  load: Load,
  step: number,
): boolean {
  if (first.load.ring !== load.ring) return true;
  const onwardDeg = ((((step - first.step) % count) + count) % count) * (360 / count);
  return (
    onwardDeg >= first.load.aheadDeg + load.behindDeg &&
    360 - onwardDeg >= first.load.behindDeg + load.aheadDeg
  );
}
