import type { SweepObservations } from '../../contract/observations.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';

/**
 * Frames that can be used, gathered into short bins of time. A wheel rocks with 2 s or more, so a
 * tenth of a second loses nothing, and the filter runs on hundreds of steps, not thousands.
 */
export interface FrameBins {
  /** Bins. */
  readonly count: number;
  /** Bin of each frame, −1 where the frame is not used; length F. */
  readonly binOfFrame: Int32Array;
  readonly usedFrames: number;
  /** cos α, sin α for each azimuth. */
  readonly cosAzimuth: Float64Array;
  readonly sinAzimuth: Float64Array;
}

/**
 * Width of a bin, s. The shortest swing expected (2 s, split by fast turning to 1.7 s) loses
 * (π·0.1/1.7)²/6 = 0.6 % of its height in it.
 */
const BIN_WIDTH_S = 0.1;
/** A plane has three unknowns; two heights more than that show whether they agree. */
export const LEAST_HEIGHTS_PER_FRAME = 5;
/** Under this span of azimuth, degrees, offset and tilt of one frame cannot be told apart. */
const LEAST_AZIMUTH_SPAN_DEG = 20;

/** @throws RangeError when the arrays do not fit each other or times run backwards. */
export function binFrames(observations: SweepObservations): FrameBins {
  checkObservations(observations);
  const { azimuthsDeg, timeS, turnDeg, heightMm, standardErrorMm } = observations;
  const frames = timeS.length;
  const azimuths = azimuthsDeg.length;
  const binOfFrame = new Int32Array(frames).fill(-1);
  let count = 0;
  let usedFrames = 0;
  let binEndS = -Infinity;
  for (let f = 0; f < frames; f++) {
    if (!Number.isFinite(turnDeg[f]) || !Number.isFinite(timeS[f])) continue;
    let seen = 0;
    let lowest = Infinity;
    let highest = -Infinity;
    for (let a = 0; a < azimuths; a++) {
      const at = f * azimuths + a;
      if (!isUsable(heightMm[at], standardErrorMm[at])) continue;
      seen++;
      lowest = Math.min(lowest, azimuthsDeg[a]);
      highest = Math.max(highest, azimuthsDeg[a]);
    }
    if (seen < LEAST_HEIGHTS_PER_FRAME || highest - lowest < LEAST_AZIMUTH_SPAN_DEG) continue;
    if (timeS[f] >= binEndS) {
      count++;
      binEndS = timeS[f] + BIN_WIDTH_S;
    }
    binOfFrame[f] = count - 1;
    usedFrames++;
  }
  return {
    count,
    binOfFrame,
    usedFrames,
    cosAzimuth: azimuthsDeg.map((a) => Math.cos(a * RAD_PER_DEG)),
    sinAzimuth: azimuthsDeg.map((a) => Math.sin(a * RAD_PER_DEG)),
  };
}

export function isUsable(heightMm: number, standardErrorMm: number): boolean {
  return Math.abs(heightMm) < Infinity && standardErrorMm > 0 && standardErrorMm < Infinity;
}

function checkObservations(observations: SweepObservations): void {
  const { azimuthsDeg, timeS, turnDeg, heightMm, standardErrorMm } = observations;
  const cells = timeS.length * azimuthsDeg.length;
  if (turnDeg.length !== timeS.length) {
    throw new RangeError(`expected ${timeS.length} turns, got ${turnDeg.length}`);
  }
  if (heightMm.length !== cells || standardErrorMm.length !== cells) {
    throw new RangeError(
      `expected ${cells} heights and errors, got ${heightMm.length} and ${standardErrorMm.length}`,
    );
  }
  if (!(observations.azimuthBiasSdMm >= 0) || observations.azimuthBiasSdMm === Infinity) {
    throw new RangeError(`azimuthBiasSdMm must be 0 or more, got ${observations.azimuthBiasSdMm}`);
  }
  for (let f = 1; f < timeS.length; f++) {
    if (timeS[f] <= timeS[f - 1]) throw new RangeError(`time runs backwards at frame ${f}`);
  }
}
