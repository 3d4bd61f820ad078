import { BAND_ROWS, Z_STEP_MM } from '../band/treadBand.ts';
import { riseAt, type Lean, type LeanFit } from '../edge/leanFit.ts';
import {
  addToTemplate,
  createTiltTracker,
  matchFrame,
  type TiltTracker,
} from '../edge/tiltTracker.ts';
import type { SweepRecording } from './sweepRecording.ts';

/**
 * All frames' block shifts against one template made of the whole sweep: what the tracker said as
 * it went along, measured once more against the mean of everything it saw.
 */
export interface RefinedShifts {
  /** Shift of each block, mm up from the template's place, frames × blocks, NaN where not seen. */
  readonly shiftMm: Float32Array;
  readonly standardErrorMm: Float32Array;
  readonly leans: readonly (Lean | null)[];
  readonly template: Float32Array;
  /** Frames that showed each row of the template. */
  readonly seenCount: Float32Array;
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
  let leans: readonly (LeanFit | null)[] = frames.map((frame) => frame.lean?.lean ?? null);
  const standing = new Float32Array(blocks * BAND_ROWS);
  const moving = new Float32Array(blocks * BAND_ROWS);
  const shiftMm = new Float32Array(frames.length * blocks);
  const standardErrorMm = new Float32Array(frames.length * blocks);
  let whole: TiltTracker = createTiltTracker(tilt.basis, tilt.window);
  for (let round = 0; round < ROUNDS; round++) {
    whole = createTiltTracker(tilt.basis, tilt.window, Infinity);
    frames.forEach((frame, f) => {
      const lean = leans[f];
      if (lean) addToTemplate(whole, without(frame.profiles, standing, moving), lean);
    });
    forgetSeldomSeen(whole, frames.length);
    learnStanding(recording, whole, leans, standing);
    shiftMm.fill(NaN);
    standardErrorMm.fill(NaN);
    leans = frames.map((frame, f) => {
      const lean = leans[f];
      const found =
        lean && matchFrame(whole, without(frame.profiles, standing, moving), lean, REACH_MM);
      if (!found) return null;
      shiftMm.set(found.shiftMm, f * blocks);
      standardErrorMm.set(found.standardErrorMm, f * blocks);
      return found.lean;
    });
  }
  return {
    shiftMm,
    standardErrorMm,
    leans,
    template: whole.template,
    seenCount: whole.templateWeight,
  };
}

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
 * reflection. Mean of what the profiles show beside the template carried to each frame's lean;
 * left in, it would hold every match back toward standing still.
 */
function learnStanding(
  recording: SweepRecording,
  whole: TiltTracker,
  leans: readonly (LeanFit | null)[],
  standing: Float32Array,
): void {
  const { frames, tilt } = recording;
  const sum = new Float64Array(standing.length);
  const count = new Float64Array(standing.length);
  frames.forEach((frame, f) => {
    const lean = leans[f];
    if (!lean) return;
    for (let b = 0; b < tilt.blocks; b++) {
      const up = Math.round(riseAt(tilt.basis, lean, b) / Z_STEP_MM);
      const start = b * BAND_ROWS;
      for (let r = Math.max(0, -up); r < Math.min(BAND_ROWS, BAND_ROWS - up); r++) {
        const beside = frame.profiles[start + r] - whole.template[start + r + up];
        if (beside !== beside) continue;
        sum[start + r] += beside;
        count[start + r]++;
      }
    }
  });
  const enough = MIN_STANDING_SHARE * frames.length;
  for (let i = 0; i < standing.length; i++) standing[i] = count[i] > enough ? sum[i] / count[i] : 0;
}

/** A row must be seen in this share of the frames before a standing part of it can be told. */
const MIN_STANDING_SHARE = 0.2;

/** Rows above and below whose difference is the slope of a profile. */
const SLOPE_ROWS = 2;

/**
 * Height about which a block's profile has its contrast, band rows: what the match follows. Mean
 * row of the window weighted by the squared slope of the profile and by how often it was seen.
 */
export function contrastRow(
  refined: RefinedShifts,
  block: number,
  window: { first: number; last: number },
): number {
  const { template, seenCount } = refined;
  let sum = 0;
  let weighted = 0;
  const start = block * BAND_ROWS;
  for (
    let r = Math.max(SLOPE_ROWS, window.first);
    r <= Math.min(BAND_ROWS - 1 - SLOPE_ROWS, window.last);
    r++
  ) {
    const slope = template[start + r + SLOPE_ROWS] - template[start + r - SLOPE_ROWS];
    if (slope !== slope) continue;
    const weight = slope * slope * seenCount[start + r];
    sum += weight;
    weighted += weight * r;
  }
  return sum > 0 ? weighted / sum : (window.first + window.last) / 2;
}
