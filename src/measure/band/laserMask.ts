import { CHROMA_COLUMN_STEP, CHROMA_ROW_STEP, rowOfZ, type TreadBand } from './treadBand.ts';

/**
 * Direction of each laser colour in the plane of colour differences (U, V), unit length: BT.601
 * green (0, 255, 0) lies at (−84, −107)/136, red (255, 0, 0) at (−43, 127)/134.
 */
const LASER_CHROMA = {
  green: { u: -0.62, v: -0.79 },
  red: { u: -0.32, v: 0.95 },
} as const;

/**
 * Luma that the laser adds for each unit of colour difference along its hue. Taken off again, what
 * is left is the channel that the laser does not use: red = Y + 1.402·V for a green laser, green =
 * Y − 0.344·U − 0.714·V for a red one (BT.601).
 */
const LASER_LUMA_PER_CHROMA = { green: 1.11, red: 0.57 } as const;

/** Below this rubber, dust and noise have as much colour of their own. */
const TINT_CHROMA = 4;
/** From here on a cell's light is the laser's more than the lamp's, and it stands still with the laser. */
const LIT_CHROMA = 10;
/** A cast is told to one step of colour, from every third coarse cell each way, as far as this. */
const CAST_STEP = 3;
const CAST_REACH = 64;
/** A saturated core between its coloured flanks is at most so many coarse rows (of 1 mm) wide. */
const CORE_ROWS = 9;

/**
 * Takes the laser's glow off the band's luma and marks the cells that can be trusted to show the tread itself: in the picture, not lit by
 * the laser, and not in the strip about the line's own place (`stripHalfMm` either side of z = 0),
 * which stands still while the tread moves and would vote for standing still.
 */
export function markUsableCells(
  band: TreadBand,
  laserColour: 'green' | 'red',
  stripHalfMm: number,
): void {
  const { columns, rows, usable, inPicture, u, v, chromaColumns, chromaRows } = band;
  usable.set(inPicture);
  const hue = LASER_CHROMA[laserColour];
  const cast = castAlong(band, hue);
  for (let cc = 0; cc < chromaColumns; cc++) {
    let lastLit = -1;
    for (let cr = 0; cr < chromaRows; cr++) {
      const i = cr * chromaColumns + cc;
      const lit = u[i] * hue.u + v[i] * hue.v - cast;
      if (lit < TINT_CHROMA) continue;
      const glow = lit < LIT_CHROMA ? lit * LASER_LUMA_PER_CHROMA[laserColour] : NaN;
      dimCell(band, cr * CHROMA_ROW_STEP, cc * CHROMA_COLUMN_STEP, glow);
      if (lit < LIT_CHROMA) continue;
      // A saturated core is white and shows no hue: what lies between lit cells is lit.
      if (lastLit >= 0 && cr - lastLit <= CORE_ROWS) {
        for (let r = lastLit + 1; r < cr; r++)
          dimCell(band, r * CHROMA_ROW_STEP, cc * CHROMA_COLUMN_STEP, NaN);
      }
      lastLit = cr;
    }
  }
  const first = Math.max(0, Math.ceil(rowOfZ(stripHalfMm)));
  const last = Math.min(rows - 1, Math.floor(rowOfZ(-stripHalfMm)));
  usable.fill(0, first * columns, (last + 1) * columns);
}

/**
 * Colour of the whole band along the laser's hue: its median. The laser lights the lesser part of it;
 * what all of it has is the lamp's and the white balance's, which wander while the wheel is turned.
 * As much as a tint is left in it: a glaring line's halo may colour most of the band by so much.
 */
function castAlong(band: TreadBand, hue: { readonly u: number; readonly v: number }): number {
  const { columns, inPicture, u, v, chromaColumns, chromaRows } = band;
  const counts = new Uint32Array(2 * CAST_REACH);
  let seen = 0;
  for (let cr = 0; cr < chromaRows; cr += CAST_STEP) {
    for (let cc = 0; cc < chromaColumns; cc += CAST_STEP) {
      if (!inPicture[cr * CHROMA_ROW_STEP * columns + cc * CHROMA_COLUMN_STEP]) continue;
      const i = cr * chromaColumns + cc;
      const along = Math.round(u[i] * hue.u + v[i] * hue.v) + CAST_REACH;
      counts[Math.max(0, Math.min(counts.length - 1, along))]++;
      seen++;
    }
  }
  let below = 0;
  for (let along = 0; along < counts.length; along++) {
    below += counts[along];
    if (2 * below >= seen) return beyondTint(seen > 0 ? along - CAST_REACH : 0);
  }
  return 0;
}

function beyondTint(along: number): number {
  return Math.sign(along) * Math.max(0, Math.abs(along) - TINT_CHROMA);
}

/** Takes `glow` off the luma of a coarse cell, or marks it unusable when the glow is NaN. */
function dimCell(band: TreadBand, row: number, column: number, glow: number): void {
  const { columns, rows, luma, usable } = band;
  for (let r = row; r < Math.min(rows, row + CHROMA_ROW_STEP); r++) {
    for (let c = column; c < Math.min(columns, column + CHROMA_COLUMN_STEP); c++) {
      const cell = r * columns + c;
      if (glow === glow) luma[cell] = Math.max(0, luma[cell] - glow);
      else usable[cell] = 0;
    }
  }
}
