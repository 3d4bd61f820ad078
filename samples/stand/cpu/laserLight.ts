import type { FrameView } from '../view/frameView.ts';
import { LASER_REFLECTANCE_POWER, PLAIN_RUBBER, RELIEF_STEP_MM } from '../view/lighting.ts';
import type { StandModel } from '../view/standModel.ts';
import type { TyreMeeter } from './meetTyre.ts';
import type { ReliefMeeter } from './meetRelief.ts';

/** Beyond so many widths of the skirt there is no light worth adding. */
const REACH = 3.2;
/** Steps toward the laser out of a cut. */
const SHADOW_STEPS = 9;

/**
 * Light of the laser that a place sends to the camera, in parts of `peak`; 0 where a block stands
 * between it and the laser. `meeter.found` is moved when a shadow is looked for.
 */
export function laserLight(
  model: StandModel,
  view: FrameView,
  meeter: TyreMeeter,
  reliefs: ReliefMeeter,
  place: { x: number; y: number; z: number },
  normal: readonly [number, number, number],
  reflectance: number,
): number {
  const { laser } = model.scene;
  const { sheet, laserSource } = view;
  const height =
    view.sheetOffsetMm + sheet[0] * place.x + sheet[1] * place.y + sheet[2] * place.z;
  if (view.laserPeak === 0 || Math.abs(height) > REACH * laser.skirtWidthMm) return 0;
  let toX = laserSource[0] - place.x;
  let toY = laserSource[1] - place.y;
  let toZ = laserSource[2] - place.z;
  const away = Math.sqrt(toX * toX + toY * toY + toZ * toZ);
  toX /= away;
  toY /= away;
  toZ /= away;
  const facing = normal[0] * toX + normal[1] * toY + normal[2] * toZ;
  if (facing <= 0) return 0;
  if (reliefs.relief.depthMm > 0.2 && shadowed(meeter, reliefs, place, toX, toY, toZ)) return 0;
  const core = height / laser.widthMm;
  const wide = height / laser.skirtWidthMm;
  const thickness = Math.exp(-0.5 * core * core) + laser.skirt * Math.exp(-0.5 * wide * wide);
  const sent = (reflectance / PLAIN_RUBBER) ** LASER_REFLECTANCE_POWER;
  return view.laserPeak * thickness * facing * sent;
}

function shadowed(
  meeter: TyreMeeter,
  reliefs: ReliefMeeter,
  place: { x: number; y: number; z: number },
  toX: number,
  toY: number,
  toZ: number,
): boolean {
  const { x, y, z } = place;
  // Starts a little off the surface, or it would stand in its own shadow.
  for (let k = 1; k <= SHADOW_STEPS; k++) {
    const step = k * RELIEF_STEP_MM;
    meeter.probePoint(x + step * toX, y + step * toY, z + step * toZ);
    if (meeter.found.outside > 0) return false;
    if (-meeter.found.outside > reliefs.depthAt(meeter) + 0.1) return true;
  }
  return false;
}
