import { BAND_ROWS, rowOfZ, Z_STEP_MM, zOfRowMm } from '../band/treadBand.ts';
import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import type { SlicedWork } from '../pace/slicedWork.ts';
import {
  chooseEdge,
  leastPlain,
  PLAIN_STRENGTH,
  TAP_REACH_MM,
  type StackPeak,
} from './edgeChoice.ts';
import { riseAt, type Lean, type LeanBasis } from './leanFit.ts';
import { bestLean, stackPeaks, stepScores, type LeanSearch } from './stepSearch.ts';
import { createStepStack, stackedSteps, type StepStack } from './stepStack.ts';

/**
 * Proposes the tread edge: the upper rim of a groove, where a lit rib ends and the dark groove
 * begins, running across all blocks as one tilted circle.
 */
export interface EdgeProposal {
  /** Height of the edge above the laser plane at lean zero, mm. */
  readonly heightMm: number;
  /** The wheel's lean in the picture that was searched. */
  readonly lean: Lean;
  /** Mean step of the profile at the edge, in standard deviations of the profile: its plainness. */
  readonly strength: number;
  /** Height of the plainest edge in view at lean zero, mm: it shows the lean when the line hides this one. */
  readonly plainestMm: number;
  /** True where it showed nowhere and is taken to lie under the line. */
  readonly isAssumed?: boolean;
  /** Where it is the shoulder's outline; all heights are then counted from its plane, by its own view. */
  readonly outline?: OutlinePlace;
}

/** Where the tyre's outline before what lies behind it was found. */
export interface OutlinePlace {
  /** Height of the plane beside which it is followed, mm from the laser plane. */
  readonly planeMm: number;
  /** Whether what lies behind the tyre is lighter than it. */
  readonly isLighterBehind: boolean;
}

export type EdgeTrouble = 'edge-lost' | 'edge-ambiguous' | 'lean-too-large';

/** The edge is looked for so far above and below the line, mm. */
const SEARCH_MM = 22;
/** The leans tried: rise of the rim up to so much toward and across the sight, mm. */
export const WITHIN_REACH: LeanSearch = { fromMm: 0, toMm: 20, stepMm: 1 };
/**
 * Where the best of these lies at their border it may lie beyond, mm. Leans from there on are not
 * followed but told.
 */
const BORDER_MM = 19;
const BEYOND_REACH: LeanSearch = { fromMm: 25, toMm: 50, stepMm: 2 };
/** What is known of the edge before it is looked for, mm above the line; empty when nothing is. */
export interface EdgeWish {
  /** Height at the sight as it stands in the picture: a person's tap. */
  readonly tapMm?: number | null;
  /** Height at lean zero, from other pictures of the same view. */
  readonly atRestMm?: number;
}

/**
 * First the lean: the one at which the blocks' profiles, laid over each other, agree best, since
 * all grooves run parallel round the wheel. Then the edge in the stacked profile: the fall of luma
 * nearest to the tap, or the topmost plain one near the line.
 */
export function* proposeEdge(
  profiles: Float32Array,
  basis: LeanBasis,
  radiusMm: number,
  { tapMm = null, atRestMm }: EdgeWish = {},
): SlicedWork<Outcome<EdgeProposal, EdgeTrouble>> {
  const blocks = basis.gainMm.length;
  const steps = createStepStack(stepScores(profiles, blocks), blocks);
  const search = yield* bestLean(steps, basis, radiusMm, WITHIN_REACH);
  const within = edgesAt(steps, basis, search.lean);
  const wishMm = atRestMm ?? (tapMm === null ? null : tapMm - within.sightRiseMm);
  const chosen = chooseEdge(within.near, wishMm, within.plainest.strength);
  // Hidden under the line's glow just now: it was seen, and the lean is known all the same.
  const hidden = wishMm === null ? null : { heightMm: wishMm, strength: 0 };
  const edge = chosen.ok && within.isPlain ? (chosen.value ?? hidden) : null;
  const atBorder = radiusMm * Math.hypot(search.lean.toward, search.lean.across) >= BORDER_MM;
  if (!edge || atBorder) {
    const beyond = yield* bestLean(steps, basis, radiusMm, BEYOND_REACH);
    const there = edgesAt(steps, basis, beyond.lean);
    if (beyond.energy > search.energy && there.isPlain) return failed('lean-too-large', {});
  }
  if (!chosen.ok) return chosen;
  if (!edge) return failed('edge-lost', {});
  return succeeded({ ...edge, lean: search.lean, plainestMm: within.plainest.heightMm });
}

