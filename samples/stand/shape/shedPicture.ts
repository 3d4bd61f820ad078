import { cross, dot, type Vec3 } from '../../drawnWheel/drawnCamera.ts';
import type { StandScene } from '../scene/standScene.ts';
import { sightSlopes, type StandCamera } from '../view/standCamera.ts';
import { latticeNoise, noiseAt, type LatticeNoise } from './latticeNoise.ts';

/**
 * What stands still behind the wheel, painted once for a camera: a concrete floor, walls, a bench,
 * boxes and tins, the stand's legs; out of focus, at half the picture's size. 255·√light.
 */
export interface ShedPicture {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly texels: Uint8Array;
}

interface Box {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly rgb: Vec3;
}

/** Below the laser plane; from the wheel's axis; mm. */
const FLOOR_MM = -700;
const BACK_WALL_MM = -2300;
const SIDE_WALLS_MM = 1700;
const LEG_RADIUS_MM = 11;
const BLUR_SHARE = 0.004;

const BOXES: readonly Box[] = [
  { from: [-2300, -900, FLOOR_MM], to: [-1750, 150, -60], rgb: [0.16, 0.11, 0.07] },
  { from: [-2250, -1500, FLOOR_MM], to: [-1600, -1050, 220], rgb: [0.05, 0.12, 0.1] },
  { from: [-2200, 300, FLOOR_MM], to: [-1700, 720, -330], rgb: [0.22, 0.15, 0.06] },
  { from: [-2100, 380, -330], to: [-1760, 660, -90], rgb: [0.1, 0.13, 0.2] },
  { from: [-1500, 1080, FLOOR_MM], to: [-1000, 1600, -160], rgb: [0.2, 0.055, 0.04] },
  { from: [-700, -1650, FLOOR_MM], to: [-100, -1250, -260], rgb: [0.09, 0.1, 0.12] },
  { from: [-2050, -700, -60], to: [-1850, -480, 150], rgb: [0.3, 0.29, 0.26] },
  { from: [-2050, -400, -60], to: [-1850, -290, 90], rgb: [0.28, 0.18, 0.02] },
  { from: [-2050, -220, -60], to: [-1850, -110, 60], rgb: [0.04, 0.1, 0.22] },
];

export function shedPicture(scene: StandScene, camera: StandCamera): ShedPicture {
  const widthPx = scene.camera.widthPx >> 1;
  const heightPx = scene.camera.heightPx >> 1;
  const light = new Float32Array(3 * widthPx * heightPx);
  const stains = latticeNoise(scene.seed + 61, 64, 64);
  const { eye, right, down, ahead } = camera.pinhole;
  for (let row = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++) {
      const [a, b] = sightSlopes(camera, 2 * column + 1, 2 * row + 1);
      const way: Vec3 = [0, 1, 2].map((k) => ahead[k] + a * right[k] + b * down[k]) as never;
      light.set(shedLight(eye, way, stains), 3 * (row * widthPx + column));
    }
  }
  const radius = Math.max(1, Math.round(BLUR_SHARE * widthPx));
  const blurred = boxBlur(boxBlur(light, widthPx, heightPx, radius), widthPx, heightPx, radius);
  const texels = Uint8Array.from(blurred, (v) => Math.round(255 * Math.sqrt(Math.min(1, v))));
  return { widthPx, heightPx, texels };
}

function shedLight(eye: Vec3, way: Vec3, stains: LatticeNoise): Vec3 {
  let nearest = Infinity;
  let light: Vec3 = [0.1, 0.1, 0.1];
  const meet = (along: number, rgb: () => Vec3): void => {
    if (along <= 0 || along >= nearest) return;
    nearest = along;
    light = rgb();
  };
  const at = (along: number): Vec3 => [0, 1, 2].map((k) => eye[k] + along * way[k]) as never;
  meet((FLOOR_MM - eye[2]) / way[2], () => floorLight(at((FLOOR_MM - eye[2]) / way[2]), stains));
  meet((BACK_WALL_MM - eye[0]) / way[0], () =>
    wallLight(at((BACK_WALL_MM - eye[0]) / way[0]), stains),
  );
  const side = way[1] > 0 ? SIDE_WALLS_MM : -SIDE_WALLS_MM;
  meet((side - eye[1]) / way[1], () => wallLight(at((side - eye[1]) / way[1]), stains));
  for (const box of BOXES) {
    const hit = meetBox(eye, way, box);
    if (hit) meet(hit.along, () => box.rgb.map((v) => v * hit.shade) as never);
  }
  for (const azimuth of [0.4, 2.5, 4.6]) {
    const foot: Vec3 = [420 * Math.cos(azimuth), 420 * Math.sin(azimuth), FLOOR_MM];
    const cover = meetLeg(eye, way, [0, 0, -140], foot);
    if (cover > 0) light = light.map((v, k) => v + cover * ([0.03, 0.032, 0.036][k] - v)) as never;
  }
  return light;
}

