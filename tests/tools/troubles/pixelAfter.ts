import { troubleOf, type TroubledPlan } from './trouble.ts';

interface PixelPoint {
  readonly xPx: number;
  readonly yPx: number;
}

/**
 * Where a point of the film's picture lies in the troubled one: mirrored, bent by the lens, rolled,
 * made smaller, in this order, as `filmGraph` does it. Sway and shake, a pixel or two about that
 * place, are left out: no tap is better.
 */
export function pixelAfter(plan: TroubledPlan, { xPx, yPx }: PixelPoint): PixelPoint {
  const { widthPx, heightPx } = plan.film;
  const mirror = troubleOf(plan, 'mirrored') ? -1 : 1;
  let x = mirror * (xPx - widthPx / 2);
  let y = yPx - heightPx / 2;
  const radial = troubleOf(plan, 'lens')?.radial ?? 0;
  const corner2 = (widthPx ** 2 + heightPx ** 2) / 4;
  // Seen from behind: the seen place s of a straight one p solves p = s·(1 + radial·s²).
  let [sx, sy] = [x, y];
  for (let i = 0; i < 20; i++) {
    const stretch = 1 + (radial * (sx * sx + sy * sy)) / corner2;
    [sx, sy] = [x / stretch, y / stretch];
  }
  const roll = ((troubleOf(plan, 'roll')?.rollDeg ?? 0) * Math.PI) / 180;
  x = Math.cos(roll) * sx - Math.sin(roll) * sy;
  y = Math.sin(roll) * sx + Math.cos(roll) * sy;
  const size = troubleOf(plan, 'half-size') ? 0.5 : 1;
  return { xPx: size * (x + widthPx / 2), yPx: size * (y + heightPx / 2) };
}
