import type { YuvPicture } from '../../contract/picture.ts';
import { CELL_PX, type CellGrid } from './cellGrid.ts';
import {
  CORE_LUMA_FROM,
  CORE_LUMA_FULL,
  HUE_AXES,
  sampleRangeOf,
  type LaserColour,
} from './laserColour.ts';

/**
 * How far above and below a cell its ambient is looked for, in cells of 2 pixels: lines of RMS
 * width up to 2 px, and up to 4 px.
 */
const NARROW_REACHES_CELLS = [3, 5] as const;
/**
 * The same for wide lines, up to a core of 36 px. Only a line that fills its own channel is so
 * wide: a band of 30 px that is merely coloured is a crate or a stripe on the floor.
 */
const WIDE_REACHES_CELLS = [10, 20] as const;
/** Cells kept above and below the searched rows so that every reach finds its ambient. */
const MARGIN_CELLS = 20;

/**
 * Part of the colour across the laser's hue that is held against a cell. Purple and orange
 * scenery lies 40° and more off the axis, a laser under a wrong white balance within 15°.
 */
const OFF_HUE_PENALTY = 0.5;

/**
 * Colour contrast that one step of luma rise can vouch for. Added light raises luma with colour:
 * pure red by 0.57 steps a step of chroma, pure green by 1.1. Print in the laser's hue takes
 * light away, so its luma falls where its colour rises.
 */
const COLOUR_PER_LUMA_RISE = 2;
/** Luma rise granted unseen, steps: a weak line is lost in the texture's own luma otherwise. */
const LUMA_RISE_ALLOWANCE = 2;

/** Halo strength kept for each cell into the core: half of it is left after 20 cells (40 px). */
const HALO_KEPT_PER_CELL = 0.966;
/** In the halo the laser fills one channel, in a white core all three: it counts three times. */
const CORE_PER_HALO = 3;
/**
 * Least halo, chroma steps above the column's mean hue: a bright rim under a tinted lamp has a
 * step or two of the laser's hue around it and is no core.
 */
const LEAST_HALO = 4;

/** How far the ambient may lie on the other side of the column's mean hue, chroma steps. */
const LARGEST_COUNTER_HUE = 6;

/** Contrast of the laser's light over its ambient in the cells of a grid. */
export interface LaserContrast {
  /**
   * Column after column, `rows` values each, in full-range chroma steps, ≥ 0. Float32 because the
   * path search adds thousands of these and the weak line is a fraction of a step above noise.
   */
  readonly contrast: Float32Array;
  /** Standard deviation of a single cell's hue signal from noise, chroma steps. */
  readonly noise: number;
}

/** Least noise assumed, chroma steps: rounding to 8 bit alone gives 0.29 a sample. */
const LEAST_NOISE = 0.3;

/**
 * Laser contrast image: colour along the laser's hue minus the ambient's above and below, as far
 * as luma rises with it; saturated white counts by the halo on both sides of it.
 */
export function laserContrastOf(
  picture: YuvPicture,
  colour: LaserColour,
  grid: CellGrid,
): LaserContrast {
  const contrast = new Float32Array(grid.columns * grid.rows);
  const tall = grid.rows + 2 * MARGIN_CELLS;
  // Sixteen columns at a time: their samples share cache lines of every picture row.
  const block = 16;
  const hue = new Float32Array(block * tall);
  const luma = new Float32Array(block * tall);
  const noise = new NoiseMeter();
  const channelPerHue = HUE_AXES[colour].channelPerHue;
  for (let first = 0; first < grid.columns; first += block) {
    const count = Math.min(block, grid.columns - first);
    readBlock(picture, colour, grid, first, count, tall, hue, luma);
    for (let k = 0; k < count; k++) {
      if (((first + k) & 7) === 0) noise.add(hue, k * tall + MARGIN_CELLS, grid.rows);
      const ambient = holdAmbient(hue, k * tall, tall);
      fillSaturatedCore(hue, luma, k * tall, tall, ambient);
      const at = k * tall + MARGIN_CELLS;
      ridgeOfColumn(hue, luma, channelPerHue, at, contrast, (first + k) * grid.rows, grid.rows);
    }
  }
  return { contrast, noise: Math.max(noise.sigma(), LEAST_NOISE) };
}

