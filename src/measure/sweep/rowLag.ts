import { Z_STEP_MM } from '../band/treadBand.ts';
import { BESIDE_ROWS } from './besideEdgeTextures.ts';

/** By how many rows one block's texture (`besideEdgeTextures`) lies lower than another's. */

/** Heights at which two profiles are laid over each other, mm to either side. */
const LAG_MM = 6;
const LAGS = Math.round(LAG_MM / Z_STEP_MM);

/** Sums of products by lag, from which a correlation follows. */
export interface LagSums {
  readonly product: Float64Array;
  readonly first: Float64Array;
  readonly second: Float64Array;
}

/** Adds two blocks that show one place; `bendRows` is what the second is known to lie lower by. */
export function addBlocks(
  sums: LagSums,
  a: Float32Array,
  blockA: number,
  b: Float32Array,
  blockB: number,
  bendRows: number,
): void {
  const [startA, startB] = [blockA * BESIDE_ROWS, blockB * BESIDE_ROWS];
  for (let k = 0; k <= 2 * LAGS; k++) {
    const lag = k - LAGS + bendRows;
    let [product, first, second] = [0, 0, 0];
    for (let r = Math.max(0, -lag); r < Math.min(BESIDE_ROWS, BESIDE_ROWS - lag); r++) {
      const x = a[startA + r];
      const y = b[startB + r + lag];
      if (x === 0 || y === 0) continue;
      product += x * y;
      first += x * x;
      second += y * y;
    }
    sums.product[k] += product;
    sums.first[k] += first;
    sums.second[k] += second;
  }
}

export function sumOf([one, other]: readonly LagSums[]): LagSums {
  const added = (a: Float64Array, b: Float64Array) => a.map((value, k) => value + b[k]);
  return {
    product: added(one.product, other.product),
    first: added(one.first, other.first),
    second: added(one.second, other.second),
  };
}

export function createLagSums(): LagSums {
  const zeros = () => new Float64Array(2 * LAGS + 1);
  return { product: zeros(), first: zeros(), second: zeros() };
}

/** Where the correlation is highest, to a part of a row. */
export function peakOf({ product, first, second }: LagSums): {
  lagRows: number;
  correlation: number;
} {
  const score = product.map((p, k) => p / Math.sqrt(first[k] * second[k] || 1));
  const at = score.reduce((best, s, k) => (s > score[best] ? k : best), 0);
  const curvature = 2 * score[at] - (score[at - 1] ?? NaN) - (score[at + 1] ?? NaN);
  const part = curvature > 0 ? (score[at + 1] - score[at - 1]) / (2 * curvature) : 0;
  return { lagRows: at + part - LAGS, correlation: score[at] };
}
