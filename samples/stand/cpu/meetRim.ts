import type { RimMap } from '../shape/rimMap.ts';

/** Where a line of sight that came in over the bead ends on the rim: map column and row. */
export interface RimMeeting {
  column: number;
  row: number;
  x: number;
  y: number;
  z: number;
}

const MOST_STEPS = 90;
const CLOSE_MM = 0.3;
/** Of the longest step a fifth of a millimetre is left. */
const HALVINGS = 6;

/** Goes down from the lid's plane until the line is under the height map. */
export function meetRim(
  rim: RimMap,
  x: number,
  y: number,
  z: number,
  dx: number,
  dy: number,
  dz: number,
  out: RimMeeting,
): void {
  const { size, halfWidthMm } = rim;
  const perMm = size / (2 * halfWidthMm);
  const length = Math.hypot(dx, dy, dz);
  const ux = dx / length;
  const uy = dy / length;
  const uz = dz / length;
  let step = 0;
  let halvings = 0;
  for (let k = 0; k < MOST_STEPS; k++) {
    out.column = Math.max(0, Math.min(size - 2, (x + halfWidthMm) * perMm - 0.5));
    out.row = Math.max(0, Math.min(size - 2, (y + halfWidthMm) * perMm - 0.5));
    const above = z - rimHeight(rim, out.column, out.row);
    if (above < CLOSE_MM && above > -CLOSE_MM) break;
    if (halvings > 0 || above < 0) {
      // Through a wall: by halves to where it went in, so that a lip keeps its edge.
      if (halvings++ === HALVINGS) break;
      step = above < 0 ? -Math.abs(step) / 2 : Math.abs(step) / 2;
    } else {
      step = Math.max(0.8, Math.min(12, above * 0.6));
    }
    x += ux * step;
    y += uy * step;
    z += uz * step;
  }
  out.x = x;
  out.y = y;
  out.z = z;
}

export function rimHeight(rim: RimMap, column: number, row: number): number {
  const { size, heightMm } = rim;
  const c0 = column | 0;
  const r0 = row | 0;
  const wc = column - c0;
  const wr = row - r0;
  const at = r0 * size + c0;
  const top = heightMm[at] * (1 - wc) + heightMm[at + 1] * wc;
  const bottom = heightMm[at + size] * (1 - wc) + heightMm[at + size + 1] * wc;
  return top * (1 - wr) + bottom * wr;
}
