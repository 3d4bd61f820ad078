import { failed, succeeded } from '../contract/outcome.ts';
import type { Weight } from '../contract/reading.ts';
import { wrapTurnDeg } from '../quantities/angle.ts';
import {
  addVectors,
  subtractVectors,
  vectorAmount,
  vectorAngleDeg,
  vectorFromPolar,
  ZERO_VECTOR,
  type PlaneVector,
} from '../quantities/vector.ts';
import type { BalanceOutcome } from './failures.ts';
import { freeWay } from './freeArcs.ts';
import { NOT_NEGATIVE, rejectNumbers, rejectVectors, type NumberRange } from './inputs.ts';
import { weightVectorGmm } from './response.ts';
import { layStrip } from './stripArc.ts';
import type { Placed } from './weightPairs.ts';
import { searchPlaces, type Found } from './weightSearch.ts';
import {
  allLoads,
  piecesOf,
  rejectStock,
  type WeightKind,
  type WeightRing,
  type WheelArc,
} from './weightStock.ts';

export interface WeightChoiceInput {
  /** U, pointing at the heavy spot, g·mm. */
  readonly unbalanceGmm: PlaneVector;
  readonly kinds: readonly WeightKind[];
  readonly rings: readonly WeightRing[];
  /** Old weights that come off first: their mass counts negative. */
  readonly takenOff?: readonly Weight[];
  /** What is left counts as the same within this, g at the smallest ring; default half a gram. */
  readonly sameG?: number;
  /**
   * Two places that work against one another are proposed only where all others leave more by this,
   * g at the smallest ring; default 5.
   */
  readonly enoughG?: number;
  /** Grid on which places are tried, anchored at the light spot; default 1°. */
  readonly angleStepDeg?: number;
  /** 1 where the person wants all at one place; default 2, more only where two do not suffice. */
  readonly places?: 1 | 2;
}

/** Pieces stuck on side by side at one place. */
export interface WeightPlace {
  readonly ring: number;
  readonly radiusMm: number;
  /** Where the place pulls: put the strip so that this is its point of balance. */
  readonly angleDeg: number;
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly pieces: readonly WeightKind[];
  readonly massG: number;
  /** Pull of the strip as an arc, g·mm: less than mass·radius. */
  readonly momentGmm: number;
}

export interface WeightChoice {
  readonly places: readonly WeightPlace[];
  /** Piece by piece, each where its middle sits; weights taken off first, with negative mass. */
  readonly weights: readonly Weight[];
  readonly pieceCount: number;
  readonly residualGmm: PlaneVector;
  readonly residualAmountGmm: number;
  /** True for the best choice of up to two places; false after places beyond two were added. */
  readonly isExact: boolean;
}

/** No stand reads finer than half a gram: two choices within it leave the same. */
const SAME_RESIDUAL_G = 0.5;
/**
 * Common practice: a wheel is balanced within about one weight step, 5 g or a quarter ounce. To get
 * nearer by weights that undo one another is not worth their mass.
 */
const ENOUGH_LEFT_G = 5;
/** Nobody sticks a weight truer than a degree (3 mm on the rim). */
const ANGLE_STEP_DEG = 1;
const STEP_DEG: NumberRange = { low: 0.1, high: 90 };
/** Rounds of two places each, where the first two cannot hold enough. */
const ROUNDS_MAX = 3;

/**
 * Weights from a stock on rings with forbidden arcs: the fewest pieces at the fewest places that
 * leave no more than `sameG`; where that cannot be had, those within `sameG` of the least that any
 * two places can leave, fewest pieces first. Two places that work against one another are left out
 * unless they leave less by more than `enoughG`. Exact on the grid for up to two places; where two
 * places cannot hold enough, further ones are added for what is left (then `isExact` is false).
 */
export function chooseWeights(input: WeightChoiceInput): BalanceOutcome<WeightChoice> {
  const { kinds, rings } = input;
  const sameG = input.sameG ?? SAME_RESIDUAL_G;
  const enoughG = input.enoughG ?? ENOUGH_LEFT_G;
  const angleStepDeg = input.angleStepDeg ?? ANGLE_STEP_DEG;
  const bad =
    rejectVectors({ unbalanceGmm: input.unbalanceGmm }) ??
    rejectNumbers({
      sameG: [sameG, NOT_NEGATIVE],
      enoughG: [enoughG, NOT_NEGATIVE],
      angleStepDeg: [angleStepDeg, STEP_DEG],
    }) ??
    rejectStock(kinds, rings);
  if (bad) return bad;
  const old = weightVectorGmm(input.takenOff ?? []);
  if (!old.ok) return old;
  const leastRadiusMm = Math.min(...rings.map((ring) => ring.radiusMm));
  const sameGmm = sameG * leastRadiusMm;
  const enoughGmm = enoughG * leastRadiusMm;
  const settings = {
    count: Math.round(360 / angleStepDeg),
    sameGmm,
    enoughGmm,
    maxPlaces: input.places ?? 2,
  } as const;
  const rounds: WeightPlace[][] = [];
  let stock: Stock = { kinds, rings };
  let left = subtractVectors(input.unbalanceGmm, old.value);
  do {
    // What further places pull is a small part: two against one another are given up for one.
    const elsePlaces = rounds.length === 0 ? 2 : 1;
    const round = onePass(left, stock, { ...settings, elsePlaces });
    if (!round) return failed('stock-too-large', { kinds: kinds.length, rings: rings.length });
    const next = addVectors(left, sumOf(round));
    const gainGmm = vectorAmount(left) - vectorAmount(next);
    const isFurther = rounds.length > 0;
    if (isFurther && gainGmm <= enoughGmm + sameGmm && undoes([...rounds, round].flat())) break;
    rounds.push(round);
    left = next;
    stock = withoutUsed(stock, round);
  } while (
    settings.maxPlaces === 2 &&
    rounds.at(-1)!.length === 2 &&
    vectorAmount(left) > Math.max(sameGmm, enoughGmm, worthwhileGmm(stock)) &&
    rounds.length < ROUNDS_MAX
  );
  const places = rounds.flat();
  return succeeded({
    places,
    weights: [...(input.takenOff ?? []).map(negated), ...places.flatMap(pieceWeights)],
    pieceCount: places.reduce((sum, place) => sum + place.pieces.length, 0),
    residualGmm: left,
    residualAmountGmm: vectorAmount(left),
    isExact: places.length <= 2,
  });
}