/** Hue projection and luma of `count` columns with margins; outside the picture its edge repeats. */
function readBlock(
  picture: YuvPicture,
  colour: LaserColour,
  grid: CellGrid,
  first: number,
  count: number,
  tall: number,
  hue: Float32Array,
  luma: Float32Array,
): void {
  const { y, yStride, u, v, chromaStride, chromaStep, chromaShift } = picture;
  const range = sampleRangeOf(picture);
  const axis = HUE_AXES[colour];
  const { alongU, alongV } = axis;
  // A full-resolution chroma plane is read at 4 samples a cell, a half-resolution one at 1.
  const perCell = chromaShift === 0 ? CELL_PX : 1;
  const right = chromaShift === 0 ? chromaStep : 0;
  const below = chromaShift === 0 ? chromaStride : 0;
  const chromaGain = range.chromaScale / 4;
  const lumaGain = range.lumaScale / 4;
  const lumaBase = range.lumaOffset * range.lumaScale;
  const lastRow = grid.pictureRows - 1;
  let minTop = Infinity;
  let maxTop = -Infinity;
  for (let k = 0; k < count; k++) {
    minTop = Math.min(minTop, grid.firstCellY[first + k]);
    maxTop = Math.max(maxTop, grid.firstCellY[first + k]);
  }
  for (let row = minTop - MARGIN_CELLS; row < maxTop - MARGIN_CELLS + tall; row++) {
    const cellY = row < 0 ? 0 : row > lastRow ? lastRow : row;
    const lumaRow = cellY * CELL_PX * yStride;
    const chromaRow = cellY * perCell * chromaStride;
    for (let k = 0; k < count; k++) {
      const i = row - grid.firstCellY[first + k] + MARGIN_CELLS;
      if (i < 0 || i >= tall) continue;
      const cellX = grid.firstCellX + (first + k) * grid.stepCells;
      const c = chromaRow + cellX * perCell * chromaStep;
      let du: number;
      let dv: number;
      if (perCell === 1) {
        du = 4 * u[c] - 512;
        dv = 4 * v[c] - 512;
      } else {
        du = u[c] + u[c + right] + u[c + below] + u[c + below + right] - 512;
        dv = v[c] + v[c + right] + v[c + below] + v[c + below + right] - 512;
      }
      const along = du * alongU + dv * alongV;
      const across = dv * alongU - du * alongV;
      hue[k * tall + i] =
        (along - OFF_HUE_PENALTY * (across < 0 ? -across : across)) * chromaGain;
      const p = lumaRow + cellX * CELL_PX;
      luma[k * tall + i] =
        (y[p] + y[p + 1] + y[p + yStride] + y[p + yStride + 1]) * lumaGain - lumaBase;
    }
  }
}

/**
 * Mean hue signal of a column, below which no ambient is allowed to lie by much: laser light never
 * takes its own hue away, so next to scenery of the opposite colour (or the other laser's halo)
 * plain grey would else stand out as a ridge.
 */
function holdAmbient(hue: Float32Array, start: number, tall: number): number {
  let sum = 0;
  for (let i = start; i < start + tall; i++) sum += hue[i];
  const mean = sum / tall;
  const floor = mean - LARGEST_COUNTER_HUE;
  for (let i = start; i < start + tall; i++) if (hue[i] < floor) hue[i] = floor;
  return mean;
}

