import { riseAt, type Lean, type LeanBasis } from '../edge/leanFit.ts';
import { createTermFit } from '../fit/termFit.ts';
import { RAD_PER_DEG, wrapTurnDeg } from '../../quantities/angle.ts';
import type { SweepRecording } from './sweepRecording.ts';

/**
 * How uneven the followed feature is round the wheel: the border of a rib runs out by a few tenths of
 * a millimetre, blocks step up and down by some, from one to the next.
 */

/** Median of |x| in standard deviations of a normal distribution. */
const SD_PER_MEDIAN = 1.4826;
/** Ribs stay below half of this, mm. */
export const UNEVEN_MM = 0.5;

/** Deviation of the blocks' shifts from their picture's plane in the newest pictures, one standard deviation, mm. */
export function unevenMm({ frames, tilt }: SweepRecording, newest = Infinity): number {
  return deviationAboutZero(
    frames
      .slice(-newest)
      .flatMap(({ lean }) =>
        lean
          ? Array.from(lean.shiftMm, (shift, b) => shift - riseAt(tilt.basis, lean.lean, b))
          : [],
      ),
  );
}

/** What planes leave of the blocks' shifts, mm; pictures × blocks, NaN where not seen. */
export function leftOfPlanes(
  basis: LeanBasis,
  shiftMm: Float32Array,
  leans: readonly (Lean | null)[],
): Float32Array {
  const blocks = basis.gainMm.length;
  return shiftMm.map((shift, at) => {
    const lean = leans[Math.floor(at / blocks)];
    return lean ? shift - riseAt(basis, lean, at % blocks) : NaN;
  });
}

/** Standard deviation of values about 0 by their median size: a few wild ones do not count. NaN is left out. */
export function deviationAboutZero(values: ArrayLike<number>): number {
  // Typed, for that is sorted without a function being asked for each pair; what is no number comes last.
  const sizes = new Float64Array(values.length);
  let known = 0;
  for (let i = 0; i < values.length; i++) {
    sizes[i] = Math.abs(values[i]);
    if (sizes[i] === sizes[i]) known++;
  }
  sizes.sort();
  return known > 0 ? SD_PER_MEDIAN * sizes[known >> 1] : 0;
}

/** Blocks are longer than this: some 13 mm of a car tyre. */
const BIN_DEG = 2.5;
const BINS = 360 / BIN_DEG;
const MIN_SIGHTINGS = 5;

/**
 * The feature's own shape by wheel angle, mm, its mean and its once-round wave left out: these two are
 * the wheel's. From what the blocks' shifts leave of their pictures' planes.
 *
 * @param leftMm pictures × blocks, NaN where not seen
 * @param wheelDegAt wheel angle of each of these, counted from anywhere
 */
export function shapeRound(
  leftMm: ArrayLike<number>,
  wheelDegAt: (at: number) => number,
): (wheelDeg: number) => number {
  const seen: number[][] = Array.from({ length: BINS }, () => []);
  for (let at = 0; at < leftMm.length; at++) {
    if (leftMm[at] === leftMm[at]) seen[binOf(wheelDegAt(at))].push(leftMm[at]);
  }
  const shape = seen.map((values) =>
    values.length < MIN_SIGHTINGS ? NaN : values.sort((a, b) => a - b)[values.length >> 1],
  );
  const once = onceRound(shape);
  const left = shape.map((height, k) => (height === height ? height - once(k) : 0));
  return (wheelDeg) => left[binOf(wheelDeg)];
}

function binOf(wheelDeg: number): number {
  return Math.floor(wrapTurnDeg(wheelDeg) / BIN_DEG) % BINS;
}

/** Mean and once-round wave of what is known of a shape, by bin. */
function onceRound(shape: readonly number[]): (bin: number) => number {
  const wave = createTermFit(3);
  const termsAt = (k: number) => {
    const angle = (k + 0.5) * BIN_DEG * RAD_PER_DEG;
    return [1, Math.cos(angle), Math.sin(angle)];
  };
  shape.forEach((height, k) => {
    if (height === height) wave.add(termsAt(k), height);
  });
  const solved = wave.solve();
  if (!solved) return () => 0;
  return (k) => termsAt(k).reduce((sum, t, i) => sum + t * solved[i], 0);
}
