import { failed, succeeded } from '../contract/outcome.ts';
import {
  divideAsComplex,
  multiplyAsComplex,
  scaleVector,
  subtractVectors,
  vectorAmount,
  type PlaneVector,
} from '../quantities/vector.ts';
import type { BalanceOutcome } from './failures.ts';
import { rejectVectors } from './inputs.ts';

export interface TrialCorrection {
  /** Correction with the trial weight taken off again, in the trial's own unit. */
  readonly trialRemoved: PlaneVector;
  /** Correction with the trial weight left on: leaves the same. */
  readonly trialLeftOn: PlaneVector;
}

/** Change of the response under this share of it is no answer to the trial. */
const CHANGE_MIN_SHARE = 1e-9;

/**
 * One-plane trial-mass method without any model: C = −V₀·T/(V₁ − V₀) as complex numbers, with the
 * trial removed; C − T with it left on. V₀ and V₁ are the responses (edge rise, vibration) before and
 * with the trial T; any one frame and sense serves for all of them.
 * Source: influence-coefficient method as in Rao, Mechanical Vibrations, ch. 9.
 */
export function trialCorrection(
  before: PlaneVector,
  withTrial: PlaneVector,
  trial: PlaneVector,
): BalanceOutcome<TrialCorrection> {
  const bad = rejectVectors({ before, withTrial, trial });
  if (bad) return bad;
  const change = subtractVectors(withTrial, before);
  const scale = Math.max(vectorAmount(before), vectorAmount(withTrial));
  if (vectorAmount(change) <= Math.max(CHANGE_MIN_SHARE * scale, CHANGE_MIN_SHARE)) {
    return failed('trial-too-small', {});
  }
  const trialRemoved = scaleVector(multiplyAsComplex(divideAsComplex(before, change), trial), -1);
  return succeeded({ trialRemoved, trialLeftOn: subtractVectors(trialRemoved, trial) });
}
