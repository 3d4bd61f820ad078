import { BAND_ROWS, Z_STEP_MM, zOfRowMm } from '../band/treadBand.ts';
import { createTermFit } from '../fit/termFit.ts';
import { riseAt, type Lean, type LeanBasis } from './leanFit.ts';

/**
 * A band of light tape round the shoulder: a bright stripe with tread above and below it that runs
 * through all blocks. A hand stuck it on, so that its border runs out by its own error, once round
 * by as much as some ten grams look like; the tread beside it was moulded.
 */
export interface LightBand {
  /** Borders above the laser plane at lean zero, mm. */
  readonly bottomMm: number;
  readonly topMm: number;
  /** Whether the tread outside of it shows edges of its own by which a lean can be told. */
  readonly treadTells: boolean;
}

/**
 * Ribs under dust differ by a third in luma. White tape sends back ten times as much as rubber, twice
 * to three times the luma by a camera's curve; dirty or in the shade half of that.
 */
const LIGHT_SHARE = 1.65;
/** Tape is sold from 5 mm on; a stripe wider than this is no tape but a sidewall, mm. */
const NARROWEST_MM = 4;
const WIDEST_MM = 40;
/** Rows of the line's glow in the stripe or at its border that are not known, mm. */
const UNKNOWN_MM = 9;
/** Blocks in which a row must be known. */
const KNOWN_SHARE = 0.4;
/** What a hand's error and the joint move the border by to either side, mm. */
export const BAND_MARGIN_MM = 2;
/**
 * Rows that tell a lean stand out from the even rise and fall of the light over the tread: their
 * standard deviation about a parabola, in parts of the tread's luma. Gaps between blocks have 0.1 and
 * more, grooves 0.2; dust and cross grooves alone, averaged over the blocks, 0.01 to 0.03.
 */
const TELLING_SD = 0.06;
const FEWEST_ROWS = 40;

/**
 * @param profiles blocks × rows of luma, NaN where unknown
 * @param lean the wheel's lean in them
 * @param window rows by which the lean is told
 * @returns null where no stripe of that kind runs through the blocks
 */
export function lightBand(
  profiles: Float32Array,
  basis: LeanBasis,
  lean: Lean,
  window: { readonly first: number; readonly last: number },
): LightBand | null {
  const rows = stackedLuma(profiles, basis, lean);
  const run = lightRun(rows);
  if (!run) return null;
  const bottomMm = zOfRowMm(run.last + 0.5);
  const topMm = zOfRowMm(run.first - 0.5);
  return { bottomMm, topMm, treadTells: tellingSd(rows, run, window) >= TELLING_SD };
}

/** Mean luma of each row over the blocks, a lean taken out, each in parts of its block's median. */
function stackedLuma(profiles: Float32Array, basis: LeanBasis, lean: Lean): Float32Array {
  const blocks = basis.gainMm.length;
  const sum = new Float32Array(BAND_ROWS);
  const count = new Uint8Array(BAND_ROWS);
  for (let b = 0; b < blocks; b++) {
    const own = profiles.subarray(b * BAND_ROWS, (b + 1) * BAND_ROWS);
    const known = own.filter((x) => x === x).sort();
    const median = known[known.length >> 1];
    if (!(median > 0)) continue;
    const down = Math.round(riseAt(basis, lean, b) / Z_STEP_MM);
    for (let r = Math.max(0, down); r < Math.min(BAND_ROWS, BAND_ROWS + down); r++) {
      const value = own[r - down];
      if (value !== value) continue;
      sum[r] += value / median;
      count[r]++;
    }
  }
  return sum.map((s, r) => (count[r] >= KNOWN_SHARE * blocks ? s / count[r] : NaN));
}

interface RowRun {
  readonly first: number;
  readonly last: number;
}

/** The widest run of light rows between darker ones; unknown rows in it are few. */
function lightRun(rows: Float32Array): RowRun | null {
  let best: RowRun | null = null;
  const isLight = (r: number) => rows[r] >= LIGHT_SHARE;
  for (let r = 0; r < rows.length; r++) {
    if (!isLight(r) || isLight(r - 1)) continue;
    let last = r;
    for (let k = r + 1; k < rows.length && k - last <= UNKNOWN_MM / Z_STEP_MM; k++) {
      if (isLight(k)) last = k;
      else if (rows[k] === rows[k]) break;
    }
    const run = { first: r, last };
    const widthMm = (last - r + 1) * Z_STEP_MM;
    const fits = widthMm >= NARROWEST_MM && widthMm <= WIDEST_MM && isBetweenTread(rows, run);
    if (fits && (!best || last - r > best.last - best.first)) best = run;
  }
  return best;
}

/** Whether known rows that are not light follow on both sides. */
function isBetweenTread(rows: Float32Array, { first, last }: RowRun): boolean {
  const reach = UNKNOWN_MM / Z_STEP_MM;
  const darkOn = (from: number, step: 1 | -1) => {
    for (let k = 1; k <= reach; k++) {
      const value = rows[from + step * k];
      if (value < LIGHT_SHARE) return true;
    }
    return false;
  };
  return darkOn(first, -1) && darkOn(last, 1);
}

/** Standard deviation about a parabola of the window's rows outside the run; 0 where they are too few. */
function tellingSd(
  rows: Float32Array,
  run: RowRun,
  { first, last }: { readonly first: number; readonly last: number },
): number {
  const margin = BAND_MARGIN_MM / Z_STEP_MM;
  const used: (readonly [number, number])[] = [];
  for (let r = Math.max(0, first); r <= Math.min(rows.length - 1, last); r++) {
    const isTaped = r >= run.first - margin && r <= run.last + margin;
    if (!isTaped && rows[r] === rows[r])
      used.push([(2 * (r - first)) / (last - first) - 1, rows[r]]);
  }
  if (used.length < FEWEST_ROWS) return 0;
  const parabola = createTermFit(3);
  for (const [x, value] of used) parabola.add([1, x, x * x], value);
  const solved = parabola.solve();
  if (!solved) return 0;
  const [c0, c1, c2] = solved;
  const squares = used.reduce(
    (sum, [x, value]) => sum + (value - c0 - c1 * x - c2 * x * x) ** 2,
    0,
  );
  return Math.sqrt(squares / used.length);
}