function floorLight(p: Vec3, stains: LatticeNoise): Vec3 {
  const broad = noiseAt(stains, p[0] / 21000, ((p[1] + 20000) / 40000) % 1);
  const small = noiseAt(stains, p[0] / 5200, ((p[1] + 20000) / 9000) % 1);
  const fine = noiseAt(stains, p[0] / 1100, ((p[1] + 20000) / 1900) % 1);
  const joint = Math.min(
    Math.abs((((p[0] % 900) + 900) % 900) - 450),
    Math.abs((((p[1] % 900) + 900) % 900) - 450),
  );
  // The wheel and the stand stand in the light: darker below them.
  const shadow = 1 - 0.45 * Math.exp(-(p[0] ** 2 + p[1] ** 2) / 300000);
  const v = (0.15 + 0.035 * broad + 0.04 * small + 0.02 * fine) * shadow * (joint < 5 ? 0.55 : 1);
  return [v, 0.985 * v, 0.95 * v];
}

/** Upright boards, paler above. */
function wallLight(p: Vec3, stains: LatticeNoise): Vec3 {
  const along = (p[0] + p[1] + 20000) / 140;
  const board = noiseAt(stains, Math.floor(along) * 0.137, 0.3);
  const seam = Math.abs(along - Math.round(along)) < 0.05 ? 0.6 : 1;
  const v = (0.2 + 0.05 * board + 0.00006 * (p[2] - FLOOR_MM)) * seam;
  return [v, 0.97 * v, 0.9 * v];
}

function meetBox(eye: Vec3, way: Vec3, box: Box): { along: number; shade: number } | null {
  let near = 0;
  let far = Infinity;
  let face = 0;
  for (let k = 0; k < 3; k++) {
    const a = (box.from[k] - eye[k]) / way[k];
    const b = (box.to[k] - eye[k]) / way[k];
    if (Math.min(a, b) > near) {
      near = Math.min(a, b);
      face = k;
    }
    far = Math.min(far, Math.max(a, b));
  }
  return near < far ? { along: near, shade: [0.9, 0.65, 1.35][face] } : null;
}

/** Share of the line of sight that a round leg covers. */
function meetLeg(eye: Vec3, way: Vec3, top: Vec3, foot: Vec3): number {
  const axis: Vec3 = [foot[0] - top[0], foot[1] - top[1], foot[2] - top[2]];
  const normal = cross(way, axis);
  const from: Vec3 = [top[0] - eye[0], top[1] - eye[1], top[2] - eye[2]];
  const away = Math.abs(dot(from, normal)) / Math.hypot(...normal);
  if (away > LEG_RADIUS_MM + 2) return 0;
  // Where along the leg: solved in the plane that the two lines span.
  const side = cross(normal, way);
  const along = -dot(from, side) / dot(axis, side);
  if (along < 0 || along > 1) return 0;
  return Math.max(0, Math.min(1, (LEG_RADIUS_MM + 1 - away) / 2));
}

function boxBlur(light: Float32Array, w: number, h: number, radius: number): Float32Array {
  const across = new Float32Array(light.length);
  const done = new Float32Array(light.length);
  blurLines(light, across, { lines: h, length: w, step: 3, next: 3 * w, radius });
  blurLines(across, done, { lines: w, length: h, step: 3 * w, next: 3, radius });
  return done;
}

function blurLines(
  from: Float32Array,
  to: Float32Array,
  run: { lines: number; length: number; step: number; next: number; radius: number },
): void {
  const { length, step, radius } = run;
  const at = (start: number, i: number): number =>
    from[start + step * Math.max(0, Math.min(length - 1, i))];
  for (let line = 0; line < run.lines; line++) {
    for (let k = 0; k < 3; k++) {
      const start = line * run.next + k;
      let sum = 0;
      for (let i = -radius; i <= radius; i++) sum += at(start, i);
      for (let i = 0; i < length; i++) {
        to[start + step * i] = sum / (2 * radius + 1);
        sum += at(start, i + radius + 1) - at(start, i - radius);
      }
    }
  }
}
