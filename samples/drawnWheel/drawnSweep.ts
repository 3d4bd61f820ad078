import type { YuvPicture } from '../../src/contract/picture.ts';
import { drawnCamera } from './drawnCamera.ts';
import { drawPicture } from './drawPicture.ts';
import { wheelMotion, type WheelState } from './motion.ts';
import { SHED_SCENE, type DrawnScene } from './scene.ts';
import { normalFrom, seededRandom } from './seededRandom.ts';
import { surfaceNodes } from './surfaceNodes.ts';
import { drawTread } from './tread.ts';

export interface DrawnSweep {
  readonly scene: DrawnScene;
  /** The truth, one entry a picture. */
  readonly states: readonly WheelState[];
  /** Draws the pictures one after the other; each is a fresh object. */
  pictures(): Generator<YuvPicture>;
}

const NOISE_VALUES = 1 << 17;

/** A whole sweep; what is not given is that of {@link SHED_SCENE}. */
export function drawnSweep(changes: Partial<DrawnScene> = {}): DrawnSweep {
  const scene: DrawnScene = { ...SHED_SCENE, ...changes };
  const states = wheelMotion(scene);
  return {
    scene,
    states,
    *pictures() {
      const camera = drawnCamera(scene.camera);
      const tread = drawTread(scene);
      const random = seededRandom(scene.seed + 1000);
      const normal = normalFrom(random);
      const table = Int8Array.from({ length: NOISE_VALUES }, () => Math.round(scene.noise * normal()));
      for (const state of states) {
        const nodes = surfaceNodes(scene, camera, state);
        yield drawPicture(scene, tread, nodes, state.turnDeg, state.timeS, { table, random });
      }
    },
  };
}
