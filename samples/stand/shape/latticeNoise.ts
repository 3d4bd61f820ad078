import { seededRandom } from '../../drawnWheel/seededRandom.ts';

/** Even values in −1 to 1 on a lattice that closes round the wheel; linear between its nodes. */
export interface LatticeNoise {
  readonly columns: number;
  readonly rows: number;
  readonly values: Float32Array;
}

export function latticeNoise(seed: number, columns: number, rows: number): LatticeNoise {
  const random = seededRandom(seed);
  return {
    columns,
    rows,
    values: Float32Array.from({ length: columns * (rows + 2) }, () => 2 * random() - 1),
  };
}

/** Value at shares of the whole width (round, any number) and height (0 to 1). */
export function noiseAt(noise: LatticeNoise, acrossShare: number, downShare: number): number {
  const { columns, values } = noise;
  const x = (acrossShare - Math.floor(acrossShare)) * columns;
  const y = downShare * noise.rows;
  const x0 = Math.floor(x);
  const y0 = Math.floor(y);
  const wx = x - x0;
  const wy = y - y0;
  const x1 = x0 + 1 < columns ? x0 + 1 : 0;
  const at = y0 * columns;
  const top = values[at + x0] * (1 - wx) + values[at + x1] * wx;
  const next = at + columns;
  return top * (1 - wy) + (values[next + x0] * (1 - wx) + values[next + x1] * wx) * wy;
}
