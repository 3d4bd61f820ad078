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
 * One picture of the stand. `normal` gives deviates for the camera's noise; none, no noise.
 * With four lines of sight a pixel the borders of cuts and line are no stairs; fewer are quicker.
 */
export function renderPicture(
  model: StandModel,
  pose: WheelPose,
  noise: NoiseTable | null,
  sights: SightCount = 4,
): RenderedPicture {
  const { widthPx, heightPx, exposure } = model.scene.camera;
  const view = frameView(model, pose);
  const sight = sightLight(model, view);
  const rgb = new Uint8ClampedArray(3 * widthPx * heightPx);
  const sum = new Float64Array(3);
  const { focalPx } = model.camera.pinhole;
  const half = widthPx / 2;
  const { distortion } = model.camera;
  const { right, down, ahead } = view;
  const perUnit = half / focalPx;
  const shedLight = shedLookup(model);
  for (let row = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++) {
      sum.fill(0);
      for (let k = 0; k < sights; k++) {
        const a = (column + (sights === 1 ? 0.5 : INSIDE_X[k]) - half) / half;
        const b = (row + (sights === 1 ? 0.5 : INSIDE_Y[k]) - heightPx / 2) / half;
        const bent = (1 - distortion * (a * a + b * b)) * perUnit;
        const p = a * bent;
        const q = b * bent;
        const dx = ahead[0] + p * right[0] + q * down[0];
        const dy = ahead[1] + p * right[1] + q * down[1];
        const dz = ahead[2] + p * right[2] + q * down[2];
        if (!sight.add(dx, dy, dz, sum)) shedLight(column, row, sum);
      }
      writePixel(rgb, 3 * (row * widthPx + column), sum, exposure / sights, noise);
    }
  }
  return { widthPx, heightPx, rgb: new Uint8Array(rgb.buffer) };
}

/** Deviates drawn once; each picture reads them from a place of its own. */
export interface NoiseTable {
  readonly values: Float32Array;
  at: number;
}

function writePixel(
  rgb: Uint8ClampedArray,
  at: number,
  sum: Float64Array,
  exposure: number,
  noise: NoiseTable | null,
): void {
  for (let k = 0; k < 3; k++) {
    const step = Math.min(CURVE_STEPS - 1, (sum[k] * exposure * CURVE_STEPS) / CURVE_TOP) | 0;
    rgb[at + k] = CURVE[step] + (noise ? noise.values[noise.at++] : 0);
  }
  if (noise && noise.at > noise.values.length - 3) noise.at = 0;
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
