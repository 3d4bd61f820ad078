import { failed } from '../contract/outcome.ts';
import { GRAMS_PER_OUNCE } from '../quantities/units.ts';
import type { BalanceFailed } from './failures.ts';
import {
  DIRECTION_DEG,
  NOT_NEGATIVE,
  POSITIVE,
  rejectNumbers,
  type NumberRange,
} from './inputs.ts';
import { layStrip, type Piece } from './stripArc.ts';

type Fitting = 'adhesive' | 'clip-on';

/** One kind of weight that the person owns. */
export interface WeightKind extends Piece {
  readonly label: string;
  readonly massG: number;
  /** Along the rim; 0 for one taken as a point. */
  readonly lengthMm: number;
  readonly fitting: Fitting;
  /** How many there are; left out: enough. */
  readonly onHand?: number;
}

/** From `fromDeg` clockwise to `toDeg`; a span of 360 or more is all round. */
export interface WheelArc {
  readonly fromDeg: number;
  readonly toDeg: number;
}

/** A circle of the rim on which weights may sit. */
export interface WeightRing {
  readonly radiusMm: number;
  readonly accepts: readonly Fitting[];
  /** Spokes, old weights, calliper clearance. */
  readonly forbidden: readonly WheelArc[];
  /** Most pieces at one place. */
  readonly maxPieces: number;
}

/** Usual sizes; lengths are those of common zinc strips (from memory), to be edited. */
export const COMMON_STOCK: readonly WeightKind[] = [
  { label: '5 g strip', massG: 5, lengthMm: 13, fitting: 'adhesive' },
  { label: '10 g strip', massG: 10, lengthMm: 19, fitting: 'adhesive' },
  { label: '¼ oz strip', massG: GRAMS_PER_OUNCE / 4, lengthMm: 15, fitting: 'adhesive' },
  { label: '15 g clip-on', massG: 15, lengthMm: 35, fitting: 'clip-on' },
  { label: '20 g clip-on', massG: 20, lengthMm: 42, fitting: 'clip-on' },
  { label: '30 g clip-on', massG: 30, lengthMm: 56, fitting: 'clip-on' },
];

/** Pieces that can sit at one place of one ring, as one load. */
export interface Load {
  readonly ring: number;
  /** Count of each kind of the stock. */
  readonly counts: readonly number[];
  readonly pieces: number;
  readonly momentGmm: number;
  readonly behindDeg: number;
  readonly aheadDeg: number;
}

/** Loads beyond this many take longer to try than a person waits. */
const LOADS_MAX = 5000;
/** More pieces than this at one place go round no rim. */
const PIECES: NumberRange = { low: 0, high: 60 };
/** A longer strip pulls against itself, degrees. */
const STRIP_MAX_DEG = 180;

/** Refuses stocks and rings with values that cannot be right, or with nothing in them. */
export function rejectStock(
  kinds: readonly WeightKind[],
  rings: readonly WeightRing[],
): BalanceFailed | null {
  if (kinds.length === 0 || rings.length === 0) return failed('stock-empty', {});
  for (const kind of kinds) {
    const bad = rejectNumbers({
      massG: [kind.massG, POSITIVE],
      lengthMm: [kind.lengthMm, NOT_NEGATIVE],
      onHand: [kind.onHand ?? 0, NOT_NEGATIVE],
    });
    if (bad) return bad;
  }
  for (const ring of rings) {
    const bad =
      rejectNumbers({
        radiusMm: [ring.radiusMm, POSITIVE],
        maxPieces: [ring.maxPieces, PIECES],
      }) ?? rejectArcs(ring.forbidden);
    if (bad) return bad;
  }
  return null;
}

function rejectArcs(arcs: readonly WheelArc[]): BalanceFailed | null {
  for (const { fromDeg, toDeg } of arcs) {
    const bad = rejectNumbers({ fromDeg: [fromDeg, DIRECTION_DEG], toDeg: [toDeg, DIRECTION_DEG] });
    if (bad) return bad;
  }
  return null;
}

/** Every load of every ring, or null when there are too many to try. */
export function allLoads(
  kinds: readonly WeightKind[],
  rings: readonly WeightRing[],
): Load[] | null {
  const loads: Load[] = [];
  let tried = 0;
  for (const [ring, { radiusMm, accepts, maxPieces }] of rings.entries()) {
    const counts = new Array<number>(kinds.length).fill(0);
    const most = Math.floor(maxPieces);
    // Fills kind after kind; false once there are too many.
    const fill = (kind: number, pieces: number): boolean => {
      if (kind === kinds.length) {
        tried += 1;
        if (tried > LOADS_MAX) return false;
        const load = loadOf(kinds, counts, ring, radiusMm);
        if (load) loads.push(load);
        return true;
      }
      const { fitting, onHand = Infinity } = kinds[kind]!;
      const room = accepts.includes(fitting) ? Math.min(most - pieces, Math.floor(onHand)) : 0;
      for (let count = 0; count <= room; count += 1) {
        counts[kind] = count;
        if (!fill(kind + 1, pieces + count)) return false;
      }
      counts[kind] = 0;
      return true;
    };
    if (!fill(0, 0)) return null;
  }
  return loads;
}

/** The pieces of a load in the order in which they are stuck on, kind by kind. */
export function piecesOf(kinds: readonly WeightKind[], counts: readonly number[]): WeightKind[] {
  return kinds.flatMap((kind, i) => new Array<WeightKind>(counts[i]!).fill(kind));
}

function loadOf(
  kinds: readonly WeightKind[],
  counts: readonly number[],
  ring: number,
  radiusMm: number,
): Load | null {
  const pieces = piecesOf(kinds, counts);
  const { momentGmm, behindDeg, aheadDeg } = layStrip(pieces, radiusMm);
  if (pieces.length === 0 || behindDeg + aheadDeg > STRIP_MAX_DEG) return null;
  return { ring, counts: [...counts], pieces: pieces.length, momentGmm, behindDeg, aheadDeg };
}
