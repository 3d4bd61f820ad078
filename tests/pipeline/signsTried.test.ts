import { beforeAll, describe, expect, it } from 'vitest';

import { filmNoise } from '../../samples/stand/cpu/filmNoise.ts';
import { renderPicture } from '../../samples/stand/cpu/renderPicture.ts';
import { filmSetup } from '../../samples/stand/film/filmSetup.ts';
import { HAND_OFF, standMotion, type HandOnWheel } from '../../samples/stand/motion/standMotion.ts';
import { practiceScene } from '../../samples/stand/scene/practiceScene.ts';
import { inSize, standModel } from '../../samples/stand/view/standModel.ts';
import type { YuvPicture } from '../../src/contract/picture.ts';
import type { SweepSetup } from '../../src/contract/setup.ts';
import type { SweepProgress } from '../../src/contract/sweep.ts';
import {
  PRESS_TEST_START,
  pressTestAfter,
  TURN_TEST_START,
  turnTestAfter,
  type PressTest,
  type TurnTest,
} from '../../src/job/signTest.ts';
import { createSweepReader } from '../../src/measure/sweepReader.ts';
import { yuvFromRgb } from './yuvFromRgb.ts';
import { headDown, mirrored } from './spoiltPictures.ts';

/**
 * The trials by hand before moving pictures: the practice stand's wheel settles, its rim is pressed
 * down at the sight and let go, then the wheel is turned clockwise. The core sees pictures and
 * nothing else.
 */
const EVERY_S = 0.1;
/** Lines of sight at borders: two draw them straight enough, and twice as fast as four. */
const SIGHTS = 2;
const SIZE = { widthPx: 640, heightPx: 360 } as const;
/** Found and settled; pressed; let go; turned. */
const PRESS_S = 6;
const LET_GO_S = 8;
const TURN_S = 10;
const END_S = 13.5;
/** As the practice stand presses: the rim goes down by some 7 mm. */
const PRESS_N = 0.1;
const TURN_DEG_PER_S = 10;
const START_DEG = -60;

let pictures: YuvPicture[];
let setup: SweepSetup;

beforeAll(() => {
  const scene = practiceScene({ seed: 4, difficulty: 'clean' });
  const model = inSize(standModel(scene), SIZE.widthPx, SIZE.heightPx);
  const motion = standMotion(scene, START_DEG);
  const noise = filmNoise(model.scene);
  const handAt = (timeS: number): HandOnWheel => ({
    leads:
      timeS < TURN_S
        ? null
        : {
            turnDeg: START_DEG + TURN_DEG_PER_S * (timeS - TURN_S),
            rateDegPerS: TURN_DEG_PER_S,
          },
    // A hand steadies the wheel before and after the press.
    holds: timeS < PRESS_S || (timeS >= LET_GO_S && timeS < TURN_S),
    presses:
      timeS >= PRESS_S && timeS < LET_GO_S ? { forceN: PRESS_N, azimuthDeg: 0 } : HAND_OFF.presses,
  });
  const poses = Array.from({ length: END_S / EVERY_S }, (_, i) =>
    motion.advance(EVERY_S, handAt(i * EVERY_S)),
  );
  setup = filmSetup(model, poses);
  pictures = poses.map((pose, i) =>
    yuvFromRgb(renderPicture(model, pose, noise.forPicture(i), SIGHTS).rgb, SIZE, i * EVERY_S),
  );
}, 900_000);

/** As the sight does it: press first, then turn. */
function tried(all: readonly YuvPicture[]) {
  const reader = createSweepReader(withoutEdge(setup), { followOnly: true });
  const progress: SweepProgress[] = [];
  let press: PressTest = PRESS_TEST_START;
  let turn: TurnTest = TURN_TEST_START;
  let pressedAtS: number | null = null;
  for (const picture of all) {
    const now = reader.addFrame(picture);
    progress.push(now);
    if (press.step !== 'told') {
      press = pressTestAfter(press, now);
      if (press.step === 'told') pressedAtS = now.timeS;
    } else turn = turnTestAfter(turn, now);
  }
  return { press, turn, pressedAtS, progress };
}

/** The tapped point lies elsewhere in a picture that is turned: the edge is found by itself. */
function withoutEdge(whole: SweepSetup): SweepSetup {
  const { edgePoint: _, ...sight } = whole.sight;
  return { ...whole, sight };
}

describe('the trials by hand before moving pictures', () => {
  it('a press is seen as down while it is held, a turn as clockwise', () => {
    const { press, turn, pressedAtS } = tried(pictures);
    expect(press).toEqual({ step: 'told', outcome: 'confirmed' });
    expect(pressedAtS).toBeGreaterThan(PRESS_S);
    expect(pressedAtS).toBeLessThan(LET_GO_S + 0.5);
    expect(turn).toEqual({ step: 'told', outcome: 'confirmed' });
  });

  it('before a mirrored picture down stays down, and the turn is told as reversed', () => {
    const { press, turn } = tried(pictures.map(mirrored));
    expect(press).toEqual({ step: 'told', outcome: 'confirmed' });
    expect(turn).toEqual({ step: 'told', outcome: 'reversed' });
  });

  it('a picture on its head confirms nothing: it is named as that', () => {
    const { press, progress } = tried(pictures.map(headDown));
    expect(press.step).toBe('settle');
    expect(progress.some(({ trouble }) => trouble === 'picture-upside-down')).toBe(true);
  });
});
