import { succeeded } from '../contract/outcome.ts';
import type { Weight } from '../contract/reading.ts';
import { wrapTurnDeg } from '../quantities/angle.ts';
import {
  addVectors,
  vectorAmount,
  vectorAngleDeg,
  vectorFromPolar,
  type PlaneVector,
} from '../quantities/vector.ts';
import type { BalanceOutcome } from './failures.ts';
import { POSITIVE, rejectNumbers, rejectVectors } from './inputs.ts';

export interface Correction {
  readonly weights: readonly Weight[];
  /** What remains when the weights are on: U + Σ weights, g·mm, pointing at its heavy spot. */
  readonly residualGmm: PlaneVector;
  readonly residualAmountGmm: number;
}

export interface OneStepStock {
  /** Smallest piece, g. */
  readonly weightStepG: number;
  /** r_w, mm. */
  readonly weightRadiusMm: number;
}

/**
 * The plainest correction: whole steps of one weight at the light spot, as many as bring the mass
 * nearest to |U|/r_w; none where half a step or less is missing. What is left is at most half a
 * step at the radius. The full choice over a stock and its places is in `weightChoice.ts`.
 */
export function correctionAtLightSpot(
  unbalanceGmm: PlaneVector,
  stock: OneStepStock,
): BalanceOutcome<Correction> {
  const bad =
    rejectVectors({ unbalanceGmm }) ??
    rejectNumbers({
      weightStepG: [stock.weightStepG, POSITIVE],
      weightRadiusMm: [stock.weightRadiusMm, POSITIVE],
    });
  if (bad) return bad;
  const wantedG = vectorAmount(unbalanceGmm) / stock.weightRadiusMm;
  // Ties (exactly half a step) go to fewer pieces.
  const steps = Math.ceil(wantedG / stock.weightStepG - 0.5);
  if (steps <= 0) {
    const residualAmountGmm = vectorAmount(unbalanceGmm);
    return succeeded({ weights: [], residualGmm: unbalanceGmm, residualAmountGmm });
  }
  const weight: Weight = {
    massG: steps * stock.weightStepG,
    radiusMm: stock.weightRadiusMm,
    angleDeg: wrapTurnDeg(vectorAngleDeg(unbalanceGmm) + 180),
  };
  const residualGmm = addVectors(
    unbalanceGmm,
    vectorFromPolar(weight.massG * weight.radiusMm, weight.angleDeg),
  );
  return succeeded({
    weights: [weight],
    residualGmm,
    residualAmountGmm: vectorAmount(residualGmm),
  });
}
