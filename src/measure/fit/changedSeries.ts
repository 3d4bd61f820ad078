import type { PlaneSeries } from './planeSeries.ts';
import type { RockingParameters } from './rockingMotion.ts';
import { transitionsOf, turningOf } from './rockingState.ts';

/**
 * The series with two unknowns more, its last columns: what the wheel's own tilt changes by at a bin
 * (components at wheel angle 0° and 90°), with the swing that this sets off.
 */
export function withChangeAt(
  series: PlaneSeries,
  motion: RockingParameters,
  spinRatio: number,
  bin: number,
): PlaneSeries {
  const { count, columnCount: n, root } = series;
  const width = n + 2;
  const columns = new Float64Array(count * 3 * width);
  for (let row = 0; row < count * 3; row++) {
    for (let k = 0; k < n; k++) columns[row * width + k] = series.columns[row * n + k];
  }
  const transitions = transitionsOf(series, motion, spinRatio);
  const turning = turningOf(series, motion, spinRatio, transitions, bin);
  for (let b = bin; b < count; b++) {
    const [re, im] = [turning[4 * b], turning[4 * b + 1]];
    const [l11, l21, l22] = [root[b * 6 + 2], root[b * 6 + 4], root[b * 6 + 5]];
    const at = (b * 3 + 1) * width + n;
    columns[at] = l11 * re;
    columns[at + 1] = -l11 * im;
    columns[at + width] = l21 * re + l22 * im;
    columns[at + width + 1] = l22 * re - l21 * im;
  }
  return { ...series, columnCount: width, columns };
}

/** The two unknowns of `withChangeAt` among a fit's coefficients. */
export function coefficientsOfChange(
  { columnCount }: PlaneSeries,
  coefficients: Float64Array,
): [number, number] {
  return [coefficients[columnCount - 3], coefficients[columnCount - 2]];
}
