import { BAND_ROWS, zOfRowMm } from '../band/treadBand.ts';
import { fitLean, riseAt, type Lean } from '../edge/leanFit.ts';
import {
  addToTemplate,
  createTiltTracker,
  LIFT_SD_MM,
  matchFrame,
  type TiltTracker,
} from '../edge/tiltTracker.ts';
import {
  blockMotions,
  carriedBack,
  carriedTo,
  rowMotion,
  type BlockMotion,
  type RowMotion,
} from './rowMotion.ts';
import type { SweepRecording } from './sweepRecording.ts';

/**
 * All frames' block shifts against one template made of the whole sweep: what the tracker said as
 * it went along, measured once more against the mean of everything it saw.
 */
export interface RefinedShifts {
  /** Rise of the edge in each block from the template's place, mm, frames × blocks, NaN where not seen. */
  readonly shiftMm: Float32Array;
  readonly standardErrorMm: Float32Array;
  readonly leans: readonly (Lean | null)[];
  readonly template: Float32Array;
}

/** The tracker is already right within this; a block that wants more has hopped. */
const REACH_MM = 2.5;
/** A row of the template must be seen in this share of the frames. */
const MIN_SEEN_SHARE = 0.25;
/** Rounds of template and standing light: each sharpens the other. */
const ROUNDS = 2;

export function refineShifts(recording: SweepRecording): RefinedShifts {
  const { tilt, frames } = recording;
  const blocks = tilt.blocks;
  const motion = rowMotion(recording);
  const rowWeight = weightsNearEdge(recording);
  let leans: readonly (Lean | null)[] = frames.map((frame) => frame.lean?.lean ?? null);
  const standing = new Float32Array(blocks * BAND_ROWS);
  const moving = new Float32Array(blocks * BAND_ROWS);
  const back = new Float32Array(blocks * BAND_ROWS);
  const shiftMm = new Float32Array(frames.length * blocks);
  const standardErrorMm = new Float32Array(frames.length * blocks);
  let whole: TiltTracker = createTiltTracker(tilt.basis, tilt.window);
  for (let round = 0; round < ROUNDS; round++) {
    const motions = blockMotions(recording, leans);
    const carried = (f: number, moved: BlockMotion) =>
      carriedBack(motion, moved, without(frames[f].profiles, standing, moving), back);
    whole = createTiltTracker(tilt.basis, tilt.window, Infinity);
    motions.forEach((moved, f) => {
      if (moved) addToTemplate(whole, carried(f, moved), IN_PLACE);
    });
    forgetSeldomSeen(whole, frames.length);
    learnStanding(recording, whole, motion, motions, standing);
    shiftMm.fill(NaN);
    standardErrorMm.fill(NaN);
    leans = motions.map((moved, f) => {
      const left = moved && matchFrame(whole, carried(f, moved), IN_PLACE, REACH_MM, rowWeight);
      if (!left) return null;
      const at = f * blocks;
      shiftMm.set(
        left.shiftMm.map((s, b) => s + moved.upMm[b]),
        at,
      );
      standardErrorMm.set(left.standardErrorMm, at);
      const [shift, error] = [shiftMm, standardErrorMm].map((v) => v.subarray(at, at + blocks));
      return fitLean(tilt.basis, shift, error, { liftMm: 0, liftSdMm: LIFT_SD_MM });
    });
  }
  return {
    shiftMm,
    standardErrorMm,
    leans,
    template: whole.template,
  };
}

/** A frame already carried back: what its match still finds is what the first lean left. */
const IN_PLACE: Lean = { liftMm: 0, toward: 0, across: 0 };

/**
 * How much each row of the template counts, blocks × rows: all about the edge, and less the farther
 * from it. How far rows move beside the edge is known to some hundredths over a crowned tread with
 * grooves, which is nothing near by; where the laser hides the edge the far ribs still tell the lean.
 */
function weightsNearEdge({ tilt, edge }: SweepRecording): Float32Array {
  const out = new Float32Array(tilt.blocks * BAND_ROWS);
  for (let b = 0; b < tilt.blocks; b++) {
    const edgeMm = edge.heightMm + riseAt(tilt.basis, edge.lean, b);
    for (let r = 0; r < BAND_ROWS; r++) {
      const beyondMm = Math.max(0, Math.abs(zOfRowMm(r) - edgeMm) - FULL_WEIGHT_MM);
      out[b * BAND_ROWS + r] = 1 / (1 + (beyondMm / HALF_WEIGHT_MM) ** 2);
    }
  }
  return out;
}

/** Rib and groove on both sides of the edge, mm. */
const FULL_WEIGHT_MM = 8;
/** So much farther a row has half the weight, mm: the groove's other wall still counts, the next rib little. */
const HALF_WEIGHT_MM = 6;

/** Rows that few frames showed are the border of the laser's glow, not tread. */
function forgetSeldomSeen(whole: TiltTracker, frameCount: number): void {
  for (let i = 0; i < whole.template.length; i++) {
    if (whole.templateWeight[i] < MIN_SEEN_SHARE * frameCount) whole.template[i] = NaN;
  }
}

function without(profiles: Float32Array, standing: Float32Array, out: Float32Array): Float32Array {
  for (let i = 0; i < out.length; i++) out[i] = profiles[i] - standing[i];
  return out;
}

/**
 * Light that stands in the room while the tread moves through it: the laser's glow, a lamp's
 * reflection. Mean of what the profiles show beside the template carried to each frame's place;
 * left in, it would hold every match back toward standing still.
 */
function learnStanding(
  recording: SweepRecording,
  whole: TiltTracker,
  motion: RowMotion,
  motions: readonly (BlockMotion | null)[],
  standing: Float32Array,
): void {
  const { frames } = recording;
  const sum = new Float64Array(standing.length);
  const count = new Float64Array(standing.length);
  const there = new Float32Array(standing.length);
  motions.forEach((moved, f) => {
    if (!moved) return;
    carriedTo(motion, moved, whole.template, there);
    for (let i = 0; i < there.length; i++) {
      const beside = frames[f].profiles[i] - there[i];
      if (beside !== beside) continue;
      sum[i] += beside;
      count[i]++;
    }
  });
  const enough = MIN_STANDING_SHARE * frames.length;
  for (let i = 0; i < standing.length; i++) standing[i] = count[i] > enough ? sum[i] / count[i] : 0;
}

/** A row must be seen in this share of the frames before a standing part of it can be told. */
const MIN_STANDING_SHARE = 0.2;
