/**
 * Cells between the two whose difference is taken: near enough to lie on one surface, and not
 * neighbours, which a codec makes alike.
 */
const APART_CELLS = 3;
/** Every third cell is enough: a column gives a hundred, a picture ten thousand. */
const EVERY_CELLS = 3;
/** Least noise assumed, chroma steps: rounding to 8 bit alone gives 0.29 a sample. */
const LEAST_NOISE = 0.3;

/** Histogram bins a chroma step; the last bin holds all differences from 32 steps on. */
const BINS_PER_STEP = 8;

/**
 * Noise of a hue signal from differences of cells. The lower quartile leaves edges and lines out,
 * also in a window so narrow that the line fills half of it.
 */
export class HueNoise {
  private readonly counts = new Uint32Array(256);
  private total = 0;

  /** Takes a column of `rows` cells from `start` on. */
  add(hue: Float32Array, start: number, rows: number): void {
    for (let i = 0; i + APART_CELLS < rows; i += EVERY_CELLS) {
      const d = Math.abs(hue[start + i + APART_CELLS] - hue[start + i]) * BINS_PER_STEP;
      this.counts[d < 255 ? d | 0 : 255]++;
      this.total++;
    }
  }

  /** Standard deviation of one cell, chroma steps: lower quartile of |difference| / (0.3186·√2). */
  sigma(): number {
    let below = 0;
    let bin = 0;
    while (bin < 255 && below + this.counts[bin] < this.total / 4) below += this.counts[bin++];
    return Math.max((bin + 0.5) / BINS_PER_STEP / (0.3186 * Math.SQRT2), LEAST_NOISE);
  }
}
