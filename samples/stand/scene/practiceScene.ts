import { seededRandom } from '../../drawnWheel/seededRandom.ts';
import { standScene } from './readScene.ts';
import type { StandScene, StandSceneInput } from './standScene.ts';

/** What makes a practice wheel harder than a clean one on a good stand. */
export const DIFFICULTIES = [
  'clean',
  'dusty',
  'dim',
  'sloping-plate',
  'run-out',
  'lively-ball',
] as const;
export type Difficulty = (typeof DIFFICULTIES)[number];

/** Least and most unbalance that is hidden, g at the weight radius. */
const HIDDEN_G = { least: 10, most: 60 } as const;

export interface PracticeChoice {
  readonly seed: number;
  readonly difficulty: Difficulty;
  readonly widthPx?: number;
  readonly heightPx?: number;
  readonly frameRateHz?: number;
}

/** A wheel drawn from a seed: its measures, its tread and where it is heavy. */
export function practiceScene(choice: PracticeChoice): StandScene {
  const { seed, difficulty, ...camera } = choice;
  const random = seededRandom(seed * 7 + 3);
  const between = (low: number, high: number, step: number): number =>
    Math.round((low + (high - low) * random()) / step) * step;
  const weightRadiusMm = 185;
  const hiddenG = HIDDEN_G.least + (HIDDEN_G.most - HIDDEN_G.least) * random();
  const edgeRadiusMm = between(298, 316, 1);
  const scene: StandSceneInput = {
    label: `Practice wheel ${seed}`,
    seed,
    wheel: {
      massKg: between(14.5, 18.5, 0.1),
      edgeRadiusMm,
      weightRadiusMm,
      transverseGyrationMm: 0.56 * edgeRadiusMm,
      unbalance: { amountGmm: hiddenG * weightRadiusMm, heavySpotDeg: 360 * random() },
    },
    tyre: {
      pitches: between(62, 78, 1),
      dust: 0.05 + 0.2 * random(),
      radialHighAtDeg: 360 * random(),
    },
    rim: { spokes: between(5, 9, 1), colour: random() < 0.7 ? 'silver' : 'dark' },
    stand: {
      pendulumDepthMm: between(7.6, 9.2, 0.1),
      // As a person sets the laser: on the face of the rib, a little above its edge when balanced.
      edgeAboveLineMm: between(-5, -2, 0.5),
      slopeMrad: 0.3 + 0.4 * random(),
      downhillAzimuthDeg: 360 * random(),
    },
    laser: { sourceAzimuthDeg: between(-20, 20, 1) },
    camera,
  };
  return standScene(harder(scene, difficulty, random));
}

function harder(
  scene: StandSceneInput,
  difficulty: Difficulty,
  random: () => number,
): StandSceneInput {
  switch (difficulty) {
    case 'clean':
      return scene;
    case 'dusty':
      return { ...scene, tyre: { ...scene.tyre, dust: 0.6 + 0.2 * random() } };
    case 'dim':
      return {
        ...scene,
        camera: { ...scene.camera, exposure: 0.32, noise: 4 },
        laser: { ...scene.laser, peak: 1.6 },
      };
    case 'sloping-plate':
      return { ...scene, stand: { ...scene.stand, slopeMrad: 3 + 2 * random() } };
    case 'run-out':
      return {
        ...scene,
        tyre: {
          ...scene.tyre,
          lateralRunOut: [
            { order: 1, amplitudeMm: 0.3, highAtDeg: 360 * random() },
            { order: 2, amplitudeMm: 0.25, highAtDeg: 360 * random() },
            { order: 3, amplitudeMm: 0.1, highAtDeg: 360 * random() },
          ],
          radialRunOutMm: 0.4,
        },
      };
    case 'lively-ball':
      return {
        ...scene,
        stand: { ...scene.stand, pendulumDepthMm: 5, startSwingMm: 3, handSwingMm: 0.8 },
      };
  }
}
