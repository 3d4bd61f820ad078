/**
 * Shift along the columns between two tread textures by normalised correlation over all strips.
 */
export interface TextureShift {
  /** Columns that the tread has moved left (clockwise turn), fractional. */
  readonly leftColumns: number;
  readonly correlation: number;
  /** Correlation of the best rival at least {@link RIVAL_COLUMNS} away, or −1. */
  readonly rivalCorrelation: number;
}

/** One tread pitch is about 25 columns; rivals nearer than this share the same peak. */
const RIVAL_COLUMNS = 8;
/** Part of the columns that must overlap for a match. */
const MIN_OVERLAP = 0.25;
/** Part of all cells that both views must know. */
const MIN_KNOWN = 0.08;

export function textureShift(
  before: Int8Array,
  after: Int8Array,
  columns: number,
  search: { readonly centreColumns: number; readonly reachColumns: number },
): TextureShift | null {
  const centre = Math.round(search.centreColumns);
  const reach = Math.max(2, Math.round(search.reachColumns));
  const scores = new Float64Array(2 * reach + 1);
  let best = -2;
  let bestAt = 0;
  for (let k = -reach; k <= reach; k++) {
    const score = correlationAtShift(before, after, columns, centre + k);
    scores[k + reach] = score;
    if (score > best) {
      best = score;
      bestAt = k;
    }
  }
  if (best <= 0 || Math.abs(bestAt) === reach) return null;
  const lower = scores[bestAt + reach - 1];
  const upper = scores[bestAt + reach + 1];
  const curvature = 2 * best - lower - upper;
  if (!(curvature > 1e-9)) return null;
  let rival = -1;
  for (let k = -reach; k <= reach; k++) {
    if (Math.abs(k - bestAt) >= RIVAL_COLUMNS && scores[k + reach] > rival)
      rival = scores[k + reach];
  }
  return {
    leftColumns: centre + bestAt + (upper - lower) / (2 * curvature),
    correlation: best,
    rivalCorrelation: rival,
  };
}

/**
 * Correlation of `before` at column c with `after` at column c − left, over the cells of the
 * overlap that both know (zero stands for unknown): what the laser's glow hides in one view must
 * not count against the other.
 */
export function correlationAtShift(
  before: Int8Array,
  after: Int8Array,
  columns: number,
  left: number,
): number {
  const first = Math.max(0, left);
  const last = Math.min(columns, columns + left);
  if (last - first < MIN_OVERLAP * columns) return -2;
  const strips = before.length / columns;
  let aa = 0;
  let bb = 0;
  let ab = 0;
  let known = 0;
  for (let s = 0; s < strips; s++) {
    const base = s * columns;
    for (let c = first; c < last; c++) {
      const a = before[base + c];
      const b = after[base + c - left];
      if (a === 0 || b === 0) continue;
      known++;
      aa += a * a;
      bb += b * b;
      ab += a * b;
    }
  }
  if (known < MIN_KNOWN * before.length) return -2;
  return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : -2;
}
