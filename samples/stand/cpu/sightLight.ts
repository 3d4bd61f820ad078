import type { FrameView } from '../view/frameView.ts';
import { LASER_RGB, LIGHTING, RIM_SLOPE_TEXELS, SPECKLE as GRAIN } from '../view/lighting.ts';
import type { StandModel } from '../view/standModel.ts';
import { laserLight } from './laserLight.ts';
import { reliefMeeter } from './meetRelief.ts';
import { meetRim, rimHeight, type RimMeeting } from './meetRim.ts';
import { tyreMeeter } from './meetTyre.ts';
import { fallingLight, mirroredLight } from './surfaceLight.ts';

// Test runners turn imported names into property reads, which the loop over pixels would feel.
const L = LIGHTING;
const SPECKLE = GRAIN;
const N = RIM_SLOPE_TEXELS;

/** Linear light of one line of sight. */
export interface SightLight {
  /** Adds the light seen along the direction to `sum`; false where only the shed is seen. */
  add(dx: number, dy: number, dz: number, sum: Float64Array): boolean;
}

/** How lines of sight of one picture are lit: tyre, rim, laser. */
export function sightLight(model: StandModel, view: FrameView): SightLight {
  const meeter = tyreMeeter(model.profile, model.rim.lidMm);
  const reliefs = reliefMeeter(model);
  const { found } = meeter;
  const { relief } = reliefs;
  const { tread, rim } = model;
  const laserRgb = LASER_RGB[model.scene.laser.colour];
  const onRim: RimMeeting = { column: 0, row: 0, x: 0, y: 0, z: 0 };
  const normal: [number, number, number] = [0, 0, 1];
  const place = { x: 0, y: 0, z: 0 };
  const reflectance = new Float64Array(3);

  const tyreLight = (dx: number, dy: number, dz: number, sum: Float64Array): boolean => {
    reliefs.goOn(meeter);
    if (relief.passed) return false;
    const { x, y, z, radius } = found;
    place.x = x;
    place.y = y;
    place.z = z;
    let out = found.normalRadius;
    let up = found.normalZ;
    let shade = 1;
    if (relief.depthMm > 0) {
      shade = 1 / (1 + L.depthShade * relief.depthMm);
      // Seen from above, a wall that is met inside a groove is mostly the lower one, turned up.
      if (relief.wall) {
        shade *= relief.overGroove ? L.upperFacing : L.otherWalls;
        if (relief.overGroove) {
          out = 0.3;
          up = 0.95;
        }
      }
    }
    normal[0] = (out * x) / radius;
    normal[1] = (out * y) / radius;
    normal[2] = up;
    texelColour();
    const falling = fallingLight(view, normal[0], normal[1], normal[2]) * shade;
    const sheen =
      relief.depthMm > 0
        ? 0
        : mirroredLight(view, normal[0], normal[1], normal[2], dx, dy, dz, L.sheen) * 0.16;
    const mean = reflectance[1];
    let laser = laserLight(model, view, meeter, reliefs, place, normal, mean);
    if (laser > 0) laser *= speckle();
    for (let k = 0; k < 3; k++) {
      sum[k] += L.gain * (reflectance[k] * falling + sheen) + laser * laserRgb[k];
    }
    return true;
  };

  /** Reflectance of the tread map at `relief`'s place, linear between texels. */
  const texelColour = (): void => {
    const { columns, texels } = tread;
    const c0 = relief.column | 0;
    const r0 = relief.row | 0;
    const wc = relief.column - c0;
    const wr = relief.row - r0;
    const a = 4 * (r0 * columns + (c0 % columns));
    const b = 4 * (r0 * columns + ((c0 + 1) % columns));
    const down = 4 * columns;
    for (let k = 0; k < 3; k++) {
      const top = texels[a + k] * (1 - wc) + texels[b + k] * wc;
      const bottom = texels[a + down + k] * (1 - wc) + texels[b + down + k] * wc;
      const root = (top * (1 - wr) + bottom * wr) / 255;
      reflectance[k] = root * root;
    }
  };

  /** Grain of laser light, bound to the rubber. */
  const speckle = (): number => {
    const hash = Math.sin((relief.column | 0) * 12.9898 + (relief.row | 0) * 78.233) * 43758.5453;
    return 1 + SPECKLE * (2 * (hash - Math.floor(hash)) - 1);
  };

  /** A value of the rim's map, linear between texels. */
  const rimTexel = (column: number, row: number, k: number): number => {
    const { size, texels } = rim;
    const at = 4 * ((row | 0) * size + (column | 0)) + k;
    const down = 4 * size;
    const wc = column - (column | 0);
    const wr = row - (row | 0);
    const top = texels[at] * (1 - wc) + texels[at + 4] * wc;
    return top * (1 - wr) + (texels[at + down] * (1 - wc) + texels[at + down + 4] * wc) * wr;
  };

  const rimLight = (dx: number, dy: number, dz: number, sum: Float64Array): boolean => {
    meetRim(rim, found.x, found.y, found.z, dx, dy, dz, onRim);
    const { column, row } = onRim;
    const perMm = rim.size / (2 * rim.halfWidthMm);
    const nx = (rimHeight(rim, column - N, row) - rimHeight(rim, column + N, row)) * perMm;
    const ny = (rimHeight(rim, column, row - N) - rimHeight(rim, column, row + N)) * perMm;
    const length = Math.sqrt(nx * nx + ny * ny + 4 * N * N);
    const ax = nx / length;
    const ay = ny / length;
    const az = (2 * N) / length;
    const deep = Math.max(0, rim.lidMm - onRim.z);
    const shade = 1 / (1 + 0.0006 * deep * deep);
    const falling = fallingLight(view, ax, ay, az) * shade;
    const gloss = rimTexel(column, row, 3) / 255;
    const mirrored = mirroredLight(view, ax, ay, az, dx, dy, dz, 0.35) * gloss * shade;
    for (let k = 0; k < 3; k++) {
      const root = rimTexel(column, row, k) / 255;
      sum[k] += L.gain * root * root * (L.rimFalling * falling + L.rimMirrored * mirrored);
    }
    return true;
  };

  return {
    add(dx, dy, dz, sum) {
      const { eye } = view;
      meeter.meet(eye[0], eye[1], eye[2], dx, dy, dz);
      if (found.kind === 'nothing') return false;
      return found.kind === 'rim' ? rimLight(dx, dy, dz, sum) : tyreLight(dx, dy, dz, sum);
    },
  };
}
