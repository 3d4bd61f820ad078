import type { PictureOverlay } from '../../contract/sweep.ts';

interface PicturePoint {
  readonly xPx: number;
  readonly yPx: number;
}

/** The way of a spot along the tread to the sight, as it lies in the picture. */
export interface SpotWay {
  /** Points of the edge from the sight toward the spot, as far as the edge is in the picture. */
  readonly wayPx: readonly PicturePoint[];
  /** The spot itself; null while it is round the side. */
  readonly spotPx: PicturePoint | null;
}

/**
 * @param azimuthDeg where the spot stands, degrees in [−180, 180) clockwise from the sight; beyond
 *   half a turn on the side on which the hand is to bring it in
 */
export function spotInPicture(overlay: PictureOverlay, azimuthDeg: number): SpotWay | null {
  const { edgePx, edgeAzimuthDeg } = overlay;
  if (edgeAzimuthDeg === undefined) return null;
  const points = Array.from(edgeAzimuthDeg, (deg, i) => ({
    deg,
    xPx: edgePx[2 * i]!,
    yPx: edgePx[2 * i + 1]!,
  }));
  const sight = pointAt(points, 0);
  if (sight === null) return null;
  const between = points
    .filter(({ deg }) => deg * azimuthDeg > 0 && Math.abs(deg) < Math.abs(azimuthDeg))
    .toSorted((a, b) => Math.abs(a.deg) - Math.abs(b.deg));
  const spotPx = pointAt(points, azimuthDeg);
  const wayPx = [sight, ...between, ...(spotPx === null ? [] : [spotPx])];
  return { wayPx: wayPx.map(({ xPx, yPx }) => ({ xPx, yPx })), spotPx };
}

interface EdgePoint extends PicturePoint {
  readonly deg: number;
}

/** Straight between the two points about it; null beyond the last one. */
function pointAt(points: readonly EdgePoint[], azimuthDeg: number): PicturePoint | null {
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i]!, points[i + 1]!];
    if ((a.deg - azimuthDeg) * (b.deg - azimuthDeg) > 0 || a.deg === b.deg) continue;
    const share = (azimuthDeg - a.deg) / (b.deg - a.deg);
    return { xPx: a.xPx + share * (b.xPx - a.xPx), yPx: a.yPx + share * (b.yPx - a.yPx) };
  }
  return null;
}
