import { RAD_PER_DEG } from '../../quantities/angle.ts';
import type { SweepTrace } from '../../contract/sweep.ts';

/** One point of a curve round the wheel. */
export interface TracePoint {
  readonly angleDeg: number;
  readonly valueMm: number;
}

/** Step of the drawn curves, degrees: smooth to the eye up to four times round. */
const CURVE_STEP_DEG = 2;

/** Σ over n from `from` to `to` of cosMm[n−1]·cos nβ + sinMm[n−1]·sin nβ, mm. */
function waveMm(fit: SweepTrace['fit'], angleDeg: number, from: number, to: number): number {
  let sum = 0;
  for (let n = from; n <= Math.min(to, fit.cosMm.length); n++) {
    const angle = n * angleDeg * RAD_PER_DEG;
    sum += fit.cosMm[n - 1]! * Math.cos(angle) + fit.sinMm[n - 1]! * Math.sin(angle);
  }
  return sum;
}

/** The once-round wave about its offset, from valve to valve. */
export function onceRoundCurve(fit: SweepTrace['fit']): readonly TracePoint[] {
  return curve((angleDeg) => fit.offsetMm + waveMm(fit, angleDeg, 1, 1));
}

/** What is left of the edge's own shape: twice round and more, about zero. */
export function ownShapeCurve(fit: SweepTrace['fit']): readonly TracePoint[] {
  return curve((angleDeg) => waveMm(fit, angleDeg, 2, fit.cosMm.length));
}

function curve(valueMm: (angleDeg: number) => number): readonly TracePoint[] {
  const count = 360 / CURVE_STEP_DEG + 1;
  return Array.from({ length: count }, (_, index) => {
    const angleDeg = index * CURVE_STEP_DEG;
    return { angleDeg, valueMm: valueMm(angleDeg) };
  });
}

/** Smallest range that is drawn, mm: a balanced wheel must not look like a rough sea. */
const SMALLEST_RANGE_MM = 1;

/** Lowest and highest of the values, widened to at least {@link SMALLEST_RANGE_MM}. */
export function drawnRangeMm(values: Iterable<number>): readonly [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  if (low > high) return [-SMALLEST_RANGE_MM / 2, SMALLEST_RANGE_MM / 2];
  const missing = Math.max(0, SMALLEST_RANGE_MM - (high - low)) / 2;
  return [low - missing, high + missing];
}

/** Root mean square of the finite values, mm; 0 when there are none. */
export function rmsMm(values: Float32Array): number {
  let sum = 0;
  let count = 0;
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    sum += value * value;
    count++;
  }
  return count === 0 ? 0 : Math.sqrt(sum / count);
}
