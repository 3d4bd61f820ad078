import type { YuvPicture } from '../../contract/picture.ts';
import type { CellGrid } from './cellGrid.ts';
import { MARGIN_CELLS, readHue, readLuma } from './cellSamples.ts';
import { HueNoise } from './hueNoise.ts';
import { CORE_LUMA_FROM, CORE_LUMA_FULL, HUE_AXES, type LaserColour } from './laserColour.ts';

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
 * step or two of the laser's hue around it and is no core. Nor is what noise alone shows among the
 * cells about a rim, in standard deviations.
 */
const LEAST_HALO = 4;
const LEAST_HALO_PER_NOISE = 4;

/**
 * In fewer rows a column has less than four differences of cells for {@link HueNoise}, and a line of
 * three or four cells is in all of them.
 */
const NARROW_CELLS = 13;
/**
 * Speckle and the codec make a line noisier than what lies around the window, some times over; what
 * is more than this is the line itself.
 */
const MOST_OVER_AROUND = 8;

/**
 * From this noise on a cell's colour is the mean of some side by side, chroma steps: with it a ridge must have
 * 5 steps to be worth calling line, and in a dim picture that is as much as the laser has. The line runs
 * across, and at the flanks it climbs by a cell in two.
 */
const NOISY = 3;
const MEAN_OF_CELLS = 5;
/** Columns from one in which noise is told to the next. */
const NOISE_EVERY_COLUMNS = 8;

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
  const alone = noiseOf(picture, colour, grid, 1);
  const meanOfCells = alone.around > NOISY ? MEAN_OF_CELLS : 1;
  const noise = meanOfCells === 1 ? alone : noiseOf(picture, colour, grid, meanOfCells);
  const leastHalo = Math.max(LEAST_HALO, LEAST_HALO_PER_NOISE * noise.around);
  const channelPerHue = HUE_AXES[colour].channelPerHue;
  for (let first = 0; first < grid.columns; first += block) {
    const count = Math.min(block, grid.columns - first);
    readHue(picture, colour, grid, first, count, hue, meanOfCells);
    readLuma(picture, grid, first, count, luma);
    for (let k = 0; k < count; k++) {
      const halo = holdAmbient(hue, k * tall, tall) + leastHalo;
      fillSaturatedCore(hue, luma, k * tall, tall, halo);
      const at = k * tall + MARGIN_CELLS;
      ridgeOfColumn(hue, luma, channelPerHue, at, contrast, (first + k) * grid.rows, grid.rows);
    }
  }
  return { contrast, noise: noise.inside };
}

/**
 * Noise of a cell's hue signal, chroma steps, from some of the grid's columns: inside of its rows, and with
 * the margins around them, where in a narrow window less of all there is is the line.
 */
function noiseOf(
  picture: YuvPicture,
  colour: LaserColour,
  grid: CellGrid,
  meanOfCells: number,
): { inside: number; around: number } {
  const tall = grid.rows + 2 * MARGIN_CELLS;
  const hue = new Float32Array(tall);
  const inside = new HueNoise();
  const around = new HueNoise();
  for (let k = 0; k < grid.columns; k += NOISE_EVERY_COLUMNS) {
    readHue(picture, colour, grid, k, 1, hue, meanOfCells);
    inside.add(hue, MARGIN_CELLS, grid.rows);
    around.add(hue, 0, tall);
  }
  const most = grid.rows < NARROW_CELLS ? MOST_OVER_AROUND * around.sigma() : Infinity;
  return { inside: Math.min(inside.sigma(), most), around: around.sigma() };
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

/**
 * Raises the hue signal of saturated white by the weaker of the halos above and below it.
 *
 * @param leastHue hue signal from which a cell beside white is halo
 */
function fillSaturatedCore(
  hue: Float32Array,
  luma: Float32Array,
  start: number,
  tall: number,
  leastHue: number,
): void {
  let brightest = 0;
  for (let i = start; i < start + tall; i++) if (luma[i] > brightest) brightest = luma[i];
  if (brightest < CORE_LUMA_FROM) return;
  const fromAbove = new Float32Array(tall);
  let kept = 0;
  for (let i = 0; i < tall; i++) {
    // The tint of white itself is no halo: codecs and clipping leave a few steps of any hue in it.
    const halo = luma[start + i] < CORE_LUMA_FULL ? hue[start + i] - leastHue : 0;
    kept = halo > kept ? halo : kept * HALO_KEPT_PER_CELL;
    fromAbove[i] = kept;
  }
  kept = 0;
  for (let i = tall - 1; i >= 0; i--) {
    const here = hue[start + i];
    const halo = luma[start + i] < CORE_LUMA_FULL ? here - leastHue : 0;
    kept = halo > kept ? halo : kept * HALO_KEPT_PER_CELL;
    const white = (luma[start + i] - CORE_LUMA_FROM) / (CORE_LUMA_FULL - CORE_LUMA_FROM);
    const weaker = kept < fromAbove[i] ? kept : fromAbove[i];
    if (white <= 0 || weaker <= 0) continue;
    const core = leastHue + CORE_PER_HALO * weaker;
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
  const [near, far] = NARROW_REACHES_CELLS;
  for (let i = 0, at = start; i < rows; i++, at++) {
    // Both reaches in one go, written out: this loop is a third of the search's time.
    const here = hue[at];
    const nearAmbient = hue[at - near] > hue[at + near] ? hue[at - near] : hue[at + near];
    const farAmbient = hue[at - far] > hue[at + far] ? hue[at - far] : hue[at + far];
    if (here <= nearAmbient && here <= farAmbient) continue;
    const nearRidge = vouchedRidge(here - nearAmbient, luma, at, near);
    const farRidge = vouchedRidge(here - farAmbient, luma, at, far);
    const ridge = nearRidge > farRidge ? nearRidge : farRidge;
    if (ridge > 0) contrast[out + i] = ridge;
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

/** Hue above the larger ambient: a step from grey to coloured scenery is then no ridge. */
function ridgeAt(hue: Float32Array, luma: Float32Array, at: number, reach: number): number {
  const above = hue[at - reach];
  const below = hue[at + reach];
  return vouchedRidge(hue[at] - (above > below ? above : below), luma, at, reach);
}

/** A hue ridge as far as the luma's rise over the same reach vouches for it; may be negative. */
function vouchedRidge(ridge: number, luma: Float32Array, at: number, reach: number): number {
  const rise = luma[at] - 0.5 * (luma[at - reach] + luma[at + reach]);
  const vouched = COLOUR_PER_LUMA_RISE * (rise + LUMA_RISE_ALLOWANCE);
  return vouched < ridge ? vouched : ridge;
}
