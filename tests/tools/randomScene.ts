import { normalFrom, seededRandom } from '../../samples/drawnWheel/seededRandom.ts';
import {
  SHED_SCENE,
  setupOf,
  steadyTurn,
  type DrawnScene,
} from '../../samples/drawnWheel/scene.ts';
import type { SweepSetup } from '../../src/contract/setup.ts';

/**
 * plain: as a careful person sets the tablet up; crooked: rolled, off to the side, bent lens; aside:
 * the sight some 30° to 35° off the place nearest to the camera; blocks: as plain, of a tread whose gaps
 * step up and down from block to block.
 */
export type SceneKind = 'plain' | 'crooked' | 'aside' | 'blocks';

const STEPPED_BLOCKS = { crossWidthMm: 6, stepMm: 1.5 };

/** A drawn scene and what its person enters, all at random from one seed. */
export function randomScene(
  kind: SceneKind,
  seed: number,
): { scene: DrawnScene; setup: SweepSetup } {
  const random = seededRandom(9000 + seed);
  const normal = normalFrom(random);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const sense = random() < 0.5 ? 1 : -1;
  const crooked = kind === 'crooked';
  const downTiltDeg = between(26, 38);
  const distanceMm = between(540, 680);
  const asideDeg = (random() < 0.5 ? -1 : 1) * between(23.5, 25.5);
  const straightDeg = crooked ? between(-20, 20) : between(-4, 4);
  const yawDeg = kind === 'aside' ? asideDeg : straightDeg;
  // The person turns the arm until the line runs through the middle of the picture.
  const nearMm = distanceMm - SHED_SCENE.edgeRadiusMm;
  const heightMm = nearMm * Math.tan(((downTiltDeg + between(-4, 4)) * Math.PI) / 180);
  const scene: DrawnScene = {
    ...SHED_SCENE,
    ...(kind === 'blocks' ? { blocks: STEPPED_BLOCKS } : {}),
    seed,
    laserColour: random() < 0.5 ? 'red' : 'green',
    edgeAboveLineMm: between(-8, 8),
    unbalanceGmm: between(600, 5000),
    heavySpotDeg: between(0, 360),
    standMrad: between(0, 4),
    standHighAzimuthDeg: between(0, 360),
    rockingMm: between(0, 1),
    turnPoints: steadyTurn(between(0, 360), sense * 394, 26),
    camera: {
      ...{ widthPx: 800, heightPx: 450, horizontalFovDeg: between(56, 72), downTiltDeg },
      ...{ yawDeg, rollDeg: crooked ? between(-15, 15) : between(-4, 4) },
      ...{ radial: crooked ? between(-0.1, 0.05) : 0, distanceMm, heightMm },
    },
  };
  const setup = setupOf(scene, { widthMm: 22, colour: 'white' });
  const entered = scene.camera.horizontalFovDeg + 1.2 * normal();
  const knows = random() < 0.5;
  return {
    scene,
    setup: {
      ...setup,
      camera: {
        downTiltDeg: downTiltDeg + 0.3 * normal(),
        ...(knows ? { horizontalFovDeg: entered } : {}),
      },
    },
  };
}
