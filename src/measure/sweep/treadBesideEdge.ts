import { failed, type Outcome } from '../../contract/outcome.ts';
import { Z_STEP_MM } from '../band/treadBand.ts';
import { BLOCK_WIDTH_DEG } from '../edge/blockProfiles.ts';
import { riseAt } from '../edge/leanFit.ts';
import { besideEdgeTextures } from './besideEdgeTextures.ts';
import { addBlocks, createLagSums, peakOf, sumOf, type LagSums } from './rowLag.ts';
import type { SweepRecording } from './sweepRecording.ts';

/**
 * Whether the tread beside a followed edge that stands moves up and down against it. One place of the
 * tread crosses the view at one distance from an edge that is the wheel's own, whatever the wheel leans.
 * From the border of something that stands before the tread its distance changes: by what the wheel
 * rocks, and by how much its high side swings outward, which looks higher, most at the flanks. The wheel's own
 * tilt shows in it no other way, for it turns with the place; so that a wheel that leans little tells little.
 *
 * A block's profile less the mean of all its pictures is dust, wear and slots. That of one place is
 * laid over that of the same place in another block, further on in the turn, at several heights.
 */
export interface TreadBesideEdge {
  /**
   * Half of the pairs of pictures differ by more, between them, from what pairs as far apart mostly show, mm.
   * What all show alike is the crown's, the camera's, or the border's and the stand's lean.
   */
  readonly movedMm: number;
  /** Pairs of pictures in which the same tread was found again. */
  readonly pairs: number;
  /**
   * Correlation over the pairs of what every second block tells and what the others tell: 1 where the tread
   * moves, near 0 where noise, or a hand that passes, is all there is to it.
   */
  readonly agreement: number;
}

/**
 * A drawn wheel's own edges, balanced, noisy or in a glaring line: 0.05 to 0.12 mm. Borders of drawn covers:
 * 0.4 to 0.5 mm on a wheel of 3 g, 0.5 to 1.1 on one of 16 g.
 */
const MOVES_PAST_MM = 0.25;
/**
 * Noise and a hand make the lags of single pairs wild, by more than that; but each half of the blocks in a way
 * of its own: 0 to 0.25 in films of a nearly balanced wheel, 0.5 to 0.95 of drawn covers before one of 16 g.
 */
const LEAST_AGREEMENT = 0.4;
/**
 * One standard deviation of an edge's rise where it stands, mm: noise makes 0.03 to 0.1 of it. A wheel that a
 * gram is wanting on rises and falls by as much as this, or rocks by it: its edge is no standing border.
 */
const STANDS_MM = 0.3;
/** Of some two hundred pairs of a turn; fewer are chance. */
const MIN_PAIRS = 40;

/** A border that stands while the tread beside it moves; null where it moves along, or nothing tells. */
export function standsBeforeTread(
  recording: SweepRecording,
): Outcome<never, 'view-blocked'> | null {
  // What lies behind an outline stands; that it is the tyre's is looked at elsewhere.
  if (recording.edge.outline) return null;
  const riseMm = edgeRiseSdMm(recording);
  if (riseMm > STANDS_MM) return null;
  const { movedMm, pairs, agreement } = treadBesideEdge(recording);
  if (pairs < MIN_PAIRS || agreement < LEAST_AGREEMENT) return null;
  if (movedMm < Math.max(MOVES_PAST_MM, riseMm)) return null;
  return failed('view-blocked', { treadPastEdgeMm: Math.round(100 * movedMm) / 100 });
}

/** How much the followed edge rises and falls in the room, one standard deviation, mean of its blocks, mm. */
function edgeRiseSdMm({ frames, tilt }: SweepRecording): number {
  const leans = frames.flatMap(({ lean }) => (lean ? [lean.lean] : []));
  let squares = 0;
  for (let b = 0; b < tilt.blocks; b++) {
    const rises = leans.map((lean) => riseAt(tilt.basis, lean, b));
    const mean = rises.reduce((sum, mm) => sum + mm, 0) / rises.length;
    squares += rises.reduce((sum, mm) => sum + (mm - mean) ** 2, 0) / rises.length;
  }
  return Math.sqrt(squares / tilt.blocks);
}

/** So many blocks on the same place is looked for: seen from so far aside it looks otherwise, and time has passed. */
const BLOCKS_ON = [6, 9] as const;
/** Pictures nearer together show the same once more, degrees. */
const PICTURE_STEP_DEG = 0.4;
/** Places along the turn, degrees. */
const PLACE_STEP_DEG = 2.5;
/** A picture is that close to the turn that brings the place there, degrees: slots are as wide. */
const SAME_PLACE_DEG = 0.8;
/** The same tread found again: drawn and rendered ones correlate by 0.5 to 0.8, rows that show none by 0.1. */
const FOUND_CORRELATION = 0.4;

