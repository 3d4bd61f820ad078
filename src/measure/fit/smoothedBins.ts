import {
  scaleToUnitNoise,
  type BinVerdicts,
  type PlaneSeries,
  type RawPlanes,
} from './planeSeries.ts';
import { restrictedLikelihood } from './rockingEstimate.ts';
import type { RockingParameters } from './rockingMotion.ts';
import { smoothMotion, type SmoothedMotion } from './rockingSmoother.ts';
import { transitionsOf, turningOf } from './rockingState.ts';

/** What all bins together say of the motion at each; null where they do not part the unknowns. */
export function smoothedBins(
  raw: RawPlanes,
  verdicts: BinVerdicts,
  offsetSdMm: number,
  motion: RockingParameters,
  spinRatio: number,
): SmoothedMotion | null {
  const series = scaleToUnitNoise(raw, verdicts, offsetSdMm);
  const fit = restrictedLikelihood(series, motion, spinRatio);
  if (fit === null) return null;
  return smoothResidual(series, fit.coefficients, motion, spinRatio).smoothed;
}

/** Smooths what the coefficients (columns 1 …, then a₁, b₁) leave of a series. */
export function smoothResidual(
  series: PlaneSeries,
  coefficients: Float64Array,
  motion: RockingParameters,
  spinRatio: number,
): { smoothed: SmoothedMotion; turning: Float64Array } {
  const { count, columnCount, columns, root } = series;
  const transitions = transitionsOf(series, motion, spinRatio);
  const turning = turningOf(series, motion, spinRatio, transitions);
  const a1 = coefficients[columnCount - 1];
  const b1 = coefficients[columnCount];
  const residual = new Float64Array(count * 3);
  for (let b = 0; b < count; b++) {
    const tilt0 = a1 * turning[4 * b] - b1 * turning[4 * b + 1];
    const tilt90 = a1 * turning[4 * b + 1] + b1 * turning[4 * b];
    for (let r = 0; r < 3; r++) {
      const at = (b * 3 + r) * columnCount;
      let y = columns[at];
      for (let k = 1; k < columnCount; k++) y -= columns[at + k] * coefficients[k - 1];
      if (r === 1) y -= root[b * 6 + 2] * tilt0;
      if (r === 2) y -= root[b * 6 + 4] * tilt0 + root[b * 6 + 5] * tilt90;
      residual[b * 3 + r] = y;
    }
  }
  return { smoothed: smoothMotion(series, residual, motion, spinRatio), turning };
}
