import type { WheelPose } from '../motion/wheelPose.ts';
import { frameView } from '../view/frameView.ts';
import { cameraSteps, LIGHTING } from '../view/lighting.ts';
import type { StandModel } from '../view/standModel.ts';
import { sightLight } from './sightLight.ts';

/** Linear light 0 to {@link CURVE_TOP} in steps, looked up instead of a power a pixel. */
const CURVE_STEPS = 8192;
const CURVE_TOP = 4;
const CURVE = Float32Array.from({ length: CURVE_STEPS }, (_, i) =>
  cameraSteps((i * CURVE_TOP) / CURVE_STEPS),
);
/** Lines of sight a pixel. */
export type SightCount = 1 | 2 | 4;
/** Places within a pixel at which light is gathered, shares of its side. */
const INSIDE_X = Float64Array.of(0.375, 0.625, 0.875, 0.125);
const INSIDE_Y = Float64Array.of(0.125, 0.875, 0.375, 0.625);

export interface RenderedPicture {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Red, green, blue, 8 bit with the camera's curve. */
  readonly rgb: Uint8Array;
}

/**
 * Neighbours whose light differs by more than this share of their sum, and by more than camera noise
 * in the dark, have a border between them: there one line of sight a pixel would make stairs.
 */
const BORDER_SHARE = 0.05;
const BORDER_LEAST = 0.004;

/**
 * One picture of the stand. `normal` gives deviates for the camera's noise; none, no noise.
 * One line of sight through the middle of each pixel, and where light changes from pixel to pixel
 * so many more, so that the borders of cuts and line are no stairs; fewer are quicker.
 */
export function renderPicture(
  model: StandModel,
  pose: WheelPose,
  noise: NoiseTable | null,
  sights: SightCount = 4,
): RenderedPicture {
  const { widthPx, heightPx, exposure } = model.scene.camera;
  const light = new Float32Array(3 * widthPx * heightPx);
  const sum = new Float64Array(3);
  const addLight = lightThrough(model, pose, sum);
  for (let row = 0, at = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++, at += 3) {
      sum[0] = sum[1] = sum[2] = 0;
      addLight(column, row, 0.5, 0.5);
      light[at] = sum[0];
      light[at + 1] = sum[1];
      light[at + 2] = sum[2];
    }
  }
  if (sights > 1) {
    const borders = borderPixels(light, widthPx, heightPx);
    const share = 1 / sights;
    for (let i = 0, at = 0; i < borders.length; i++, at += 3) {
      if (borders[i] === 0) continue;
      sum[0] = sum[1] = sum[2] = 0;
      const row = Math.floor(i / widthPx);
      for (let k = 0; k < sights; k++) addLight(i - row * widthPx, row, INSIDE_X[k], INSIDE_Y[k]);
      for (let k = 0; k < 3; k++) light[at + k] = sum[k] * share;
    }
  }
  return { widthPx, heightPx, rgb: exposed(light, exposure, noise) };
}

/** Adds the light of the line of sight through a place in a pixel to `sum`. */
function lightThrough(model: StandModel, pose: WheelPose, sum: Float64Array) {
  const view = frameView(model, pose);
  const sight = sightLight(model, view);
  const shedLight = shedLookup(model);
  const { widthPx, heightPx } = model.scene.camera;
  const half = widthPx / 2;
  const halfHigh = heightPx / 2;
  const { distortion, pinhole } = model.camera;
  const perUnit = half / pinhole.focalPx;
  const [rightX, rightY, rightZ] = view.right;
  const [downX, downY, downZ] = view.down;
  const [aheadX, aheadY, aheadZ] = view.ahead;
  return (column: number, row: number, insideX: number, insideY: number): void => {
    const a = (column + insideX - half) / half;
    const b = (row + insideY - halfHigh) / half;
    const bent = (1 - distortion * (a * a + b * b)) * perUnit;
    const p = a * bent;
    const q = b * bent;
    const dx = aheadX + p * rightX + q * downX;
    const dy = aheadY + p * rightY + q * downY;
    const dz = aheadZ + p * rightZ + q * downZ;
    if (!sight.add(dx, dy, dz, sum)) shedLight(column, row, sum);
  };
}

/** 1 for each pixel whose light is another than that of a neighbour. */
function borderPixels(light: Float32Array, widthPx: number, heightPx: number): Uint8Array {
  const borders = new Uint8Array(widthPx * heightPx);
  const apart = (i: number, j: number): boolean => {
    for (let k = 0; k < 3; k++) {
      const one = light[3 * i + k];
      const other = light[3 * j + k];
      const step = one > other ? one - other : other - one;
      if (step > BORDER_LEAST + BORDER_SHARE * (one + other)) return true;
    }
    return false;
  };
  for (let row = 0, i = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++, i++) {
      if (column + 1 < widthPx && apart(i, i + 1)) borders[i] = borders[i + 1] = 1;
      if (row + 1 < heightPx && apart(i, i + widthPx)) borders[i] = borders[i + widthPx] = 1;
    }
  }
  return borders;
}

/** Deviates drawn once; each picture reads them from a place of its own. */
export interface NoiseTable {
  readonly values: Float32Array;
  at: number;
}

function exposed(light: Float32Array, exposure: number, noise: NoiseTable | null): Uint8Array {
  const rgb = new Uint8ClampedArray(light.length);
  const perLight = (exposure * CURVE_STEPS) / CURVE_TOP;
  for (let i = 0; i < light.length; i += 3) {
    for (let k = i; k < i + 3; k++) {
      const step = Math.min(CURVE_STEPS - 1, light[k] * perLight) | 0;
      rgb[k] = CURVE[step] + (noise ? noise.values[noise.at++] : 0);
    }
    if (noise && noise.at > noise.values.length - 3) noise.at = 0;
  }
  return new Uint8Array(rgb.buffer);
}

function shedLookup(model: StandModel) {
  const { widthPx, heightPx, texels } = model.shed;
  const { gain } = LIGHTING;
  return (column: number, row: number, sum: Float64Array): void => {
    const at = 3 * (Math.min(heightPx - 1, row >> 1) * widthPx + Math.min(widthPx - 1, column >> 1));
    for (let k = 0; k < 3; k++) {
      const root = texels[at + k] / 255;
      sum[k] += gain * root * root;
    }
  };
}
