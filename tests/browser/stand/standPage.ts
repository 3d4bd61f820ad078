import { renderPicture } from '../../../samples/stand/cpu/renderPicture.ts';
import { glStand } from '../../../samples/stand/gl/glStand.ts';
import { standMotion } from '../../../samples/stand/motion/standMotion.ts';
import { standScene } from '../../../samples/stand/scene/readScene.ts';
import type { StandSceneInput } from '../../../samples/stand/scene/standScene.ts';
import { standModel } from '../../../samples/stand/view/standModel.ts';

/** How two renderings of one scene differ, steps of 255. */
export interface Difference {
  readonly mean: number;
  /** Share of pixels in which a colour is off by more than 24 steps. */
  readonly farShare: number;
  /** Way in pixels by which the laser's line lies apart, mean over the columns that have it. */
  readonly linePx: number;
  readonly glMs: number;
}

declare global {
  interface Window {
    compare(changes: StandSceneInput, turnDeg: number): Difference;
  }
}

/** Draws one picture without noise both ways. */
window.compare = (changes, turnDeg) => {
  const scene = standScene({ ...changes, camera: { ...changes.camera, noise: 0 } });
  const model = standModel(scene);
  const pose = standMotion(scene, turnDeg).pose();
  const canvas = document.querySelector('canvas')!;
  const gl = glStand(canvas, model);
  if (!gl) throw new Error('no WebGL2');
  const { widthPx, heightPx } = scene.camera;
  gl.draw(pose);
  const flat = document.createElement('canvas');
  [flat.width, flat.height] = [widthPx, heightPx];
  const context = flat.getContext('2d', { willReadFrequently: true })!;
  const startMs = performance.now();
  gl.draw(pose);
  context.drawImage(canvas, 0, 0);
  const rgba = context.getImageData(0, 0, widthPx, heightPx).data;
  const glMs = performance.now() - startMs;
  const { rgb } = renderPicture(model, pose, null);
  return { ...differenceOf(rgba, rgb, widthPx, heightPx), glMs };
};

function differenceOf(rgba: Uint8ClampedArray, rgb: Uint8Array, width: number, height: number) {
  let sum = 0;
  let far = 0;
  for (let i = 0; i < width * height; i++) {
    const off = [0, 1, 2].map((k) => Math.abs(rgba[4 * i + k] - rgb[3 * i + k]));
    sum += off[0] + off[1] + off[2];
    if (Math.max(...off) > 24) far += 1;
  }
  let apart = 0;
  let columns = 0;
  for (let x = 0; x < width; x++) {
    const own = greenCentre(height, (y) => greenness(rgba, 4 * (y * width + x)));
    const other = greenCentre(height, (y) => greenness(rgb, 3 * (y * width + x)));
    if (own === null || other === null) continue;
    apart += Math.abs(own - other);
    columns += 1;
  }
  return {
    mean: sum / (3 * width * height),
    farShare: far / (width * height),
    linePx: apart / columns,
  };
}

const greenness = (pixels: ArrayLike<number>, at: number): number =>
  Math.max(0, pixels[at + 1] - Math.max(pixels[at], pixels[at + 2]) - 30);

function greenCentre(height: number, at: (y: number) => number): number | null {
  let [weight, moment] = [0, 0];
  for (let y = 0; y < height; y++) {
    weight += at(y);
    moment += y * at(y);
  }
  return weight > 60 ? moment / weight : null;
}
