import { normalFrom, seededRandom } from '../../drawnWheel/seededRandom.ts';
import type { StandScene } from '../scene/standScene.ts';
import type { NoiseTable } from './renderPicture.ts';

const VALUES = 1 << 20;

/** The camera's noise: seeded deviates, as strong as the scene says; each picture starts elsewhere. */
export function filmNoise(scene: StandScene): { forPicture(index: number): NoiseTable } {
  const normal = normalFrom(seededRandom(scene.seed + 81));
  const values = Float32Array.from({ length: VALUES }, () => scene.camera.noise * normal());
  return {
    // A large odd stride: neighbours in time share no place.
    forPicture: (index) => ({ values, at: (index * 319_993) % (VALUES - 3) }),
  };
}
