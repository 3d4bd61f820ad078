import {
  BAND_ROWS,
  CHROMA_COLUMN_STEP,
  CHROMA_ROW_STEP,
  rowOfZ,
  Z_STEP_MM,
  type TreadBand,
} from '../band/treadBand.ts';

/**
 * Colour of the shoulder well above the edge, clear of the line, column by column: where a tape would show.
 * Three rows (Y, U, V) of one value every {@link CHROMA_COLUMN_STEP} columns.
 */
const SHOULDER_FROM_MM = 9;
const SHOULDER_TO_MM = 25;

/**
 * Rows this near to the line's own height are left out, mm. The laser's mask is not asked: a yellow
 * tape is as green to it as the glow of a green laser.
 */
const KEEP_OFF_LINE_MM = 5;

export interface ShoulderColour {
  readonly y: Uint8Array;
  readonly u: Int8Array;
  readonly v: Int8Array;
}

/** Columns that could not be seen carry this luma: a tyre in a picture is never pure black. */
export const UNSEEN_LUMA = 0;

export function shoulderColour(band: TreadBand, edgeRow: Float32Array): ShoulderColour {
  const n = band.chromaColumns;
  const out = { y: new Uint8Array(n), u: new Int8Array(n), v: new Int8Array(n) };
  const lineFrom = rowOfZ(KEEP_OFF_LINE_MM);
  const lineTo = rowOfZ(-KEEP_OFF_LINE_MM);
  for (let i = 0; i < n; i++) {
    const column = i * CHROMA_COLUMN_STEP;
    const first = Math.max(0, Math.round(edgeRow[column] - SHOULDER_TO_MM / Z_STEP_MM));
    const last = Math.min(
      BAND_ROWS - 1,
      Math.round(edgeRow[column] - SHOULDER_FROM_MM / Z_STEP_MM),
    );
    let sy = 0;
    let su = 0;
    let sv = 0;
    let count = 0;
    for (let r = first; r <= last; r += CHROMA_ROW_STEP) {
      const cell = r * band.columns + column;
      if (!band.inPicture[cell] || (r > lineFrom && r < lineTo)) continue;
      const chroma = (r >> 1) * n + i;
      sy += band.luma[cell];
      su += band.u[chroma];
      sv += band.v[chroma];
      count++;
    }
    if (count < 3) continue;
    out.y[i] = Math.max(1, sy / count);
    out.u[i] = su / count;
    out.v[i] = sv / count;
  }
  return out;
}
