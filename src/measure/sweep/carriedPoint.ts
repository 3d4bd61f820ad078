import { projectPoint } from '../geometry/camera.ts';
import { cylinderPointAtPixel } from '../geometry/cylinder.ts';
import { roomPoint, type WheelView } from './wheelView.ts';

/** A point of one camera's band as another camera's band has it: through the pixel that shows both. */
export function carriedPoint(
  from: WheelView,
  to: WheelView,
  azimuthDeg: number,
  zMm: number,
): { readonly azimuthDeg: number; readonly zMm: number } | null {
  const { xMm, yMm } = roomPoint(from, azimuthDeg);
  const at = new Float64Array(2);
  if (!projectPoint(from.sight.camera, xMm, yMm, zMm, at)) return null;
  const point = cylinderPointAtPixel(to.sight.camera, to.setup.wheel.edgeRadiusMm, at[0]!, at[1]!);
  return point && { azimuthDeg: point.bearingDeg - to.sight.sightBearingDeg, zMm: point.zMm };
}
