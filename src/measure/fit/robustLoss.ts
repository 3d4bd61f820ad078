/**
 * Losses for residuals z in units of their standard deviation, and the weights by which squares
 * stand in for them (iteratively reweighted least squares): w(z) = ρ′(z)/(2z), 0 < w ≤ 1.
 *
 * squares ρ = z²;
 * Huber   ρ = z² up to the tuning z₀, then 2z₀|z| − z₀²  (Huber 1964);
 * Cauchy  ρ = z₀²·ln(1 + (z/z₀)²).
 * The tunings with 95 % efficiency on Gaussian errors are 1.345 and 2.385 (common practice).
 */
export type RobustLoss =
  | { readonly kind: 'squares' }
  | { readonly kind: 'huber' | 'cauchy'; readonly tuning?: number };

const HUBER_TUNING = 1.345;
const CAUCHY_TUNING = 2.385;

export function lossOf(loss: RobustLoss, z: number): number {
  if (loss.kind === 'squares') return z * z;
  if (loss.kind === 'huber') {
    const limit = loss.tuning ?? HUBER_TUNING;
    const size = Math.abs(z);
    return size <= limit ? z * z : 2 * limit * size - limit * limit;
  }
  const limit = loss.tuning ?? CAUCHY_TUNING;
  return limit * limit * Math.log1p((z / limit) ** 2);
}

export function lossWeight(loss: RobustLoss, z: number): number {
  if (loss.kind === 'squares') return 1;
  if (loss.kind === 'huber') {
    const limit = loss.tuning ?? HUBER_TUNING;
    const size = Math.abs(z);
    return size <= limit ? 1 : limit / size;
  }
  const limit = loss.tuning ?? CAUCHY_TUNING;
  return 1 / (1 + (z / limit) ** 2);
}
