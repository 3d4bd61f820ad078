import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { solveSymmetric } from '../fit/smallMatrix.ts';

/**
 * What the wheel's creep says of the stand's lean. A lean that stays in the room makes the turning
 * wheel creep along it (see `creepWay`), seen from above as heights that drift with the turn, by
 * the slope of the line of sight at each azimuth. If the creep taken out was that of a wrong lean,
 * a drift in proportion to the turn is left over: from it the lean's correction.
 *
 * Least squares with a constant for each azimuth and the once- and twice-round waves beside it,
 * and the belief that the stand's lean was right to `leanSd`.
 */
export interface CreepEvidence {
  /** κ of each azimuth and its cosine and sine; length A. */
  readonly slopes: Float64Array;
  readonly cos: Float64Array;
  readonly sin: Float64Array;
  readonly azimuthsDeg: Float64Array;
  /** Heights with the guessed creep taken out, F × A, NaN where not seen. */
  readonly heightMm: Float32Array;
  readonly turnDeg: Float64Array;
  readonly timeS: Float64Array;
  readonly ballRadiusMm: number;
  /** Standard deviation of the guessed lean, radians. */
  readonly leanSd: number;
}

/** Unknowns: waves n = 1, 2 and the lean's two corrections. */
const COMMON = 6;
/** Rocking and slow change make one independent sighting in so many seconds. */
const INDEPENDENT_S = 1.5;
/** Scatter that rocking leaves at least, mm: a still wheel's residual would be believed too far. */
const MIN_SCATTER_MM = 0.3;

export function standLeanFromCreep(evidence: CreepEvidence): { toward: number; across: number } {
  const { azimuthsDeg, heightMm, turnDeg, timeS } = evidence;
  const blocks = azimuthsDeg.length;
  const frames = turnDeg.length;
  const normal = new Float64Array(COMMON * COMMON);
  const right = new Float64Array(COMMON);
  const meanTurnDeg = turnDeg.reduce((sum, t) => sum + t, 0) / Math.max(1, frames);
  const row = new Float64Array(COMMON);
  let squares = 0;
  let count = 0;
  for (let b = 0; b < blocks; b++) {
    const mean = new Float64Array(COMMON);
    let meanHeight = 0;
    let n = 0;
    for (let i = 0; i < frames; i++) {
      const height = heightMm[i * blocks + b];
      if (height !== height) continue;
      fillRow(evidence, b, turnDeg[i], meanTurnDeg, row);
      for (let k = 0; k < COMMON; k++) mean[k] += row[k];
      meanHeight += height;
      n++;
    }
    if (n < 2) continue;
    // Taking each azimuth's mean off is the same as giving it a constant of its own.
    for (let i = 0; i < frames; i++) {
      const height = heightMm[i * blocks + b];
      if (height !== height) continue;
      fillRow(evidence, b, turnDeg[i], meanTurnDeg, row);
      const y = height - meanHeight / n;
      for (let k = 0; k < COMMON; k++) {
        const x = row[k] - mean[k] / n;
        right[k] += x * y;
        for (let l = 0; l < COMMON; l++) normal[k * COMMON + l] += x * (row[l] - mean[l] / n);
      }
      squares += y * y;
      count++;
    }
  }
  if (count < 10 * COMMON) return { toward: 0, across: 0 };
  const spanS = timeS[frames - 1] - timeS[0];
  const independent = Math.max(4, (2 * spanS) / INDEPENDENT_S);
  return believed(normal, right, squares, count, independent, evidence.leanSd);
}

/** Solves with the belief about the lean, the data weighed by their number of independent sightings. */
function believed(
  normal: Float64Array,
  right: Float64Array,
  squares: number,
  count: number,
  independent: number,
  leanSd: number,
): { toward: number; across: number } {
  const free = solveSymmetric(normal, right, COMMON)?.solution;
  if (!free) return { toward: 0, across: 0 };
  const explained = free.reduce((sum, x, k) => sum + x * right[k], 0);
  const variance = Math.max(MIN_SCATTER_MM ** 2, (squares - explained) / count);
  const weight = independent / count / variance;
  const a = normal.map((v) => v * weight);
  for (const k of [4, 5]) a[k * COMMON + k] += 1 / (leanSd * leanSd);
  const solution = solveSymmetric(
    a,
    right.map((v) => v * weight),
    COMMON,
  )?.solution;
  return solution ? { toward: solution[4], across: solution[5] } : { toward: 0, across: 0 };
}

/** Waves at the wheel angle, and how the height left over grows with a missing lean. */
function fillRow(
  e: CreepEvidence,
  b: number,
  turnDeg: number,
  meanTurnDeg: number,
  row: Float64Array,
): void {
  const beta = (e.azimuthsDeg[b] - turnDeg) * RAD_PER_DEG;
  const turned = (turnDeg - meanTurnDeg) * RAD_PER_DEG * e.ballRadiusMm * e.slopes[b];
  row[0] = Math.cos(beta);
  row[1] = Math.sin(beta);
  row[2] = Math.cos(2 * beta);
  row[3] = Math.sin(2 * beta);
  // Way along 90° grows by R·φ per lean toward 0, way along 0 falls by R·φ per lean toward 90; a
  // way outward that was not taken out looks lower.
  row[4] = -turned * e.sin[b];
  row[5] = turned * e.cos[b];
}
