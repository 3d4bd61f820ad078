import type { BinPlanes } from './binPlanes.ts';
import { WAVE_PRIOR_SD_MM } from './higherWaves.ts';
import { fullPlanes, scaleToUnitNoise, type BinVerdicts, type PlaneSeries } from './planeSeries.ts';
import { whitenColumns } from './whitenedColumns.ts';
import type { RockingParameters } from './rockingMotion.ts';
import { solveSymmetric } from './smallMatrix.ts';
import { COMMON_UNKNOWNS, HIGHER_WAVES } from './tiltFit.ts';

/**
 * All unknowns at once by generalised least squares: planes through the filter, deviations from
 * them plainly, priors on higher waves and azimuth constants.
 */
export interface WholeFit {
  readonly series: PlaneSeries;
  /** In the order of the series' columns 1 …, then a₁, b₁. */
  readonly coefficients: Float64Array;
  /** 11×11 in the order of `TiltFit.covarianceMm2`. */
  readonly covariance: Float64Array;
}

/** Place of each of the common unknowns among the coefficients, given how many there are. */
function placesOfCommon(total: number): number[] {
  const higher = Array.from({ length: HIGHER_WAVES }, (_, k) => 3 + k);
  return [0, 1, 2, total - 2, total - 1, ...higher];
}

/**
 * @param deviationScale standard deviation of the deviations over their standard errors, any
 *   correlation counted in.
 */
export function fitWhole(
  planes: BinPlanes,
  verdicts: BinVerdicts,
  offsetSdMm: number,
  motion: RockingParameters,
  spinRatio: number,
  biasSdMm: number,
  deviationScale: number,
): WholeFit | null {
  const raw = fullPlanes(planes, biasSdMm > 0);
  const series = scaleToUnitNoise(raw, verdicts, offsetSdMm);
  const { products } = whitenColumns(series, motion, spinRatio);
  const width = series.columnCount + 2;
  const n = width - 1;
  const normal = new Float64Array(n * n);
  const right = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    right[i] = products[(i + 1) * width];
    for (let j = 0; j <= i; j++) {
      normal[i * n + j] = products[(i + 1) * width + j + 1];
      normal[j * n + i] = normal[i * n + j];
    }
  }
  const carried = series.columnCount - 4;
  const perVariance = 1 / deviationScale ** 2;
  const d = planes.columnCount;
  for (let i = 0; i < carried; i++) {
    right[3 + i] += planes.deviations[(i + 1) * d] * perVariance;
    for (let j = 0; j < carried; j++) {
      normal[(3 + i) * n + 3 + j] += planes.deviations[(i + 1) * d + j + 1] * perVariance;
    }
    normal[(3 + i) * n + 3 + i] += 1 / (i < HIGHER_WAVES ? WAVE_PRIOR_SD_MM : biasSdMm) ** 2;
  }
  const solved = solveSymmetric(normal, right, n);
  if (solved === null) return null;
  const places = placesOfCommon(n);
  const covariance = new Float64Array(COMMON_UNKNOWNS ** 2);
  places.forEach((row, i) => {
    places.forEach((column, j) => {
      covariance[i * COMMON_UNKNOWNS + j] = solved.inverse[row * n + column];
    });
  });
  return { series, coefficients: solved.solution, covariance };
}
