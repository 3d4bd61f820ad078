import type { BinPlanes } from './binPlanes.ts';
import { solveSymmetric } from './smallMatrix.ts';
import { HIGHER_WAVES, LEAST_NOISE_SCALE } from './tiltFit.ts';

/**
 * Waves n = 2..4 and the azimuths' constants from what deviates from the bins' planes: ordinary
 * weighted least squares with priors, untouched by rocking.
 */
export interface HigherWaves {
  /** Waves (cosine, sine for n = 2..4), then one constant an azimuth; zeros for what is not fitted. */
  readonly known: Float64Array;
  /** Root of the deviations' chi-square per freedom: scatter over standard error, bin by bin. */
  readonly scale: number;
}

/** A tread edge that waves by more than 2 mm is damaged, not measured: prior sd of each, mm. */
export const WAVE_PRIOR_SD_MM = 2;

export function fitHigherWaves(planes: BinPlanes, biasSdMm: number, scale: number): HigherWaves {
  const width = planes.columnCount;
  const n = biasSdMm > 0 ? width - 1 : HIGHER_WAVES;
  const normal = new Float64Array(n * n);
  const right = new Float64Array(n);
  const perVariance = 1 / (scale * scale);
  for (let i = 0; i < n; i++) {
    right[i] = planes.deviations[(i + 1) * width] * perVariance;
    for (let j = 0; j < n; j++) {
      normal[i * n + j] = planes.deviations[(i + 1) * width + j + 1] * perVariance;
    }
    normal[i * n + i] += 1 / (i < HIGHER_WAVES ? WAVE_PRIOR_SD_MM : biasSdMm) ** 2;
  }
  const known = new Float64Array(width - 1);
  const solved = solveSymmetric(normal, right, n);
  if (solved === null) return { known, scale };
  known.set(solved.solution);
  const freedom = Math.max(planes.deviationFreedom - n, 1);
  const found = Math.sqrt(Math.max(deviationSquares(planes, known), 0) / freedom);
  return { known, scale: Math.max(found, LEAST_NOISE_SCALE) };
}

function deviationSquares(planes: BinPlanes, known: Float64Array): number {
  const width = planes.columnCount;
  let sum = 0;
  for (let i = 0; i < width; i++) {
    const ci = i === 0 ? 1 : -known[i - 1];
    for (let j = 0; j < width; j++) {
      sum += ci * (j === 0 ? 1 : -known[j - 1]) * planes.deviations[i * width + j];
    }
  }
  return sum;
}
