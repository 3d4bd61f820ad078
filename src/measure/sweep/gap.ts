import { RAD_PER_DEG } from '../../quantities/angle.ts';
import type { EdgeObservations } from './edgeObservations.ts';

/** Height of the edge above the line at one observation's block by its frame's lean, mm. */
export function gapMm(observations: EdgeObservations, i: number, block: number): number {
  const { azimuthsDeg, leans, offsetMm, edgeRadiusMm } = observations;
  const a = azimuthsDeg[block] * RAD_PER_DEG;
  return offsetMm + edgeRadiusMm * (leans[i].toward * Math.cos(a) + leans[i].across * Math.sin(a));
}