export function treadBesideEdge(recording: SweepRecording): TreadBesideEdge {
  const { tilt } = recording;
  const pictures = spreadOverTurn(recording);
  const textures = besideEdgeTextures(
    recording,
    pictures.map(({ frame }) => frame),
  );
  const pairs = pairsOf(pictures.map(({ turnDeg }) => turnDeg));
  const bent = bendOf(textures, pairs, tilt.blocks);
  const moved = BLOCKS_ON.flatMap((on) => {
    const lags = pairs
      .filter((pair) => pair.on === on)
      .flatMap((pair) => lagOf(textures, pair, tilt.blocks, bent) ?? []);
    const usual = lagMap((part) => median(lags.map((lag) => lag[part])));
    return lags.map((lag) => lagMap((part) => lag[part] - usual[part]));
  });
  return {
    movedMm: median(moved.map(({ allMm }) => Math.abs(allMm))),
    pairs: moved.length,
    agreement: agreementOf(moved),
  };
}

/** How far the same tread lies lower above the edge in a pair's second picture, mm: by all blocks and by each half. */
interface Lag {
  readonly allMm: number;
  readonly evenMm: number;
  readonly oddMm: number;
}

function lagMap(of: (part: keyof Lag) => number): Lag {
  return { allMm: of('allMm'), evenMm: of('evenMm'), oddMm: of('oddMm') };
}

/** Correlation of the halves; a wild pair has no more say than one by so much, mm. */
const WILD_MM = 2;

function agreementOf(moved: readonly Lag[]): number {
  let [even, odd, both] = [0, 0, 0];
  for (const { evenMm, oddMm } of moved) {
    const x = Math.max(-WILD_MM, Math.min(WILD_MM, evenMm));
    const y = Math.max(-WILD_MM, Math.min(WILD_MM, oddMm));
    even += x * x;
    odd += y * y;
    both += x * y;
  }
  return even > 0 && odd > 0 ? both / Math.sqrt(even * odd) : 0;
}

/** Followed pictures as far apart as tells them apart: a wheel at rest adds nothing. */
function spreadOverTurn({ frames, turn }: SweepRecording) {
  let last = Infinity;
  return frames.flatMap((frame) => {
    if (!frame.lean || frame.turnIndex === null) return [];
    const turnDeg = turn.turnDeg[frame.turnIndex];
    if (Math.abs(turnDeg - last) < PICTURE_STEP_DEG) return [];
    last = turnDeg;
    return [{ frame, turnDeg }];
  });
}

/** Null where the same tread is not found again in all blocks and in either half of them. */
function lagOf(
  textures: readonly Float32Array[],
  pair: Pair,
  blocks: number,
  bent: (block: number, on: number) => number,
): Lag | null {
  const halves = [createLagSums(), createLagSums()];
  for (let b = 0; b + pair.on < blocks; b++) {
    addPair(halves[b % 2], textures, pair, b, bent(b, pair.on));
  }
  const peaks = [sumOf(halves), ...halves].map(peakOf);
  if (peaks.some(({ correlation }) => correlation <= FOUND_CORRELATION)) return null;
  const [allMm, evenMm, oddMm] = peaks.map(({ lagRows }) => lagRows * Z_STEP_MM);
  return { allMm, evenMm, oddMm };
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;
}

/** Two pictures, by index, between which the tread has gone on by so many blocks. */
interface Pair {
  readonly from: number;
  readonly to: number;
  readonly on: number;
}

function pairsOf(turnDeg: readonly number[]): Pair[] {
  const pairs: Pair[] = [];
  let last = Infinity;
  turnDeg.forEach((deg, from) => {
    if (Math.abs(deg - last) < PLACE_STEP_DEG) return;
    last = deg;
    for (const on of BLOCKS_ON) {
      const due = deg + on * BLOCK_WIDTH_DEG;
      const away = (i: number) => Math.abs(turnDeg[i] - due);
      const to = turnDeg.reduce((best, _, i) => (away(i) < away(best) ? i : best), 0);
      if (away(to) < SAME_PLACE_DEG) pairs.push({ from, to, on });
    }
  });
  return pairs;
}

/**
 * What a crowned tread and an error of the camera make of one distance in different blocks: what is lower at
 * one side and at the other alike, rows. It is the same all through the turn, and no lean across.
 */
function bendOf(
  textures: readonly Float32Array[],
  pairs: readonly Pair[],
  blocks: number,
): (block: number, on: number) => number {
  const lags = new Map<string, number>();
  for (const on of BLOCKS_ON) {
    for (let b = 0; b + on < blocks; b++) {
      const sums = createLagSums();
      for (const pair of pairs) if (pair.on === on) addPair(sums, textures, pair, b, 0);
      const { lagRows, correlation } = peakOf(sums);
      if (correlation > FOUND_CORRELATION) lags.set(`${on} ${b}`, lagRows);
    }
  }
  return (block, on) => {
    const here = lags.get(`${on} ${block}`);
    const mirrored = lags.get(`${on} ${blocks - 1 - block - on}`);
    return here === undefined || mirrored === undefined ? 0 : Math.round((here - mirrored) / 2);
  };
}

function addPair(
  sums: LagSums,
  textures: readonly Float32Array[],
  { from, to, on }: Pair,
  block: number,
  bendRows: number,
): void {
  addBlocks(sums, textures[from], block, textures[to], block + on, bendRows);
}
