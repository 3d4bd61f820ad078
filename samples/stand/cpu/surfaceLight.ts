import type { FrameView } from '../view/frameView.ts';
import { LIGHTING } from '../view/lighting.ts';

// Test runners turn imported names into property reads, which the loop over pixels would feel.
const L = LIGHTING;

/** Light of lamps and surroundings that falls on a surface with this normal (tyre frame). */
export function fallingLight(view: FrameView, nx: number, ny: number, nz: number): number {
  const { lamp, window, up } = view;
  const wrap = L.lampWrap;
  const toLamp = (nx * lamp[0] + ny * lamp[1] + nz * lamp[2] + wrap) / (1 + wrap);
  const toWindow = (nx * window[0] + ny * window[1] + nz * window[2] + wrap) / (1 + wrap);
  const toSky = nx * up[0] + ny * up[1] + nz * up[2];
  return (
    L.ambient * (1 - L.skyShare + L.skyShare * toSky) +
    (toLamp > 0 ? L.lampLight * toLamp : 0) +
    (toWindow > 0 ? L.windowLight * toWindow : 0)
  );
}

/**
 * Sheen added by a surface that mirrors its surroundings a little: grows toward grazing sight
 * (Schlick) and follows how bright the mirrored direction is.
 */
export function mirroredLight(
  view: FrameView,
  nx: number,
  ny: number,
  nz: number,
  wayX: number,
  wayY: number,
  wayZ: number,
  straight: number,
): number {
  const length = Math.sqrt(wayX * wayX + wayY * wayY + wayZ * wayZ);
  const against = -(nx * wayX + ny * wayY + nz * wayZ) / length;
  const grazing = 1 - Math.max(0, Math.min(1, against));
  const g2 = grazing * grazing;
  const share = straight + (1 - straight) * g2 * g2 * grazing;
  const rx = wayX / length + 2 * against * nx;
  const ry = wayY / length + 2 * against * ny;
  const rz = wayZ / length + 2 * against * nz;
  return share * surroundingLight(view, rx, ry, rz);
}

/** Brightness of the shed in a direction: dark floor, paler walls, two lamps. */
function surroundingLight(view: FrameView, rx: number, ry: number, rz: number): number {
  const { lamp, window, up } = view;
  const height = rx * up[0] + ry * up[1] + rz * up[2];
  const toLamp = Math.max(0, rx * lamp[0] + ry * lamp[1] + rz * lamp[2]);
  const toWindow = Math.max(0, rx * window[0] + ry * window[1] + rz * window[2]);
  const lamp4 = toLamp * toLamp * toLamp * toLamp;
  const window4 = toWindow * toWindow * toWindow * toWindow;
  return 0.12 + 0.2 * Math.max(0, height) + 1.1 * lamp4 * lamp4 * lamp4 + 0.5 * window4;
}