interface Stock {
  readonly kinds: readonly WeightKind[];
  readonly rings: readonly WeightRing[];
}

/** A further place is worth it only above half the smallest piece, g·mm. */
function worthwhileGmm({ kinds, rings }: Stock): number {
  const masses = kinds.map((kind) => kind.massG);
  return (Math.min(...masses) * Math.min(...rings.map((ring) => ring.radiusMm))) / 2;
}

interface Settings {
  readonly count: number;
  readonly sameGmm: number;
  readonly enoughGmm: number;
  readonly maxPlaces: 1 | 2;
  readonly elsePlaces: 1 | 2;
}

/** The best one or two places for what is left; null when there are too many loads. */
function onePass(left: PlaneVector, stock: Stock, settings: Settings): WeightPlace[] | null {
  const { kinds, rings } = stock;
  const loads = allLoads(kinds, rings);
  if (!loads) return null;
  const lightSpotDeg = vectorAngleDeg(left) + 180;
  const found: Found = searchPlaces({
    ...settings,
    wantedGmm: vectorAmount(left),
    loads,
    free: rings.map((ring) => freeWay(ring.forbidden, lightSpotDeg, settings.count)),
    onHand: kinds.map((kind) => kind.onHand ?? Infinity),
  });
  return found.placed.map((placed) => placeOf(placed, stock, lightSpotDeg, settings.count));
}

function placeOf(
  { load, step }: Placed,
  { kinds, rings }: Stock,
  lightSpotDeg: number,
  count: number,
): WeightPlace {
  const pieces = piecesOf(kinds, load.counts);
  const angleDeg = wrapTurnDeg(lightSpotDeg + (step * 360) / count);
  return {
    ring: load.ring,
    radiusMm: rings[load.ring]!.radiusMm,
    angleDeg,
    fromDeg: wrapTurnDeg(angleDeg - load.behindDeg),
    toDeg: wrapTurnDeg(angleDeg + load.aheadDeg),
    pieces,
    massG: pieces.reduce((sum, piece) => sum + piece.massG, 0),
    momentGmm: load.momentGmm,
  };
}

function sumOf(places: readonly WeightPlace[]): PlaneVector {
  return places
    .map((place) => vectorFromPolar(place.momentGmm, place.angleDeg))
    .reduce(addVectors, ZERO_VECTOR);
}

/** Whether most of what is stuck on goes into undoing the rest of it. */
function undoes(places: readonly WeightPlace[]): boolean {
  const stuckGmm = places.reduce((sum, { momentGmm }) => sum + momentGmm, 0);
  return stuckGmm > 2 * vectorAmount(sumOf(places));
}

/** The stock less what is used, with the places taken forbidden. */
function withoutUsed({ kinds, rings }: Stock, places: readonly WeightPlace[]): Stock {
  const used = (kind: WeightKind): number =>
    places.flatMap((place) => place.pieces).filter((piece) => piece === kind).length;
  const taken = (ring: number): WheelArc[] =>
    places.filter((place) => place.ring === ring).map(({ fromDeg, toDeg }) => ({ fromDeg, toDeg }));
  return {
    kinds: kinds.map((kind) =>
      kind.onHand === undefined ? kind : { ...kind, onHand: kind.onHand - used(kind) },
    ),
    rings: rings.map((ring, i) => ({ ...ring, forbidden: [...ring.forbidden, ...taken(i)] })),
  };
}

function negated(weight: Weight): Weight {
  return { ...weight, massG: -weight.massG };
}

function pieceWeights(place: WeightPlace): Weight[] {
  const { offsetsDeg } = layStrip(place.pieces, place.radiusMm);
  return place.pieces.map(({ massG }, i) => ({
    massG,
    radiusMm: place.radiusMm,
    angleDeg: wrapTurnDeg(place.angleDeg + offsetsDeg[i]!),
  }));
}
