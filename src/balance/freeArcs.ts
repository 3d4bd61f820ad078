import { wrapTurnDeg } from '../quantities/angle.ts';
import type { WheelArc } from './weightStock.ts';

/** Free way from each angle of a grid to the next forbidden arc, degrees; −1 inside of one. */
export interface FreeWay {
  readonly aheadDeg: Float64Array;
  readonly behindDeg: Float64Array;
}

/**
 * For the grid `originDeg + i·360/count`: how far a strip may reach clockwise (ahead) and
 * counter-clockwise (behind). The border of an arc is allowed.
 */
export function freeWay(arcs: readonly WheelArc[], originDeg: number, count: number): FreeWay {
  const aheadDeg = new Float64Array(count).fill(360);
  const behindDeg = new Float64Array(count).fill(360);
  for (const { fromDeg, toDeg } of arcs) {
    const isAllRound = toDeg - fromDeg >= 360;
    const spanDeg = wrapTurnDeg(toDeg - fromDeg);
    for (let i = 0; i < count; i += 1) {
      const pastStart = wrapTurnDeg(originDeg + (i * 360) / count - fromDeg);
      const isInside = isAllRound || (pastStart > 0 && pastStart < spanDeg);
      const ahead = isInside ? -1 : (360 - pastStart) % 360;
      const behind = isInside ? -1 : pastStart > 0 ? pastStart - spanDeg : 360 - spanDeg;
      aheadDeg[i] = Math.min(aheadDeg[i]!, ahead);
      behindDeg[i] = Math.min(behindDeg[i]!, behind);
    }
  }
  return { aheadDeg, behindDeg };
}
