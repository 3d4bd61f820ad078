import { succeeded } from '../contract/outcome.ts';
import { RAD_PER_DEG } from '../quantities/angle.ts';
import type { BalanceOutcome } from './failures.ts';
import { rejectNumbers, SIGNED } from './inputs.ts';

/** The edge's own shape: what goes round twice or more in a turn and so is no unbalance. */
export interface EdgeWave {
  /** One entry a wave, n = 2, 3, … */
  readonly waves: readonly { readonly timesRound: number; readonly peakToPeakMm: number }[];
  /** Highest less lowest point of all of them together. */
  readonly peakToPeakMm: number;
}

/** Sampling of the sum: at n ≤ 8 the peak is missed by less than 0.3 %. */
const SAMPLE_STEP_DEG = 1;

/**
 * Twice-round and higher waves of the edge from fitted coefficients: each has 2·√(a² + b²) from peak
 * to peak; their sum is sampled round the wheel.
 *
 * @param cosMm coefficients of cos nβ for n = 1, 2, …, mm (`SweepTrace.fit`); n = 1 is left out
 * @param sinMm the same for sin nβ; missing ones count as 0
 */
export function edgeWaveFromFit(
  cosMm: readonly number[],
  sinMm: readonly number[],
): BalanceOutcome<EdgeWave> {
  const count = Math.max(cosMm.length, sinMm.length);
  const terms: { timesRound: number; a: number; b: number }[] = [];
  for (let i = 1; i < count; i += 1) {
    const a = cosMm[i] ?? 0;
    const b = sinMm[i] ?? 0;
    const bad = rejectNumbers({ [`cosMm ${i + 1}`]: [a, SIGNED], [`sinMm ${i + 1}`]: [b, SIGNED] });
    if (bad) return bad;
    terms.push({ timesRound: i + 1, a, b });
  }
  let highest = -Infinity;
  let lowest = Infinity;
  for (let angleDeg = 0; angleDeg < 360; angleDeg += SAMPLE_STEP_DEG) {
    const height = terms.reduce((sum, { timesRound, a, b }) => {
      const angle = timesRound * angleDeg * RAD_PER_DEG;
      return sum + a * Math.cos(angle) + b * Math.sin(angle);
    }, 0);
    highest = Math.max(highest, height);
    lowest = Math.min(lowest, height);
  }
  return succeeded({
    waves: terms.map(({ timesRound, a, b }) => ({
      timesRound,
      peakToPeakMm: 2 * Math.hypot(a, b),
    })),
    peakToPeakMm: highest - lowest,
  });
}
