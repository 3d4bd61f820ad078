/** Small statistics of a series that may have gaps (NaN). */
export interface Spread {
  readonly count: number;
  readonly mean: number;
  readonly rms: number;
  /** Standard deviation about the mean. */
  readonly sd: number;
}

export function spreadOf(values: ArrayLike<number>): Spread {
  let [count, sum, squares] = [0, 0, 0];
  for (let i = 0; i < values.length; i++) {
    const v = values[i];
    if (v !== v) continue;
    count++;
    sum += v;
    squares += v * v;
  }
  const mean = sum / count;
  const rms = Math.sqrt(squares / count);
  return { count, mean, rms, sd: Math.sqrt(Math.max(0, rms * rms - mean * mean)) };
}

/** Straight line y = atZero + slope·x through what is known of both. */
export function straightLine(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
): { atZero: number; slope: number } {
  let [n, sx, sy, sxx, sxy] = [0, 0, 0, 0, 0];
  for (let i = 0; i < x.length; i++) {
    if (y[i] !== y[i] || x[i] !== x[i]) continue;
    n++;
    sx += x[i];
    sy += y[i];
    sxx += x[i] * x[i];
    sxy += x[i] * y[i];
  }
  const slope = (sxy - (sx * sy) / n) / (sxx - (sx * sx) / n);
  return { atZero: (sy - slope * sx) / n, slope };
}
