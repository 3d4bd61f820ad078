import type { AcceptedReading } from '../contract/reading.ts';
import { RAD_PER_DEG } from '../quantities/angle.ts';

/** Standard error of the amount: √(uᵀ·C·u), u toward the heavy spot, g·mm. */
export function amountSdGmm({ unbalance }: AcceptedReading): number {
  const a = unbalance.heavySpotDeg * RAD_PER_DEG;
  const [[c00, c01], [, c11]] = unbalance.covarianceGmm2;
  return Math.sqrt(
    Math.cos(a) ** 2 * c00 + 2 * Math.cos(a) * Math.sin(a) * c01 + Math.sin(a) ** 2 * c11,
  );
}

/**
 * Along the widest axis of the covariance: for what is nearly nothing the heavy spot's direction is
 * a matter of chance, and so is the error along it.
 */
export function largestSdGmm({ unbalance }: AcceptedReading): number {
  const [[c00, c01], [, c11]] = unbalance.covarianceGmm2;
  return Math.sqrt((c00 + c11) / 2 + Math.hypot((c00 - c11) / 2, c01));
}
