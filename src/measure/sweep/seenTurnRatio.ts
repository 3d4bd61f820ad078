import { carriedPoint } from './carriedPoint.ts';
import type { WheelView } from './wheelView.ts';

const PROBE_DEG = 20;

/** How much larger the same movement of the tread looks, in degrees, by another camera's band. */
export function seenTurnRatio(from: WheelView, to: WheelView): number {
  const left = carriedPoint(from, to, PROBE_DEG, -10);
  const right = carriedPoint(from, to, -PROBE_DEG, -10);
  return left && right ? (left.azimuthDeg - right.azimuthDeg) / (2 * PROBE_DEG) : 1;
}
