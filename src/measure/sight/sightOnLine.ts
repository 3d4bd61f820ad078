import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { projectPoint, type Camera } from '../geometry/camera.ts';

/** The point of the line's circle that appears at a picture column, nearest to the camera. */
export function sightOnLine(
  camera: Camera,
  radiusMm: number,
  xPx: number,
): { bearingDeg: number; px: { xPx: number; yPx: number } } | null {
  const at = new Float64Array(2);
  const columnOf = (bearingDeg: number): number => {
    const b = bearingDeg * RAD_PER_DEG;
    return projectPoint(camera, radiusMm * Math.cos(b), radiusMm * Math.sin(b), 0, at)
      ? at[0]
      : NaN;
  };
  // Columns fall as bearings rise: halve the interval.
  let low = -50;
  let high = 50;
  if (!(columnOf(low) > xPx && columnOf(high) < xPx)) return null;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (columnOf(middle) > xPx) low = middle;
    else high = middle;
  }
  columnOf(low);
  return { bearingDeg: low, px: { xPx: at[0], yPx: at[1] } };
}
