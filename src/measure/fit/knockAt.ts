import { KNOCK_SD_MM } from './motionStep.ts';
import { STATE } from './rockingState.ts';

/**
 * Whether the wheel was knocked on the way to a bin: a jump of the speed in the middle of that step, from
 * score r and information N of the state just before the bin (de Jong & Penzer 1998, from memory).
 *
 * @param isKnown whether the motion already has a knock there: then it is asked what without
 * @returns the jump's squared size in standard deviations, two freedoms, and by how much −2·log
 *   likelihood is lower with a knock than without
 */
export function knockAt(
  r: Float64Array,
  n: Float64Array,
  stepS: number,
  rateRadPerS: number,
  isKnown: boolean,
): { squared: number; gain: number } {
  const sign = isKnown ? -1 : 1;
  const variance = sign * (KNOCK_SD_MM * rateRadPerS) ** 2;
  const half = stepS / 2;
  const of = (i: number, j: number): number =>
    n[(i + 2) * STATE + j + 2] +
    half * (n[i * STATE + j + 2] + n[(i + 2) * STATE + j]) +
    half * half * n[i * STATE + j];
  const score0 = r[2] + half * r[0];
  const score1 = r[3] + half * r[1];
  const [a, b, c] = [of(0, 0) + 1 / variance, of(0, 1), of(1, 1) + 1 / variance];
  const determinant = a * c - b * b;
  const squared =
    (c * score0 * score0 - 2 * b * score0 * score1 + a * score1 * score1) / determinant;
  return { squared, gain: sign * (squared - Math.log(determinant * variance * variance)) };
}