/** The falls of luma that show at a lean: all of them, and those near the line at the sight. */
function edgesAt(steps: StepStack, basis: LeanBasis, lean: Lean) {
  const sightRiseMm = riseAt(basis, lean, basis.gainMm.length >> 1);
  const all = stackPeaks(stackedSteps(steps, basis, lean));
  const plainest = all.reduce((a, b) => (b.strength > a.strength ? b : a), NO_EDGE);
  return {
    sightRiseMm,
    plainest,
    isPlain: plainest.strength >= PLAIN_STRENGTH,
    near: all.filter((p) => Math.abs(p.heightMm + sightRiseMm) <= SEARCH_MM),
  };
}

const NO_EDGE: StackPeak = { heightMm: NaN, strength: 0 };

/**
 * The edge again where camera and lean are known from an earlier pass: the step nearest to the
 * height it had then, and the plainest one in view. Null when nothing lies near.
 */
export function edgeAtLean(
  profiles: Float32Array,
  basis: LeanBasis,
  lean: Lean,
  heightMm: number,
): EdgeProposal | null {
  const blocks = basis.gainMm.length;
  const steps = createStepStack(stepScores(profiles, blocks), blocks);
  const peaks = stackPeaks(stackedSteps(steps, basis, lean));
  if (peaks.length === 0) return null;
  const plainestMm = peaks.reduce((a, b) => (b.strength > a.strength ? b : a)).heightMm;
  const away = (p: StackPeak) => Math.abs(p.heightMm - heightMm);
  const nearest = peaks.reduce((a, b) => (away(b) < away(a) ? b : a));
  // Hidden under the line's glow it keeps the height it had.
  const chosen = away(nearest) <= TAP_REACH_MM ? nearest : { heightMm, strength: 0 };
  return { ...chosen, lean, plainestMm };
}

/**
 * A plain edge within a tap's reach of a height, in profiles whose lean is known; without a height the
 * topmost plain one near the line, as where nobody touched any. Null when none shows, or two do.
 */
export function edgeInStack(
  profiles: Float32Array,
  basis: LeanBasis,
  lean: Lean,
  heightMm: number | null,
): StackPeak | null {
  const blocks = basis.gainMm.length;
  const steps = createStepStack(stepScores(profiles, blocks), blocks);
  const { near, plainest } = edgesAt(steps, basis, lean);
  const least = leastPlain(plainest.strength);
  const plain = near.filter((p) => p.strength >= least);
  const chosen = chooseEdge(plain, heightMm, plainest.strength);
  return chosen.ok ? chosen.value : null;
}

/**
 * Sub-row place of the edge in each block about an expected height, mm above the laser plane: the
 * peak of the downward fall of luma; NaN where there is none within `reachMm`.
 */
export function edgeHeightsMm(
  profiles: Float32Array,
  expectedMm: Float64Array,
  reachMm: number,
): Float64Array {
  const blocks = expectedMm.length;
  const steps = stepScores(profiles, blocks);
  const out = new Float64Array(blocks).fill(NaN);
  const reach = Math.round(reachMm / Z_STEP_MM);
  for (let b = 0; b < blocks; b++) {
    const middle = Math.round(rowOfZ(expectedMm[b]));
    let best = 0.1;
    let at = -1;
    for (let r = Math.max(1, middle - reach); r <= Math.min(BAND_ROWS - 2, middle + reach); r++) {
      const value = steps[b * BAND_ROWS + r];
      if (value > best) {
        best = value;
        at = r;
      }
    }
    if (at < 0) continue;
    const before = steps[b * BAND_ROWS + at - 1];
    const after = steps[b * BAND_ROWS + at + 1];
    const curvature = 2 * best - before - after;
    const part =
      curvature > 1e-6 ? Math.max(-0.5, Math.min(0.5, (after - before) / (2 * curvature))) : 0;
    // A step between rows r−1 and r peaks at r; its place is the border between them.
    out[b] = zOfRowMm(at - 0.5 + part);
  }
  return out;
}
