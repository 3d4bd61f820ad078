import type { StandWeight } from './standScene.ts';

/** Length along the rim of one gram, mm, and of one piece of 5 g: common zinc strips (from memory). */
const STRIP_MM_PER_G = 2.6;
export const PIECE_MM = 13;

export function stripLengthMm({ massG }: StandWeight): number {
  return STRIP_MM_PER_G * Math.abs(massG);
}

/**
 * Pull of a strip that lies along the rim, g·mm: m·r·sin(x)/x, x half its angle; 30 g at 185 mm pull
 * a hundredth less than at one point. Source: centroid of a circular arc.
 */
export function stripMomentGmm(weight: StandWeight): number {
  const { massG, radiusMm } = weight;
  const x = stripLengthMm(weight) / (2 * radiusMm);
  return massG * radiusMm * (x < 1e-6 ? 1 : Math.sin(x) / x);
}
