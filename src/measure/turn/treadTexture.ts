import { AZIMUTH_STEP_DEG, BAND_ROWS, Z_STEP_MM, type TreadBand } from '../band/treadBand.ts';

/**
 * What of a frame tells how far the wheel has turned: a few strips of the band at fixed heights on
 * the tread (so the lean is taken out), each cleaned of slow shading along the columns.
 */

/** Middle of each strip above the edge, mm: shoulder rib, then the ribs below the groove. */
export const STRIP_HEIGHTS_MM = [16, 12.5, 9, 5.5, 2.5, -10, -13.5, -17, -20.5, -30, -34] as const;
const STRIP_HALF_MM = 1.5;
/** Shading wider than this along the tread is light, not tread. */
const SHADING_HALF_DEG = 3;
/** Signs above this many standard deviations are clipped: one tape must not outvote the tread. */
const CLIP_SD = 2.5;

export interface TreadTexture {
  readonly columns: number;
  /** strips × columns, zero mean, about unit variance times {@link TEXTURE_UNIT}; 0 where unknown. */
  readonly values: Int8Array;
}

const TEXTURE_UNIT = 40;

export interface TextureWork {
  readonly strip: Float32Array;
  readonly known: Float32Array;
  readonly prefix: Float64Array;
  readonly knownPrefix: Float64Array;
}

export function createTextureWork(columns: number): TextureWork {
  return {
    strip: new Float32Array(columns),
    known: new Float32Array(columns),
    prefix: new Float64Array(columns + 1),
    knownPrefix: new Float64Array(columns + 1),
  };
}

/**
 * `edgeRow` is the band row of the edge at each column in this frame (fractional, length columns).
 */
export function treadTexture(band: TreadBand, edgeRow: Float32Array, work: TextureWork): Int8Array {
  const { columns } = band;
  const values = new Int8Array(STRIP_HEIGHTS_MM.length * columns);
  for (let k = 0; k < STRIP_HEIGHTS_MM.length; k++) {
    stripMean(band, edgeRow, STRIP_HEIGHTS_MM[k], work);
    flatten(work, columns);
    quantise(work, columns, values, k * columns);
  }
  return values;
}

function stripMean(
  band: TreadBand,
  edgeRow: Float32Array,
  heightMm: number,
  work: TextureWork,
): void {
  const { columns, luma, usable } = band;
  const half = Math.round(STRIP_HALF_MM / Z_STEP_MM);
  const up = heightMm / Z_STEP_MM;
  for (let c = 0; c < columns; c++) {
    const middle = Math.round(edgeRow[c] - up);
    const first = Math.max(0, middle - half);
    const last = Math.min(BAND_ROWS - 1, middle + half);
    let sum = 0;
    let n = 0;
    for (let r = first; r <= last; r++) {
      const cell = r * columns + c;
      sum += luma[cell] * usable[cell];
      n += usable[cell];
    }
    const enough = n > half;
    work.known[c] = enough ? 1 : 0;
    work.strip[c] = enough ? sum / n : 0;
  }
}

/** Takes off the mean over ± {@link SHADING_HALF_DEG} of known columns. */
function flatten(work: TextureWork, columns: number): void {
  const { strip, known, prefix, knownPrefix } = work;
  for (let c = 0; c < columns; c++) {
    prefix[c + 1] = prefix[c] + strip[c];
    knownPrefix[c + 1] = knownPrefix[c] + known[c];
  }
  const half = Math.round(SHADING_HALF_DEG / AZIMUTH_STEP_DEG);
  for (let c = 0; c < columns; c++) {
    if (known[c] === 0) continue;
    const a = Math.max(0, c - half);
    const b = Math.min(columns, c + half + 1);
    strip[c] -= (prefix[b] - prefix[a]) / (knownPrefix[b] - knownPrefix[a]);
  }
}

function quantise(work: TextureWork, columns: number, values: Int8Array, start: number): void {
  const { strip, known } = work;
  // The scale is that of typical columns: a tape's own contrast would drown the tread's.
  let sum = 0;
  let n = 0;
  for (let c = 0; c < columns; c++) {
    if (known[c] === 0) continue;
    sum += Math.abs(strip[c]);
    n++;
  }
  if (n < columns / 10 || sum <= 0) return;
  const scale = (TEXTURE_UNIT * n) / (1.25 * sum); // mean |x| of a Gaussian is σ/1.25
  const limit = CLIP_SD * TEXTURE_UNIT;
  for (let c = 0; c < columns; c++) {
    if (known[c] === 0) continue;
    // Zero stands for unknown: a known cell that comes to zero is moved off it.
    values[start + c] = Math.round(Math.max(-limit, Math.min(limit, strip[c] * scale))) || 1;
  }
}
