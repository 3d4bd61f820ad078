/** What is measured in each column before the centre; rows NaN where nothing was. */
export interface ColumnMeasures {
  readonly rowPx: Float32Array;
  readonly lumaRise: Float32Array;
  readonly halfWidth: Float32Array;
  readonly flank: Float32Array;
  readonly saturated: Float32Array;
  readonly above: Float32Array;
  readonly below: Float32Array;
}

export interface NeighbourMeasures {
  readonly rise: Float32Array;
  readonly halfWidth: Float32Array;
  readonly flank: Float32Array;
  readonly saturated: Float32Array;
  readonly above: Float32Array;
  readonly below: Float32Array;
}

/** Columns on each side whose widths and ambients are pooled: 9 in all, about one rib block's 4°. */
const NEIGHBOURS = 4;
/** Rows by which one column's line may lie off the next's and still be the same piece, px. */
const SAME_PIECE_PX = 3;

/**
 * Width, flank and rise as medians, ambients as means over the neighbouring columns of the same
 * piece of line: they vary slowly along it, and the centre's error grows with theirs. A median
 * keeps the step from a thin to a thick piece.
 */
export function smoothOverNeighbours(measured: ColumnMeasures): NeighbourMeasures {
  const count = measured.rowPx.length;
  const made = {
    rise: new Float32Array(count),
    halfWidth: new Float32Array(count),
    flank: new Float32Array(count),
    saturated: new Float32Array(count),
    above: new Float32Array(count),
    below: new Float32Array(count),
  };
  const members = new Int32Array(2 * NEIGHBOURS + 1);
  for (let n = 0; n < count; n++) {
    if (Number.isNaN(measured.rowPx[n])) continue;
    const size = gatherPiece(measured.rowPx, n, members);
    made.rise[n] = medianOf(measured.lumaRise, members, size);
    made.halfWidth[n] = medianOf(measured.halfWidth, members, size);
    made.flank[n] = medianOf(measured.flank, members, size);
    made.saturated[n] = medianOf(measured.saturated, members, size);
    made.above[n] = meanOf(measured.above, members, size);
    made.below[n] = meanOf(measured.below, members, size);
  }
  return made;
}

function gatherPiece(rowPx: Float32Array, n: number, members: Int32Array): number {
  let size = 0;
  members[size++] = n;
  for (let step = -1; step <= 1; step += 2) {
    let last = rowPx[n];
    for (let k = 1; k <= NEIGHBOURS; k++) {
      const row = rowPx[n + step * k];
      // Also ends at the arrays' ends and at a column without line: no number is near to NaN.
      if (!(Math.abs(row - last) <= SAME_PIECE_PX)) break;
      members[size++] = n + step * k;
      last = row;
    }
  }
  return size;
}

const sorted = new Float32Array(2 * NEIGHBOURS + 1);

function medianOf(values: Float32Array, members: Int32Array, size: number): number {
  let kept = 0;
  for (let i = 0; i < size; i++) {
    const value = values[members[i]];
    // A flank that never fell to a quarter has no number; insertion sort keeps the rest in order.
    if (Number.isNaN(value)) continue;
    let j = kept++;
    while (j > 0 && sorted[j - 1] > value) {
      sorted[j] = sorted[j - 1];
      j--;
    }
    sorted[j] = value;
  }
  return kept === 0 ? Number.NaN : sorted[kept >> 1];
}

function meanOf(values: Float32Array, members: Int32Array, size: number): number {
  let sum = 0;
  for (let i = 0; i < size; i++) sum += values[members[i]];
  return sum / size;
}
