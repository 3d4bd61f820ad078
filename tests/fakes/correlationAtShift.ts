/**
 * What `textureCorrelations` computes, as it is written down: sums over the cells that both textures
 * know (zero stands for unknown), one shift at a time. −2 where a quarter of the columns do not
 * overlap or less than 8 % of the cells are known in both.
 */
export function correlationAtShift(
  before: Int8Array,
  after: Int8Array,
  columns: number,
  left: number,
): number {
  const first = Math.max(0, left);
  const last = Math.min(columns, columns + left);
  if (last - first < columns / 4) return -2;
  let [aa, bb, ab, known] = [0, 0, 0, 0];
  for (let base = 0; base < before.length; base += columns) {
    for (let c = first; c < last; c++) {
      const a = before[base + c];
      const b = after[base + c - left];
      if (a === 0 || b === 0) continue;
      known++;
      aa += a * a;
      bb += b * b;
      ab += a * b;
    }
  }
  if (known < 0.08 * before.length) return -2;
  return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : -2;
}
