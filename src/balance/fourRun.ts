import { failed, succeeded } from '../contract/outcome.ts';
import { scaleVector, vectorAmount, ZERO_VECTOR, type PlaneVector } from '../quantities/vector.ts';
import type { BalanceOutcome } from './failures.ts';
import { NOT_NEGATIVE, POSITIVE, rejectNumbers } from './inputs.ts';

export interface FourRunAmounts {
  /** Amount without a trial weight, any unit (mm of edge rise read by eye, say). */
  readonly bare: number;
  /** Amounts with the trial at 0°, 120° and 240°, same unit. */
  readonly at0: number;
  readonly at120: number;
  readonly at240: number;
  /** The trial's mass or moment; the answer comes in its unit. */
  readonly trial: number;
}

/** A trial whose effect is under this share of the amounts read cannot be divided by. */
const EFFECT_MIN_SHARE = 1e-6;
/** The two ways to the amount may differ by half before the readings contradict each other. */
const STORY_MIN_SHARE = 0.5;

/**
 * Balance without any angle read: four amounts, one bare and three with the trial at 0°, 120°, 240°.
 * V_i² = V₀² + T² + 2·V₀·T·cos(φ − θ_i), so T² = ΣV_i²/3 − V₀², and the unbalance is trial·V₀/T at φ.
 * A check for a stand without a camera: the largest height read by eye is such an amount.
 * Source: four-run method without phase (balancing literature, from memory); algebra above.
 *
 * @returns the unbalance vector in the trial's unit, pointing at the HEAVY spot; it goes off by 180°.
 */
export function unbalanceFromFourRuns(runs: FourRunAmounts): BalanceOutcome<PlaneVector> {
  const { bare, at0, at120, at240, trial } = runs;
  const bad = rejectNumbers({
    bare: [bare, NOT_NEGATIVE],
    at0: [at0, NOT_NEGATIVE],
    at120: [at120, NOT_NEGATIVE],
    at240: [at240, NOT_NEGATIVE],
    trial: [trial, POSITIVE],
  });
  if (bad) return bad;
  const scale = Math.max(bare, at0, at120, at240);
  const effectSquared = (at0 ** 2 + at120 ** 2 + at240 ** 2) / 3 - bare ** 2;
  if (!(effectSquared > (EFFECT_MIN_SHARE * scale) ** 2 && scale > EFFECT_MIN_SHARE)) {
    return failed('amounts-contradict', { effectSquared });
  }
  // (2/3)·Σ V_i²·cos θ_i = 2·V₀·T·cos φ, and likewise with the sine.
  const sum: PlaneVector = {
    along0: (2 / 3) * (at0 ** 2 - (at120 ** 2 + at240 ** 2) / 2),
    along90: (at120 ** 2 - at240 ** 2) / Math.sqrt(3),
  };
  const length = vectorAmount(sum);
  const effect = Math.sqrt(effectSquared);
  // Direction from the sum, amount from V₀/T: both must tell the same story.
  if (length < STORY_MIN_SHARE * 2 * bare * effect) return failed('amounts-contradict', { length });
  if (length === 0) return succeeded(ZERO_VECTOR);
  return succeeded(scaleVector(sum, (trial * bare) / effect / length));
}
