/**
 * How far a height profile has moved against its template, by normalised correlation: blind to
 * gain and offset of the light, and sharp where ribs meet grooves.
 */
export interface ProfileShift {
  /** Rows that the profile has moved up (toward row 0); fractional. */
  readonly upRows: number;
  /** Normalised correlation at the peak, −1 to 1. */
  readonly correlation: number;
  /** Standard error of `upRows` from the sharpness of the peak and what did not match, rows. */
  readonly standardErrorRows: number;
}

/** Rows that must be known in both profiles for a match to say anything. */
const MIN_COMMON_ROWS = 40;
/** Correlated neighbours: interpolation and blur leave about one independent row in three. */
const ROWS_PER_INDEPENDENT = 3;

/**
 * A peak as high as this has no higher one beside it: two shifts that both match so well would be one
 * profile that repeats within the search, and ribs stand farther apart than that.
 */
const SURE_CORRELATION = 0.85;

/**
 * Best shift of `profile` (at `profileStart`, `rows` long) against `template` over the template's
 * rows first..last, within `centre ± reach` rows. Null when too little is known or the best lies
 * on the border of the search.
 *
 * From the centre the way up leads to a peak in a few steps; only where that is not a sure one all
 * of the search is gone through.
 */
export function profileShift(
  template: Float32Array,
  templateStart: number,
  profile: Float32Array,
  profileStart: number,
  rows: number,
  window: { readonly first: number; readonly last: number },
  search: {
    readonly centreRows: number;
    readonly reachRows: number;
    /** Weight of each of the template's rows, at the template's own index; missing: all alike. */
    readonly rowWeight?: Float32Array | null;
  },
): ProfileShift | null {
  const centre = Math.round(search.centreRows);
  const reach = search.reachRows;
  const scores = new Float64Array(2 * reach + 1).fill(NaN);
  const common = new Float64Array(2 * reach + 1);
  const weight = search.rowWeight ?? null;
  const scoreAt = (k: number): number => {
    if (scores[k] === scores[k]) return scores[k];
    const up = centre + k - reach;
    const match = weight
      ? weightedCorrelation(
          template,
          templateStart,
          profile,
          profileStart,
          rows,
          window,
          up,
          weight,
        )
      : correlationAt(template, templateStart, profile, profileStart, rows, window, up);
    common[k] = match.common;
    return (scores[k] = match.correlation);
  };
  let best = peakNear(scoreAt, reach, 2 * reach);
  if (!(scoreAt(best) >= SURE_CORRELATION)) {
    best = 0;
    for (let k = 1; k <= 2 * reach; k++) if (scoreAt(k) > scoreAt(best)) best = k;
  }
  const correlation = scoreAt(best);
  if (correlation <= 0 || best === 0 || best === 2 * reach) return null;
  const before = scoreAt(best - 1);
  const after = scoreAt(best + 1);
  const curvature = 2 * correlation - before - after;
  if (!(curvature > 1e-6) || before < -1 || after < -1) return null;
  const independent = common[best] / ROWS_PER_INDEPENDENT;
  return {
    upRows: centre + best - reach + (after - before) / (2 * curvature),
    correlation,
    // Correlation falls as 1 − ½·curvature·x²; its own noise is that of the unmatched share.
    standardErrorRows: Math.sqrt(
      Math.max(1e-4, 1 - correlation * correlation) / (curvature * independent),
    ),
  };
}

/** The peak to which the way up leads from a start, within 0 … last. */
function peakNear(scoreAt: (k: number) => number, start: number, last: number): number {
  let at = start;
  // Each step leads higher, and what is no number is not higher: so it ends.
  for (;;) {
    const here = scoreAt(at);
    const lower = at > 0 ? scoreAt(at - 1) : -Infinity;
    const upper = at < last ? scoreAt(at + 1) : -Infinity;
    if (upper > here && upper > lower) at++;
    else if (lower > here) at--;
    else return at;
  }
}

function correlationAt(
  template: Float32Array,
  templateStart: number,
  profile: Float32Array,
  profileStart: number,
  rows: number,
  window: { readonly first: number; readonly last: number },
  upRows: number,
): { correlation: number; common: number } {
  let n = 0;
  let sa = 0;
  let sb = 0;
  let saa = 0;
  let sbb = 0;
  let sab = 0;
  const first = Math.max(window.first, upRows);
  const last = Math.min(window.last, rows - 1 + upRows);
  for (let r = first; r <= last; r++) {
    const a = template[templateStart + r];
    const b = profile[profileStart + r - upRows];
    const product = a * b;
    if (product !== product) continue;
    n++;
    sa += a;
    sb += b;
    saa += a * a;
    sbb += b * b;
    sab += product;
  }
  if (n < MIN_COMMON_ROWS) return { correlation: -2, common: n };
  return { correlation: correlationOfSums(n, sa, sb, saa, sbb, sab), common: n };
}

/** Pearson's correlation from sums over rows that weigh `n` together; −2 where either does not vary. */
function correlationOfSums(
  n: number,
  sa: number,
  sb: number,
  saa: number,
  sbb: number,
  sab: number,
): number {
  const va = saa - (sa * sa) / n;
  const vb = sbb - (sb * sb) / n;
  if (va <= 1e-9 || vb <= 1e-9) return -2;
  return (sab - (sa * sb) / n) / Math.sqrt(va * vb);
}

/**
 * The same with weighted rows; `common` is then the number of equal rows that would tell as much. −2 also
 * where no known row weighs.
 */
function weightedCorrelation(
  template: Float32Array,
  templateStart: number,
  profile: Float32Array,
  profileStart: number,
  rows: number,
  window: { readonly first: number; readonly last: number },
  upRows: number,
  rowWeight: Float32Array,
): { correlation: number; common: number } {
  let n = 0;
  let sw = 0;
  let sww = 0;
  let sa = 0;
  let sb = 0;
  let saa = 0;
  let sbb = 0;
  let sab = 0;
  const first = Math.max(window.first, upRows);
  const last = Math.min(window.last, rows - 1 + upRows);
  for (let r = first; r <= last; r++) {
    const a = template[templateStart + r];
    const b = profile[profileStart + r - upRows];
    const product = a * b;
    if (product !== product) continue;
    const w = rowWeight[templateStart + r];
    n++;
    sw += w;
    sww += w * w;
    sa += w * a;
    sb += w * b;
    saa += w * a * a;
    sbb += w * b * b;
    sab += w * product;
  }
  if (n < MIN_COMMON_ROWS || !(sw > 0)) return { correlation: -2, common: n };
  return {
    correlation: correlationOfSums(sw, sa, sb, saa, sbb, sab),
    common: (sw * sw) / sww,
  };
}
