import { BAND_ROWS, rowOfZ, Z_STEP_MM } from '../band/treadBand.ts';
import { riseAt } from '../edge/leanFit.ts';
import { absoluteLean, type SweepRecording } from './sweepRecording.ts';

/**
 * Whether an outline is the tyre's: what lies above it turns with the wheel and changes from picture to
 * picture, what lies behind it stands. A joint of the floor or a bench's edge stands on both sides; followed,
 * it would make a balanced wheel of any. A groove turns on both sides.
 */
export interface OutlineSides {
  /** Median over the blocks of how much the rows above and below it change while the wheel turns, luma. */
  readonly above: number;
  readonly below: number;
}

/** Rows this far from the outline are compared: clear of its blur, near enough to be seen, mm. */
const FROM_MM = 3;
const TO_MM = 12;
/** Turned by so much a block shows other slots, degrees; by more the light has changed as well. */
const TURNED_DEG = 3;

export function outlineSides(recording: SweepRecording): OutlineSides {
  const { tilt } = recording;
  const sides = Array.from({ length: tilt.blocks }, (_, b) => sidesOf(recording, b));
  const median = (of: (side: OutlineSides) => number) => {
    const values = sides.map(of).filter((x) => x === x);
    return values.sort((x, y) => x - y)[values.length >> 1] ?? 0;
  };
  return { above: median((s) => s.above), below: median((s) => s.below) };
}

function sidesOf(recording: SweepRecording, block: number): OutlineSides {
  const rows = turnedRows(recording, block);
  const step = { above: 0, below: 0, count: 0 };
  let before = 0;
  for (let i = 0; i < rows.length; i++) {
    if (Math.abs(rows[i].turnDeg - rows[before].turnDeg) < TURNED_DEG) continue;
    step.above += meanSquare(rows[i].above, rows[before].above);
    step.below += meanSquare(rows[i].below, rows[before].below);
    step.count++;
    before = i;
  }
  return { above: Math.sqrt(step.above / step.count), below: Math.sqrt(step.below / step.count) };
}

/**
 * The rows above the outline, moving with it, and the rows below the lowest that it came, which stand in
 * the picture.
 */
function turnedRows(recording: SweepRecording, block: number) {
  const { frames, turn, tilt, edge } = recording;
  const placed = frames.flatMap(({ profiles, lean, turnIndex }) => {
    if (!lean || turnIndex === null) return [];
    const absolute = absoluteLean(recording, lean.lean);
    const atMm = edge.heightMm + riseAt(tilt.basis, absolute, block);
    return [{ profiles, atMm, turnDeg: turn.turnDeg[turnIndex] }];
  });
  const lowestMm = placed.reduce((low, { atMm }) => Math.min(low, atMm), Infinity);
  return placed.map(({ profiles, atMm, turnDeg }) => ({
    turnDeg,
    above: rowsFrom(profiles, block, atMm + TO_MM),
    below: rowsFrom(profiles, block, lowestMm - FROM_MM),
  }));
}

const ROWS = (TO_MM - FROM_MM) / Z_STEP_MM;

function rowsFrom(profiles: Float32Array, block: number, topMm: number): Float32Array {
  const first = Math.max(0, Math.min(BAND_ROWS - ROWS, Math.round(rowOfZ(topMm))));
  return profiles.subarray(block * BAND_ROWS + first, block * BAND_ROWS + first + ROWS);
}

function meanSquare(a: Float32Array, b: Float32Array): number {
  let sum = 0;
  for (let r = 0; r < a.length; r++) sum += (a[r] - b[r]) ** 2;
  return sum / a.length;
}
