import { textureCorrelations } from './textureCorrelation.ts';
import type { TextureView } from './textureView.ts';

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

export function textureShift(
  before: TextureView,
  after: TextureView,
  search: { readonly centreColumns: number; readonly reachColumns: number },
): TextureShift | null {
  const centre = Math.round(search.centreColumns);
  const reach = Math.max(2, Math.round(search.reachColumns));
  const scores = textureCorrelations(before, after, centre - reach, 2 * reach + 1);
  let bestAt = 0;
  for (let k = 1; k < scores.length; k++) if (scores[k] > scores[bestAt]) bestAt = k;
  const best = scores[bestAt];
  if (best <= 0 || bestAt === 0 || bestAt === 2 * reach) return null;
  const lower = scores[bestAt - 1];
  const upper = scores[bestAt + 1];
  const curvature = 2 * best - lower - upper;
  if (!(curvature > 1e-9)) return null;
  let rival = -1;
  for (let k = 0; k < scores.length; k++) {
    if (Math.abs(k - bestAt) >= RIVAL_COLUMNS && scores[k] > rival) rival = scores[k];
  }
  return {
    leftColumns: centre + bestAt - reach + (upper - lower) / (2 * curvature),
    correlation: best,
    rivalCorrelation: rival,
  };
}
