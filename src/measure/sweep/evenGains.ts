import { RAD_PER_DEG } from '../../quantities/angle.ts';

/** The parts of observations that this is about. */
interface SeenHeights {
  readonly azimuthsDeg: Float64Array;
  readonly heightMm: Float32Array;
}

/** Gains follow from tilts and tilts from gains; after so many rounds both stand to a thousandth. */
const ROUNDS = 8;
/** Blocks this near to the sight are taken to move as the model says: all others are held against them, degrees. */
const MIDDLE_DEG = 20;
/** Fewer known heights make no gain of a block, and fewer blocks no tilt of a picture. */
const LEAST_PICTURES = 60;
const LEAST_BLOCKS = 6;

/**
 * How much more each block moves for a lean than it is taken to, beside the blocks in the middle: found
 * from the sweep itself, since one rigid wheel moves them all. 1 where it cannot be told.
 *
 * An outline is another point of a shoulder of unknown shape in each block, and what lies aside moves along
 * its own slope as well. Gains that grow toward the flanks look like a rise of the wheel with every lean: in a
 * fit that lets a picture rise that took an eighth of the tilt away. A wheel on a ball does not rise.
 */
export function evenGains({ azimuthsDeg, heightMm }: SeenHeights): Float64Array {
  const blocks = azimuthsDeg.length;
  const pictures = heightMm.length / blocks;
  const cos = azimuthsDeg.map((a) => Math.cos(a * RAD_PER_DEG));
  const sin = azimuthsDeg.map((a) => Math.sin(a * RAD_PER_DEG));
  let gain = new Float64Array(blocks).fill(1);
  let meanMm = meanOfBlocks(heightMm, blocks);
  for (let round = 0; round < ROUNDS; round++) {
    const sums = Array.from({ length: blocks }, () => ({ n: 0, p: 0, y: 0, pp: 0, py: 0 }));
    for (let i = 0; i < pictures; i++) {
      const tilt = tiltOf(i);
      if (!tilt) continue;
      sums.forEach((sum, b) => {
        const y = heightMm[i * blocks + b];
        if (y !== y) return;
        const p = tilt.toward * cos[b] + tilt.across * sin[b];
        sum.n++;
        sum.p += p;
        sum.y += y;
        sum.pp += p * p;
        sum.py += p * y;
      });
    }
    const told = sums.map(({ n, p, y, pp, py }) =>
      n < LEAST_PICTURES ? NaN : (n * py - p * y) / (n * pp - p * p),
    );
    const middle = told.filter((g, b) => g === g && Math.abs(azimuthsDeg[b]) <= MIDDLE_DEG);
    if (middle.length === 0) return new Float64Array(blocks).fill(1);
    const unit = middle.reduce((sum, g) => sum + g, 0) / middle.length;
    gain = Float64Array.from(told, (g) => (g === g ? g / unit : 1));
    meanMm = Float64Array.from(sums, ({ n, p, y }, b) => (n > 0 ? (y - told[b] * p) / n : NaN));
  }
  return gain;

  /** Tilt of one picture, mm at the rim, with no rise; null where too little was seen. */
  function tiltOf(i: number): { toward: number; across: number } | null {
    let [cc, cs, ss, cy, sy, n] = [0, 0, 0, 0, 0, 0];
    for (let b = 0; b < blocks; b++) {
      const y = heightMm[i * blocks + b] - meanMm[b];
      if (y !== y) continue;
      const [c, s] = [gain[b] * cos[b], gain[b] * sin[b]];
      n++;
      cc += c * c;
      cs += c * s;
      ss += s * s;
      cy += c * y;
      sy += s * y;
    }
    const det = cc * ss - cs * cs;
    if (n < LEAST_BLOCKS || !(det > 0)) return null;
    return { toward: (ss * cy - cs * sy) / det, across: (cc * sy - cs * cy) / det };
  }
}

function meanOfBlocks(heightMm: Float32Array, blocks: number): Float64Array {
  return Float64Array.from({ length: blocks }, (_, b) => {
    const known = heightMm.filter((y, at) => at % blocks === b && y === y);
    return known.reduce((sum, y) => sum + y, 0) / known.length;
  });
}
