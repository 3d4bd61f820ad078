import type { SweepSetup } from '../contract/setup.ts';
import type { PictureOverlay } from '../contract/sweep.ts';

/**
 * The setup with the edge as it stands at the sight in this moment, as a sweep that starts now has
 * it in its first picture: whoever reads its film again takes the same edge.
 */
export function withEdgeAtSight(setup: SweepSetup, overlay: PictureOverlay | null): SweepSetup {
  const yPx = overlay && rowAt(overlay.edgePx, overlay.sightPx.xPx);
  if (!overlay || yPx === null || yPx < 0) return withoutEdge(setup);
  const edgePoint = { xPx: overlay.sightPx.xPx, yPx, timeS: 0 };
  return { ...setup, sight: { ...setup.sight, edgePoint } };
}

export function withoutEdge(setup: SweepSetup): SweepSetup {
  const { edgePoint: _, ...sight } = setup.sight;
  return { ...setup, sight };
}

/** Height of a polyline x0, y0, x1, y1, … at a column; null where it does not reach. */
function rowAt(points: Float32Array, xPx: number): number | null {
  for (let i = 0; i + 3 < points.length; i += 2) {
    const [x0, y0, x1, y1] = [points[i]!, points[i + 1]!, points[i + 2]!, points[i + 3]!];
    if ((x0 - xPx) * (x1 - xPx) > 0 || x0 === x1) continue;
    return y0 + ((xPx - x0) / (x1 - x0)) * (y1 - y0);
  }
  return null;
}
