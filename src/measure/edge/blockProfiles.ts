import { AZIMUTH_STEP_DEG, type TreadBand } from '../band/treadBand.ts';

/**
 * Height profiles of the tread: the band's luma averaged over blocks of azimuth about one tread
 * pitch wide, so that slots wash out and what runs round the wheel (ribs, grooves) stands.
 */
export const BLOCK_WIDTH_DEG = 5;

export interface BlockLayout {
  /** Azimuth of each block's middle, degrees, rising. */
  readonly azimuthsDeg: Float64Array;
  /** First column of each block and the number of columns in a block. */
  readonly firstColumn: Int32Array;
  readonly columnsPerBlock: number;
}

/** A block row is known when at least this share of its cells can be used. */
const KNOWN_SHARE = 0.3;

export function layoutBlocks(band: TreadBand): BlockLayout {
  const columnsPerBlock = Math.round(BLOCK_WIDTH_DEG / AZIMUTH_STEP_DEG);
  const middle = (band.columns - 1) / 2;
  const perSide = Math.floor((middle - columnsPerBlock / 2) / columnsPerBlock);
  const count = 2 * perSide + 1;
  const azimuthsDeg = new Float64Array(count);
  const firstColumn = new Int32Array(count);
  for (let b = 0; b < count; b++) {
    azimuthsDeg[b] = (b - perSide) * BLOCK_WIDTH_DEG;
    // Azimuth falls along the columns.
    firstColumn[b] = middle - (b - perSide) * columnsPerBlock - (columnsPerBlock - 1) / 2;
  }
  return { azimuthsDeg, firstColumn, columnsPerBlock };
}

/**
 * Mean luma of each block row over its usable cells, blocks × rows, NaN where too few can be used.
 */
export function blockProfiles(band: TreadBand, layout: BlockLayout, out: Float32Array): void {
  const { columns, rows, luma, usable } = band;
  const { firstColumn, columnsPerBlock } = layout;
  const need = KNOWN_SHARE * columnsPerBlock;
  for (let b = 0; b < firstColumn.length; b++) {
    for (let r = 0; r < rows; r++) {
      let sum = 0;
      let count = 0;
      const start = r * columns + firstColumn[b];
      for (let i = start; i < start + columnsPerBlock; i++) {
        sum += luma[i] * usable[i];
        count += usable[i];
      }
      out[b * rows + r] = count >= need ? sum / count : NaN;
    }
  }
}
