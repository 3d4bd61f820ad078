/**
 * A tread texture made ready to be laid over others at many shifts: what a correlation needs of each
 * one alone is summed up once. Everything is a whole number, so nothing is rounded.
 */
export interface TextureView {
  readonly columns: number;
  readonly strips: number;
  /** The texture's values, strips × columns; 0 where unknown. */
  readonly values: Float64Array;
  /**
   * Each value and {@link NEXT_SHIFT} times the one before it, strips × (columns + 2·{@link PADDING}):
   * one multiplication then serves two shifts. Zeros beside each strip.
   */
  readonly pairs: Float64Array;
  /** Sum of the squares before each column, strips × (columns + 1). */
  readonly squaresBefore: Int32Array;
  /** First column and the one after the last of each run of unknown cells, strip after strip. */
  readonly unknownRuns: Int16Array;
  /** Index into `unknownRuns` at which each strip begins, and the end. */
  readonly runsOfStrip: Int32Array;
}

/**
 * Two sums share one number: the products of a strip come to 521 · 127² = 8.4 million, a quarter of
 * this way, and both together to 2⁴⁹, which a number holds to the last unit.
 */
export const NEXT_SHIFT = 2 ** 26;
/** As many shifts as are summed at once, so that none of them leaves the strip. */
export const PADDING = 8;

export function textureView(texture: Int8Array, columns: number): TextureView {
  const strips = texture.length / columns;
  const wide = columns + 2 * PADDING;
  const pairs = new Float64Array(strips * wide);
  const squaresBefore = new Int32Array(strips * (columns + 1));
  const runs: number[] = [];
  const runsOfStrip = new Int32Array(strips + 1);
  for (let s = 0; s < strips; s++) {
    let squares = 0;
    let last = 0;
    let unknownFrom = -1;
    for (let c = 0; c < columns; c++) {
      const value = texture[s * columns + c];
      pairs[s * wide + PADDING + c] = value + last * NEXT_SHIFT;
      last = value;
      squares += value * value;
      squaresBefore[s * (columns + 1) + c + 1] = squares;
      if (value === 0 && unknownFrom < 0) unknownFrom = c;
      if (value === 0 || unknownFrom < 0) continue;
      runs.push(unknownFrom, c);
      unknownFrom = -1;
    }
    pairs[s * wide + PADDING + columns] = last * NEXT_SHIFT;
    if (unknownFrom >= 0) runs.push(unknownFrom, columns);
    runsOfStrip[s + 1] = runs.length;
  }
  const unknownRuns = Int16Array.from(runs);
  return {
    ...{ columns, strips, values: Float64Array.from(texture), pairs },
    ...{ squaresBefore, unknownRuns, runsOfStrip },
  };
}
