import { BAND_ROWS } from '../band/treadBand.ts';
import type { Lean } from '../edge/leanFit.ts';
import { addToTemplate, createTiltTracker, matchFrame, type TiltTracker } from '../edge/tiltTracker.ts';
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
}

/** The tracker is already right within this; a block that wants more has hopped. */
const REACH_MM = 2;

export function refineShifts(recording: SweepRecording): RefinedShifts {
  const { tilt, frames } = recording;
  const blocks = tilt.blocks;
  const whole: TiltTracker = createTiltTracker(tilt.basis, tilt.window);
  for (const frame of frames) if (frame.lean) addToTemplate(whole, frame.profiles, frame.lean.lean);
  const shiftMm = new Float32Array(frames.length * blocks).fill(NaN);
  const standardErrorMm = new Float32Array(frames.length * blocks).fill(NaN);
  const leans = frames.map((frame, f) => {
    if (!frame.lean) return null;
    const found = matchFrame(whole, frame.profiles, frame.lean.lean, REACH_MM);
    if (!found) return null;
    shiftMm.set(found.shiftMm, f * blocks);
    standardErrorMm.set(found.standardErrorMm, f * blocks);
    return found.lean;
  });
  return { shiftMm, standardErrorMm, leans, template: whole.template };
}

/** Rows above and below whose difference is the slope of a profile. */
const SLOPE_ROWS = 2;

/**
 * Height about which a block's profile has its contrast, band rows: what the match follows. Mean
 * row of the window weighted by the squared slope of the profile.
 */
export function contrastRow(template: Float32Array, block: number, window: { first: number; last: number }): number {
  let sum = 0;
  let weighted = 0;
  const start = block * BAND_ROWS;
  for (let r = Math.max(SLOPE_ROWS, window.first); r <= Math.min(BAND_ROWS - 1 - SLOPE_ROWS, window.last); r++) {
    const slope = template[start + r + SLOPE_ROWS] - template[start + r - SLOPE_ROWS];
    if (slope !== slope) continue;
    sum += slope * slope;
    weighted += slope * slope * r;
  }
  return sum > 0 ? weighted / sum : (window.first + window.last) / 2;
}
