import { RAD_PER_DEG } from '../../quantities/angle.ts';
import type { Lean } from '../edge/leanFit.ts';

/**
 * Sideways way of the ball's centre over a sweep. A ball of radius R that rolls without slipping
 * under a lean T (components toward azimuth 0 and 90, high side positive) while the wheel turns at
 * Ω moves by dc/dt = −R·(dT/dt − Ω·T⊥), T⊥ being T turned a quarter clockwise: the low side leads
 * as the lean grows, and a lean that stays in the room makes the turning wheel creep along it.
 * A lean that turns with the wheel moves nothing. Source: rolling without slipping of a sphere on
 * a plane (any mechanics textbook).
 *
 * Returns the way along azimuth 0 and 90 for each frame, mm, zero mean.
 */
export function creepWay(
  leans: readonly Lean[],
  turnDeg: ArrayLike<number>,
  ballRadiusMm: number,
): { readonly toward: Float64Array; readonly across: Float64Array } {
  const n = leans.length;
  const toward = new Float64Array(n);
  const across = new Float64Array(n);
  for (let i = 1; i < n; i++) {
    const a = leans[i - 1];
    const b = leans[i];
    const turned = (turnDeg[i] - turnDeg[i - 1]) * RAD_PER_DEG;
    const meanToward = (a.toward + b.toward) / 2;
    const meanAcross = (a.across + b.across) / 2;
    toward[i] = toward[i - 1] - ballRadiusMm * (b.toward - a.toward + turned * meanAcross);
    across[i] = across[i - 1] - ballRadiusMm * (b.across - a.across - turned * meanToward);
  }
  takeOffMean(toward);
  takeOffMean(across);
  return { toward, across };
}

function takeOffMean(values: Float64Array): void {
  let sum = 0;
  for (const value of values) sum += value;
  for (let i = 0; i < values.length; i++) values[i] -= sum / values.length;
}