/** Raises the hue signal of saturated white by the weaker of the halos above and below it. */
function fillSaturatedCore(
  hue: Float32Array,
  luma: Float32Array,
  start: number,
  tall: number,
  columnHue: number,
): void {
  let brightest = 0;
  for (let i = start; i < start + tall; i++) if (luma[i] > brightest) brightest = luma[i];
  if (brightest < CORE_LUMA_FROM) return;
  const ambient = columnHue + LEAST_HALO;
  const fromAbove = new Float32Array(tall);
  let kept = 0;
  for (let i = 0; i < tall; i++) {
    // The tint of white itself is no halo: codecs and clipping leave a few steps of any hue in it.
    const halo = luma[start + i] < CORE_LUMA_FULL ? hue[start + i] - ambient : 0;
    kept = halo > kept ? halo : kept * HALO_KEPT_PER_CELL;
    fromAbove[i] = kept;
  }
  kept = 0;
  for (let i = tall - 1; i >= 0; i--) {
    const here = hue[start + i];
    const halo = luma[start + i] < CORE_LUMA_FULL ? here - ambient : 0;
    kept = halo > kept ? halo : kept * HALO_KEPT_PER_CELL;
    const white = (luma[start + i] - CORE_LUMA_FROM) / (CORE_LUMA_FULL - CORE_LUMA_FROM);
    if (white <= 0) continue;
    const core = ambient + CORE_PER_HALO * (kept < fromAbove[i] ? kept : fromAbove[i]);
    if (core > here) hue[start + i] = here + (white < 1 ? white : 1) * (core - here);
  }
}

/** Contrast of one column's cells: the best over the reaches at which ambient is taken. */
function ridgeOfColumn(
  hue: Float32Array,
  luma: Float32Array,
  channelPerHue: number,
  start: number,
  contrast: Float32Array,
  out: number,
  rows: number,
): void {
  for (const reach of NARROW_REACHES_CELLS) {
    for (let i = 0; i < rows; i++) {
      const ridge = ridgeAt(hue, luma, start + i, reach);
      if (ridge > contrast[out + i]) contrast[out + i] = ridge;
    }
  }
  for (let i = 0; i < rows; i++) {
    const at = start + i;
    const channel = luma[at] + channelPerHue * hue[at];
    if (channel <= CORE_LUMA_FROM) continue;
    const full = Math.min(1, (channel - CORE_LUMA_FROM) / (CORE_LUMA_FULL - CORE_LUMA_FROM));
    for (const reach of WIDE_REACHES_CELLS) {
      const ridge = full * ridgeAt(hue, luma, at, reach);
      if (ridge > contrast[out + i]) contrast[out + i] = ridge;
    }
  }
}

function ridgeAt(hue: Float32Array, luma: Float32Array, at: number, reach: number): number {
  const above = hue[at - reach];
  const below = hue[at + reach];
  // The larger ambient: a step from grey to coloured scenery is then no ridge.
  const ridge = hue[at] - (above > below ? above : below);
  if (ridge <= 0) return 0;
  const rise = luma[at] - 0.5 * (luma[at - reach] + luma[at + reach]);
  const vouched = COLOUR_PER_LUMA_RISE * (rise + LUMA_RISE_ALLOWANCE);
  return vouched < ridge ? vouched : ridge;
}

/** Noise from the differences of cells one reach apart; its median leaves edges and lines out. */
class NoiseMeter {
  private readonly counts = new Uint32Array(256);
  private total = 0;

  add(hue: Float32Array, start: number, rows: number): void {
    const reach = NARROW_REACHES_CELLS[0];
    for (let i = 0; i + reach < rows; i += 3) {
      const d = Math.abs(hue[start + i + reach] - hue[start + i]) * 8;
      this.counts[d < 255 ? d | 0 : 255]++;
      this.total++;
    }
  }

  /** Median |difference| / (0.6745·√2), chroma steps. */
  sigma(): number {
    let below = 0;
    let bin = 0;
    while (bin < 255 && below + this.counts[bin] < this.total / 2) below += this.counts[bin++];
    return (bin + 0.5) / 8 / (0.6745 * Math.SQRT2);
  }
}
