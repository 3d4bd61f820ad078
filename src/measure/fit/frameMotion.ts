import type { SweepObservations } from '../../contract/observations.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { isUsable, type FrameBins } from './frameBins.ts';
import { STATE } from './rockingState.ts';
import type { SmoothedMotion } from './rockingSmoother.ts';
import type { SettledHeights } from './settledHeights.ts';
import type { SettledMotion } from './settledState.ts';
import { HIGHER_WAVES } from './tiltFit.ts';
import type { WholeFit } from './wholeFit.ts';

/** The motion and what is left over, frame by frame. */
export interface FrameMotion {
  readonly rockingMm: Float32Array;
  readonly offsetDriftMm: Float32Array;
  readonly residualMm: Float32Array;
  readonly frameWeight: Float32Array;
  readonly rmsMm: number;
  readonly counts: {
    readonly frames: number;
    readonly heights: number;
    readonly effectiveFrames: number;
  };
}

/** Between bins further apart than this, s, nothing is said of the motion. */
const LONGEST_BRIDGE_S = 1;

export function describeFrames(
  observations: SweepObservations,
  bins: FrameBins,
  settled: SettledHeights,
  whole: WholeFit,
  motion: SettledMotion,
  smoothed: SmoothedMotion,
  turning: Float64Array,
): FrameMotion {
  const { timeS, turnDeg, azimuthsDeg } = observations;
  const frames = timeS.length;
  const azimuths = azimuthsDeg.length;
  const knots = motionAtBins(whole, smoothed, turning);
  const rockingMm = new Float32Array(2 * frames).fill(NaN);
  const offsetDriftMm = new Float32Array(frames).fill(NaN);
  const residualMm = new Float32Array(frames * azimuths).fill(NaN);
  const frameWeight = new Float32Array(frames);
  const value = new Float64Array(3);
  let squares = 0;
  let moved = 0;
  let effective = 0;
  let heights = 0;
  let bin = 0;
  const c = whole.coefficients;
  const constants = c.length - 2 - 3 - HIGHER_WAVES;
  const a1 = c[c.length - 2];
  const b1 = c[c.length - 1];
  for (let f = 0; f < frames; f++) {
    if (!Number.isFinite(turnDeg[f])) continue;
    while (bin < bins.count - 2 && whole.series.timeS[bin + 1] < timeS[f]) bin++;
    const own = bins.binOfFrame[f];
    if (own >= 0) {
      frameWeight[f] =
        motion.verdicts.weight[own] === 0
          ? 0
          : Math.min(motion.verdicts.weight[own], settled.weights.frameAgreement[f]);
      effective += frameWeight[f];
    }
    if (!interpolate(whole.series.timeS, knots, bin, timeS[f], value)) continue;
    const turn = turnDeg[f] * RAD_PER_DEG;
    const ct = Math.cos(turn);
    const st = Math.sin(turn);
    const rock0 = value[1] - (a1 * ct - b1 * st);
    const rock90 = value[2] - (a1 * st + b1 * ct);
    rockingMm[2 * f] = rock0;
    rockingMm[2 * f + 1] = rock90;
    offsetDriftMm[f] = value[0];
    squares += (rock0 * rock0 + rock90 * rock90) / 2;
    moved++;
    for (let a = 0; a < azimuths; a++) {
      const at = f * azimuths + a;
      if (!isUsable(observations.heightMm[at], observations.standardErrorMm[at])) continue;
      heights += own >= 0 ? 1 : 0;
      const ca = bins.cosAzimuth[a];
      const sa = bins.sinAzimuth[a];
      const cb = ca * ct + sa * st;
      const sb = sa * ct - ca * st;
      const tilt = (c[1] + value[1]) * ca + (c[2] + value[2]) * sa;
      const constant = constants > 0 ? c[3 + HIGHER_WAVES + a] : 0;
      residualMm[at] =
        observations.heightMm[at] - c[0] - value[0] - tilt - constant - higherWave(c, cb, sb);
    }
  }
  return {
    rockingMm,
    offsetDriftMm,
    residualMm,
    frameWeight,
    rmsMm: moved > 0 ? Math.sqrt(squares / moved) : 0,
    counts: { frames: bins.usedFrames, heights, effectiveFrames: effective },
  };
}

function higherWave(c: Float64Array, cb: number, sb: number): number {
  const c2 = 2 * cb * cb - 1;
  const s2 = 2 * sb * cb;
  const c3 = 2 * cb * c2 - cb;
  const s3 = 2 * cb * s2 - sb;
  const c4 = 2 * cb * c3 - c2;
  const s4 = 2 * cb * s3 - s2;
  return c[3] * c2 + c[4] * s2 + c[5] * c3 + c[6] * s3 + c[7] * c4 + c[8] * s4;
}

/** The state at each bin with the wheel's own tilt added: all beyond the stand's; STATE numbers a bin. */
function motionAtBins(
  whole: WholeFit,
  smoothed: SmoothedMotion,
  turning: Float64Array,
): Float64Array {
  const c = whole.coefficients;
  const a1 = c[c.length - 2];
  const b1 = c[c.length - 1];
  const knots = Float64Array.from(smoothed.state);
  for (let b = 0; b < whole.series.count; b++) {
    const [zr, zi, vr, vi] = turning.subarray(4 * b, 4 * b + 4);
    knots[b * STATE] += a1 * zr - b1 * zi;
    knots[b * STATE + 1] += a1 * zi + b1 * zr;
    knots[b * STATE + 2] += a1 * vr - b1 * vi;
    knots[b * STATE + 3] += a1 * vi + b1 * vr;
  }
  return knots;
}

/** Offset drift and tilt (0°, 90°) between two bins: straight and cubic. */
function interpolate(
  timeS: Float64Array,
  knots: Float64Array,
  bin: number,
  atS: number,
  out: Float64Array,
): boolean {
  const step = timeS[bin + 1] - timeS[bin];
  if (step > LONGEST_BRIDGE_S) return false;
  const u = (atS - timeS[bin]) / step;
  // Frames of the first and last bin lie up to half a bin outside the knots.
  if (u < -1 || u > 2) return false;
  const p = bin * STATE;
  const q = p + STATE;
  const h10 = u * (1 - u) * (1 - u) * step;
  const h11 = u * u * (u - 1) * step;
  const h01 = u * u * (3 - 2 * u);
  for (let i = 0; i < 2; i++) {
    out[1 + i] =
      (1 - h01) * knots[p + i] +
      h01 * knots[q + i] +
      h10 * knots[p + 2 + i] +
      h11 * knots[q + 2 + i];
  }
  out[0] = (1 - u) * knots[p + 4] + u * knots[q + 4];
  return true;
}
