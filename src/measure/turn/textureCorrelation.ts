import { NEXT_SHIFT, PADDING, type TextureView } from './textureView.ts';

/** Part of the columns that must overlap for a match. */
const MIN_OVERLAP = 0.25;
/** Part of all cells that both views must know. */
const MIN_KNOWN = 0.08;

/**
 * Correlation of `before` at column c with `after` at column c − left, for each `left` of `count`
 * from `firstLeft` on, over the cells of the overlap that both know: what the laser's glow hides in
 * one view must not count against the other. −2 where too little is common.
 *
 *     Σ a·b / √(Σ a² · Σ b²), all sums over the cells known in both
 *
 * @param every only each so many of the shifts is asked for, from the first on; the others are −2
 */
export function textureCorrelations(
  before: TextureView,
  after: TextureView,
  firstLeft: number,
  count: number,
  every = 1,
): Float64Array {
  const { columns, values } = before;
  if (columns !== after.columns || values.length !== after.values.length) {
    throw new RangeError(
      `textures of ${columns} and ${after.columns} columns cannot be laid over each other`,
    );
  }
  const scores = new Float64Array(count).fill(-2);
  const products = new Float64Array(PADDING);
  for (let from = 0; from < count; from += PADDING) {
    const left = firstLeft + from;
    if (left + PADDING <= -columns || left >= columns) continue;
    sumProducts(before, after, left, products);
    for (let k = 0; k < Math.min(PADDING, count - from); k++) {
      if ((from + k) % every !== 0) continue;
      scores[from + k] = correlationOf(before, after, left + k, products[k]);
    }
  }
  return scores;
}

/** Σ a·b over all strips for the shifts left … left + 7. Unknown cells are zero and add nothing. */
function sumProducts(
  before: TextureView,
  after: TextureView,
  left: number,
  products: Float64Array,
): void {
  const { columns, strips, values } = before;
  const { pairs } = after;
  const first = Math.max(0, left);
  const last = Math.min(columns, columns + left + PADDING - 1);
  products.fill(0);
  for (let s = 0; s < strips; s++) {
    let first2 = 0;
    let second2 = 0;
    let third2 = 0;
    let fourth2 = 0;
    let at = s * (columns + 2 * PADDING) + PADDING + first - left;
    for (let i = s * columns + first; i < s * columns + last; i++, at++) {
      const value = values[i];
      first2 += value * pairs[at];
      second2 += value * pairs[at - 2];
      third2 += value * pairs[at - 4];
      fourth2 += value * pairs[at - 6];
    }
    addBoth(products, 0, first2);
    addBoth(products, 2, second2);
    addBoth(products, 4, third2);
    addBoth(products, 6, fourth2);
  }
}

/** Takes the two sums that one number carries apart again. */
function addBoth(products: Float64Array, at: number, both: number): void {
  const next = Math.round(both / NEXT_SHIFT);
  products[at] += both - next * NEXT_SHIFT;
  products[at + 1] += next;
}

function correlationOf(
  before: TextureView,
  after: TextureView,
  left: number,
  products: number,
): number {
  const { columns, strips } = before;
  const first = Math.max(0, left);
  const last = Math.min(columns, columns + left);
  if (last - first < MIN_OVERLAP * columns) return -2;
  let squaresBefore = 0;
  let squaresAfter = 0;
  let known = 0;
  for (let s = 0; s < strips; s++) {
    squaresBefore += squaresKnownIn(before, after, s, first, last, -left);
    squaresAfter += squaresKnownIn(after, before, s, first - left, last - left, left);
    known += last - first - unknownInEither(before, after, s, first, last, left);
  }
  if (known < MIN_KNOWN * before.values.length) return -2;
  return squaresBefore > 0 && squaresAfter > 0
    ? products / Math.sqrt(squaresBefore * squaresAfter)
    : -2;
}

/** Σ of `view`'s squares over columns first … last − 1 of a strip that `other`, `way` columns on, knows. */
function squaresKnownIn(
  view: TextureView,
  other: TextureView,
  strip: number,
  first: number,
  last: number,
  way: number,
): number {
  const { squaresBefore, columns } = view;
  const { unknownRuns, runsOfStrip } = other;
  const base = strip * (columns + 1);
  let sum = squaresBefore[base + last] - squaresBefore[base + first];
  const end = runsOfStrip[strip + 1];
  for (let r = runsOfStrip[strip]; r < end; r += 2) {
    const from = Math.max(first, unknownRuns[r] - way);
    const to = Math.min(last, unknownRuns[r + 1] - way);
    if (from < to) sum -= squaresBefore[base + to] - squaresBefore[base + from];
  }
  return sum;
}

/** Columns first … last − 1 of a strip of `before` that it or `after` does not know. */
function unknownInEither(
  before: TextureView,
  after: TextureView,
  strip: number,
  first: number,
  last: number,
  left: number,
): number {
  const a = before.unknownRuns;
  const b = after.unknownRuns;
  const endA = before.runsOfStrip[strip + 1];
  const endB = after.runsOfStrip[strip + 1];
  let i = before.runsOfStrip[strip];
  let k = after.runsOfStrip[strip];
  let covered = first;
  let unknown = 0;
  while (i < endA || k < endB) {
    // Whichever run begins first; what reaches back under one that was counted is not counted twice.
    const takeA = k >= endB || (i < endA && a[i] <= b[k] + left);
    const from = Math.max(covered, takeA ? a[i] : b[k] + left);
    const to = Math.min(last, takeA ? a[i + 1] : b[k + 1] + left);
    if (to > from) {
      unknown += to - from;
      covered = to;
    }
    if (takeA) i += 2;
    else k += 2;
  }
  return unknown;
}
