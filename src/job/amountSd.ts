import type { AcceptedReading } from '../contract/reading.ts';

/**
 * Standard error of the amount, g·mm, along the widest axis of the covariance: for what is nearly
 * nothing the heavy spot's direction is a matter of chance, and so is the error along it.
 */
export function largestSdGmm({ unbalance }: AcceptedReading): number {
  const [[c00, c01], [, c11]] = unbalance.covarianceGmm2;
  return Math.sqrt((c00 + c11) / 2 + Math.hypot((c00 - c11) / 2, c01));
}
