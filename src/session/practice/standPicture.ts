import { filmNoise } from '../../../samples/stand/cpu/filmNoise.ts';
import { renderPicture, type SightCount } from '../../../samples/stand/cpu/renderPicture.ts';
import { glStand } from '../../../samples/stand/gl/glStand.ts';
import type { StandWeight } from '../../../samples/stand/scene/standScene.ts';
import type { WheelPose } from '../../../samples/stand/motion/wheelPose.ts';
import { inSize, withWeights, type StandModel } from '../../../samples/stand/view/standModel.ts';
import { LIVE_MS, liveSize } from './liveSize.ts';

/** The stand's picture as it can be drawn here: on the graphics unit, or by the processor. */
export interface StandPicture {
  readonly canvas: HTMLCanvasElement;
  readonly by: 'graphics' | 'processor';
  readonly model: StandModel;
  /** Time between pictures that this machine can keep, ms. */
  readonly everyMs: number;
  draw(pose: WheelPose): void;
  /** A copy of what was drawn last, for measuring; its receiver closes it. */
  taken(timeS: number): VideoFrame | Promise<ImageBitmap>;
  /** Other weights on the rim; the picture keeps its size. */
  changeWeights(weights: readonly StandWeight[]): void;
  dispose(): void;
}

/** By the processor: ten a second, and half the time left for everything else. */
const SLOW_LIVE_MS = 100;
const SLOW_DRAW_MS = 50;

const SLOW_SIZE = { widthPx: 640, heightPx: 360 } as const;
/** Sights a pixel, and what a picture then takes of the time with one: most pixels have no border in them. */
const SLOW_SIGHTS: readonly (readonly [SightCount, number])[] = [
  [4, 2.8],
  [2, 1.9],
];

/**
 * Times a small part of the picture once and takes the largest size that keeps up. The size is
 * then fixed: a camera that changes its picture makes every sweep void.
 */
export function standPicture(model: StandModel, pose: WheelPose): StandPicture {
  return graphicsPicture(model, pose) ?? processorPicture(model, pose);
}

function graphicsPicture(model: StandModel, pose: WheelPose): StandPicture | null {
  const probed = inSize(model, 640, 360);
  const probe = glStand(document.createElement('canvas'), probed);
  if (!probe) return null;
  const sightMs =
    probe.probeMs(pose) / (probed.scene.camera.widthPx * probed.scene.camera.heightPx * 4);
  probe.dispose();
  const size = liveSize(sightMs);
  if (!size) return null;
  const canvas = document.createElement('canvas');
  const sized = inSize(model, size.widthPx, size.heightPx);
  const stand = glStand(canvas, sized);
  if (!stand) return null;
  stand.setSights(size.sights);
  return {
    canvas,
    by: 'graphics',
    model: sized,
    everyMs: LIVE_MS,
    draw: (at) => stand.draw(at),
    taken: (timeS) => frameOf(canvas, timeS),
    changeWeights: (weights) => stand.changeRim(withWeights(sized, weights)),
    dispose: () => stand.dispose(),
  };
}

function processorPicture(model: StandModel, pose: WheelPose): StandPicture {
  const tried = inSize(model, 320, 180);
  renderPicture(tried, pose, null, 1);
  const startMs = performance.now();
  renderPicture(tried, pose, null, 1);
  const { widthPx, heightPx } = SLOW_SIZE;
  const onceMs = ((performance.now() - startMs) * widthPx * heightPx) / (320 * 180);
  const sights = SLOW_SIGHTS.find(([, times]) => times * onceMs < SLOW_DRAW_MS)?.[0] ?? 1;
  let drawn = inSize(model, widthPx, heightPx);
  const canvas = document.createElement('canvas');
  canvas.width = widthPx;
  canvas.height = heightPx;
  // Kept by the processor: the pixels come from there and are read again there.
  const context = canvas.getContext('2d', { alpha: false, willReadFrequently: true })!;
  const image = context.createImageData(widthPx, heightPx);
  image.data.fill(255);
  const noise = filmNoise(drawn.scene);
  let count = 0;
  return {
    canvas,
    by: 'processor',
    model: drawn,
    everyMs: SLOW_LIVE_MS,
    draw(at) {
      const { rgb } = renderPicture(drawn, at, noise.forPicture(count++), sights);
      for (let i = 0, j = 0; i < rgb.length; i += 3, j += 4) {
        image.data[j] = rgb[i]!;
        image.data[j + 1] = rgb[i + 1]!;
        image.data[j + 2] = rgb[i + 2]!;
      }
      context.putImageData(image, 0, 0);
    },
    taken: (timeS) => frameOf(canvas, timeS),
    changeWeights(weights) {
      drawn = withWeights(drawn, weights);
    },
    dispose: () => undefined,
  };
}

function frameOf(canvas: HTMLCanvasElement, timeS: number): VideoFrame | Promise<ImageBitmap> {
  return 'VideoFrame' in globalThis
    ? new VideoFrame(canvas, { timestamp: Math.round(timeS * 1e6) })
    : createImageBitmap(canvas);
}
