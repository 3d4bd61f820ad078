import { BAND_ROWS, Z_STEP_MM } from '../band/treadBand.ts';
import { fitLean, riseAt, type LeanBasis, type LeanFit } from './leanFit.ts';
import { profileShift } from './profileShift.ts';

/**
 * Follows the wheel's lean from frame to frame: every block's height profile is matched against
 * its template, and the blocks' shifts give one lean a frame. The template is the mean of all
 * profiles so far, each carried back by its frame's lean, so that no error can walk away with it.
 *
 * Leans are counted from the first frame's, whose own lean is zero here; the edge's absolute place
 * is found separately.
 */
export interface TiltTracker {
  readonly blocks: number;
  readonly basis: LeanBasis;
  /** Mean profile of each block in the first frame's place, blocks × rows; NaN where never seen. */
  readonly template: Float32Array;
  readonly templateWeight: Float32Array;
  window: { first: number; last: number };
  last: LeanFit | null;
  framesSinceSeen: number;
  /** Frames after which a new one weighs no less than its share of so many. */
  readonly memoryFrames: number;
}

export interface FrameLean {
  readonly lean: LeanFit;
  readonly shiftMm: Float32Array;
  readonly standardErrorMm: Float32Array;
}

/** Between two frames a rocking, turning wheel moves its edge by less than this, mm. */
const SEARCH_MM = 3;
/** After frames in which nothing was seen, for each of them so much more, up to the limit. */
const SEARCH_MORE_MM_PER_FRAME = 0.4;
const SEARCH_LIMIT_MM = 14;
/** A block that matches its template less than this does not show the tread. */
const MIN_CORRELATION = 0.45;
/** A wheel on its ball neither rises nor sinks; slow error of the light does, a little. */
export const LIFT_SD_MM = 0.12;
/** Standard error no block is believed to beat, mm: shape changes of the tread round the wheel. */
const FLOOR_SE_MM = 0.08;
/** Frames after which the template's mean is no longer a start-up guess. */
const TEMPLATE_MEMORY = 400;

export function createTiltTracker(
  basis: LeanBasis,
  window: { first: number; last: number },
  memoryFrames: number = TEMPLATE_MEMORY,
): TiltTracker {
  const blocks = basis.gainMm.length;
  return {
    blocks,
    basis,
    template: new Float32Array(blocks * BAND_ROWS).fill(NaN),
    templateWeight: new Float32Array(blocks * BAND_ROWS),
    window,
    last: null,
    framesSinceSeen: 0,
    memoryFrames,
  };
}

/** Takes one frame's profiles; null when the tread was not seen well enough for a lean. */
export function trackLean(tracker: TiltTracker, profiles: Float32Array): FrameLean | null {
  if (!tracker.last) {
    tracker.last = { liftMm: 0, toward: 0, across: 0, residualMm: 0, blocksUsed: tracker.blocks };
    addToTemplate(tracker, profiles, tracker.last);
    return {
      lean: tracker.last,
      shiftMm: new Float32Array(tracker.blocks),
      standardErrorMm: new Float32Array(tracker.blocks).fill(FLOOR_SE_MM),
    };
  }
  const reachMm = Math.min(
    SEARCH_LIMIT_MM,
    SEARCH_MM + tracker.framesSinceSeen * SEARCH_MORE_MM_PER_FRAME,
  );
  const found = matchFrame(tracker, profiles, tracker.last, reachMm);
  if (!found) {
    tracker.framesSinceSeen++;
    return null;
  }
  tracker.last = found.lean;
  tracker.framesSinceSeen = 0;
  addToTemplate(tracker, profiles, found.lean);
  return found;
}

/**
 * The lean of one frame against the template as it stands, searched about an expected lean; with
 * `rowWeight` (blocks × rows of the template) not all rows count alike.
 */
export function matchFrame(
  tracker: TiltTracker,
  profiles: Float32Array,
  expected: { readonly liftMm: number; readonly toward: number; readonly across: number },
  reachMm: number,
  rowWeight: Float32Array | null = null,
): FrameLean | null {
  const { blocks, basis, template, window } = tracker;
  const shiftMm = new Float32Array(blocks).fill(NaN);
  const standardErrorMm = new Float32Array(blocks).fill(NaN);
  const reachRows = Math.ceil(reachMm / Z_STEP_MM);
  for (let b = 0; b < blocks; b++) {
    const start = b * BAND_ROWS;
    const centreRows = riseAt(basis, expected, b) / Z_STEP_MM;
    const search = { centreRows, reachRows, rowWeight };
    const match = profileShift(template, start, profiles, start, BAND_ROWS, window, search);
    if (!match || match.correlation < MIN_CORRELATION) continue;
    shiftMm[b] = match.upRows * Z_STEP_MM;
    standardErrorMm[b] = Math.hypot(match.standardErrorRows * Z_STEP_MM, FLOOR_SE_MM);
  }
  const lean = fitLean(basis, shiftMm, standardErrorMm, { liftMm: 0, liftSdMm: LIFT_SD_MM });
  return lean ? { lean, shiftMm, standardErrorMm } : null;
}

/** Adds a frame's profiles, carried back by its lean, to the running mean. */
export function addToTemplate(
  tracker: TiltTracker,
  profiles: Float32Array,
  lean: { readonly liftMm: number; readonly toward: number; readonly across: number },
): void {
  const { blocks, basis, template, templateWeight } = tracker;
  for (let b = 0; b < blocks; b++) {
    const up = riseAt(basis, lean, b) / Z_STEP_MM;
    const whole = Math.floor(up);
    const part = up - whole;
    const start = b * BAND_ROWS;
    // Template row r is seen at row r − up.
    for (let r = Math.max(0, whole + 1); r < Math.min(BAND_ROWS, BAND_ROWS + whole); r++) {
      const value =
        profiles[start + r - whole] * (1 - part) + profiles[start + r - whole - 1] * part;
      if (value !== value) continue;
      const weight = Math.min(tracker.memoryFrames, templateWeight[start + r]) + 1;
      templateWeight[start + r] = weight;
      const old = template[start + r];
      template[start + r] = weight === 1 ? value : old + (value - old) / weight;
    }
  }
}
