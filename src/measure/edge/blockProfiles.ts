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
/**
 * To be followed it needs this share of what its block's middle row has, too: where the laser's glow
 * fades it is the dark cells (slots, the groove) that stay below the limit, and their mean alone would
 * pull the edge toward the line. Where noise takes cells it takes them from all rows alike.
 */
const EVEN_SHARE = 0.9;
/** For finding an edge at all, before it is followed: one that lies in the glow is better than none. */
export const ANY_SHARE = 0;

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
 * Mean luma of each block row over its usable cells, blocks × rows, NaN where too few can be used:
 * fewer than a share of the block's width, or than `evenShare` of what half of its rows have.
 */
export function blockProfiles(
  band: TreadBand,
  layout: BlockLayout,
  out: Float32Array,
  evenShare: number = EVEN_SHARE,
): void {
  const { columns, rows } = band;
  const { firstColumn, columnsPerBlock } = layout;
  const luma = viewOf(band.luma);
  const usable = viewOf(band.usable);
  const counts = new Uint16Array(rows);
  const rowsWith = new Uint16Array(columnsPerBlock + 1);
  for (let b = 0; b < firstColumn.length; b++) {
    rowsWith.fill(0);
    for (let r = 0; r < rows; r++) {
      const start = r * columns + firstColumn[b];
      const end = start + columnsPerBlock;
      let i = start;
      let pairs = 0;
      let count = 0;
      // Four cells at once: 1 in a byte of `usable` becomes 255 and lets that cell's luma through.
      for (; i + 4 <= end; i += 4) {
        const known = usable.getUint32(i, true);
        const lit = luma.getUint32(i, true) & Math.imul(known, 255);
        pairs += (lit & 0xff00ff) + ((lit >>> 8) & 0xff00ff);
        count += Math.imul(known, 0x1010101) >>> 24;
      }
      let sum = (pairs & 0xffff) + (pairs >>> 16);
      for (; i < end; i++) {
        sum += band.luma[i] * band.usable[i];
        count += band.usable[i];
      }
      out[b * rows + r] = sum;
      counts[r] = count;
      rowsWith[count]++;
    }
    const need = Math.max(KNOWN_SHARE * columnsPerBlock, evenShare * medianCount(rowsWith));
    for (let r = 0; r < rows; r++) {
      const at = b * rows + r;
      out[at] = counts[r] >= need ? out[at] / counts[r] : NaN;
    }
  }
}

function viewOf({ buffer, byteOffset, byteLength }: Uint8Array): DataView {
  return new DataView(buffer, byteOffset, byteLength);
}

/** Median number of usable cells among the rows that have any, from how many rows have each number. */
function medianCount(rowsWith: Uint16Array): number {
  let known = 0;
  for (let c = 1; c < rowsWith.length; c++) known += rowsWith[c];
  let below = 0;
  for (let c = 1; c < rowsWith.length; c++) {
    below += rowsWith[c];
    if (2 * below >= known) return c;
  }
  return 0;
}
