import { RAD_PER_DEG } from '../../quantities/angle.ts';

/**
 * One frame's lean from the shifts of its blocks: shift(α) = lift + gain(α)·(toward·cos α + across·sin α).
 *
 * `gain` is the rise seen on the nominal cylinder for each radian of lean: r_e for the true rise,
 * and z_E·κ more because a lean also carries the edge inward on the high side, which looks higher
 * from above.
 */
export interface Lean {
  /** Rise common to all azimuths, mm. */
  readonly liftMm: number;
  /** Rise of the rim toward azimuth 0 and toward azimuth 90°, radians; positive = that side is high. */
  readonly toward: number;
  readonly across: number;
}

export interface LeanBasis {
  readonly gainMm: Float64Array;
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

export interface LeanFit extends Lean {
  /** Weighted root mean square of what the three numbers leave, mm. */
  readonly residualMm: number;
  readonly blocksUsed: number;
}

/** Blocks that must agree before a frame has a lean. */
const MIN_BLOCKS = 6;
/** Cauchy scale: blocks differ by some tenths of a millimetre, a hopped one by several. */
const OUTLIER_MM = 0.5;
const REWEIGHTINGS = 6;

export function leanBasis(azimuthsDeg: Float64Array, gainMm: Float64Array): LeanBasis {
  return {
    gainMm,
    cos: azimuthsDeg.map((a) => Math.cos(a * RAD_PER_DEG)),
    sin: azimuthsDeg.map((a) => Math.sin(a * RAD_PER_DEG)),
  };
}

export function riseAt(basis: LeanBasis, lean: Lean, block: number): number {
  return (
    lean.liftMm +
    basis.gainMm[block] * (lean.toward * basis.cos[block] + lean.across * basis.sin[block])
  );
}

/**
 * What is believed before: over ±50° a lift and a lean toward the sight are hard to tell apart,
 * but a wheel on a ball does not rise, and a stand is nearly level.
 */
export interface LeanPrior {
  readonly liftMm: number;
  readonly liftSdMm: number;
  /** Expected lean, radians, and its standard deviation; left out: nothing is believed. */
  readonly lean?: { readonly toward: number; readonly across: number; readonly sd: number };
}

/** Robust weighted fit; `shiftMm` is NaN where a block saw nothing. */
export function fitLean(
  basis: LeanBasis,
  shiftMm: Float32Array | Float64Array,
  standardErrorMm: Float32Array | Float64Array,
  prior: LeanPrior,
): LeanFit | null {
  const n = shiftMm.length;
  const robust = new Float64Array(n).fill(1);
  for (let pass = 1; ; pass++) {
    const next = weightedLean(basis, shiftMm, standardErrorMm, robust, prior);
    if (!next) return null;
    if (pass === REWEIGHTINGS) {
      return { ...next, residualMm: residualOf(basis, next, shiftMm, robust) };
    }
    for (let b = 0; b < n; b++) {
      const miss = (shiftMm[b] - riseAt(basis, next, b)) / OUTLIER_MM;
      robust[b] = miss === miss ? 1 / (1 + miss * miss) : 0;
    }
  }
}

function weightedLean(
  basis: LeanBasis,
  shiftMm: Float32Array | Float64Array,
  standardErrorMm: Float32Array | Float64Array,
  robust: Float64Array,
  prior: LeanPrior,
): Omit<LeanFit, 'residualMm'> | null {
  const w0 = 1 / (prior.liftSdMm * prior.liftSdMm);
  const radius = basis.gainMm[basis.gainMm.length >> 1];
  // Normal equations in (lift, toward·radius, across·radius), all in mm.
  const wl = prior.lean ? 1 / (prior.lean.sd * radius) ** 2 : 0;
  let a00 = w0;
  let a01 = 0;
  let a02 = 0;
  let a11 = wl;
  let a12 = 0;
  let a22 = wl;
  let b0 = w0 * prior.liftMm;
  let b1 = wl * radius * (prior.lean?.toward ?? 0);
  let b2 = wl * radius * (prior.lean?.across ?? 0);
  let used = 0;
  for (let b = 0; b < shiftMm.length; b++) {
    if (shiftMm[b] !== shiftMm[b]) continue;
    const w = robust[b] / (standardErrorMm[b] * standardErrorMm[b]);
    const g = basis.gainMm[b] / radius;
    const x1 = g * basis.cos[b];
    const x2 = g * basis.sin[b];
    a00 += w;
    a01 += w * x1;
    a02 += w * x2;
    a11 += w * x1 * x1;
    a12 += w * x1 * x2;
    a22 += w * x2 * x2;
    b0 += w * shiftMm[b];
    b1 += w * x1 * shiftMm[b];
    b2 += w * x2 * shiftMm[b];
    if (robust[b] > 0.2) used++;
  }
  if (used < MIN_BLOCKS) return null;
  const det =
    a00 * (a11 * a22 - a12 * a12) - a01 * (a01 * a22 - a12 * a02) + a02 * (a01 * a12 - a11 * a02);
  if (!(Math.abs(det) > 1e-12)) return null;
  const lift =
    (b0 * (a11 * a22 - a12 * a12) - a01 * (b1 * a22 - a12 * b2) + a02 * (b1 * a12 - a11 * b2)) /
    det;
  const toward =
    (a00 * (b1 * a22 - b2 * a12) - b0 * (a01 * a22 - a12 * a02) + a02 * (a01 * b2 - b1 * a02)) /
    det;
  const across =
    (a00 * (a11 * b2 - a12 * b1) - a01 * (a01 * b2 - b1 * a02) + b0 * (a01 * a12 - a11 * a02)) /
    det;
  return { liftMm: lift, toward: toward / radius, across: across / radius, blocksUsed: used };
}

function residualOf(
  basis: LeanBasis,
  lean: Lean,
  shiftMm: Float32Array | Float64Array,
  robust: Float64Array,
): number {
  let sum = 0;
  let weight = 0;
  for (let b = 0; b < shiftMm.length; b++) {
    const miss = shiftMm[b] - riseAt(basis, lean, b);
    if (miss !== miss) continue;
    sum += robust[b] * miss * miss;
    weight += robust[b];
  }
  return weight > 0 ? Math.sqrt(sum / weight) : NaN;
}
