import { filmSetup } from '../../../samples/stand/film/filmSetup.ts';
import {
  HAND_OFF,
  standMotion,
  type HandOnWheel,
} from '../../../samples/stand/motion/standMotion.ts';
import { wholeUnbalanceGmm } from '../../../samples/stand/motion/wheelOnBall.ts';
import { practiceScene, type Difficulty } from '../../../samples/stand/scene/practiceScene.ts';
import type { StandScene, StandWeight } from '../../../samples/stand/scene/standScene.ts';
import { standModel } from '../../../samples/stand/view/standModel.ts';
import type { LiveSource } from '../../contract/session.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import { vectorAmount, vectorAngleDeg } from '../../quantities/vector.ts';
import { standClock, type StandClock } from './standClock.ts';
import { standPicture } from './standPicture.ts';
import { turningHand, type TurningHand } from './turningHand.ts';

export { DIFFICULTIES, type Difficulty } from '../../../samples/stand/scene/practiceScene.ts';

/** What the practice wheel hides, with the weights that are on it. */
interface PracticeTruth {
  readonly hidden: { readonly amountGmm: number; readonly heavySpotDeg: number };
  readonly left: { readonly amountGmm: number; readonly heavySpotDeg: number };
}

/**
 * A wheel on a ball to balance without a wheel. To the measuring core it is a camera: it gets pictures
 * with their times, and nothing else of it is known there.
 */
export interface PracticeStand {
  readonly seed: number;
  readonly difficulty: Difficulty;
  /** What a person would enter for wheel, stand and camera. */
  readonly setup: SweepSetup;
  /** The same for a sweep that begins now, with the tread edge touched in the picture. */
  setupNow(): SweepSetup;
  /** For looking at. */
  readonly canvas: HTMLCanvasElement;
  /** Whether the canvas is in sight: else the stand rests, but for a sweep. */
  look(on: boolean): void;
  readonly source: LiveSource;
  readonly pictureBy: 'graphics' | 'processor';
  /** Turn now, degrees clockwise; 0 with the valve at the sight. */
  turnDeg(): number;
  /** The hand leads the wheel on by so much, degrees clockwise, until `release`. */
  turnBy(deltaDeg: number): void;
  /** The hand lets go; the wheel keeps the speed it has. */
  release(): void;
  flick(rateDegPerS: number): void;
  hold(on: boolean): void;
  /** Presses the rim down at the sight, or lets go. */
  press(on: boolean): void;
  /** A hand that turns the wheel by itself, slowly enough to be read, until `release`. */
  turnForMe(): void;
  /** True while that hand is at work. */
  isTurning(): boolean;
  weights(): readonly StandWeight[];
  addWeight(massG: number, angleDeg: number): void;
  removeWeight(index: number): void;
  truth(): PracticeTruth;
  dispose(): void;
}

/** Half a piece of 5 g: what a careful person cuts. */
const PIECE_G = 2.5;
/** A light press: about 7 mm at the rim of an ordinary wheel. */
const PRESS_N = 0.1;
/** Motion follows the hand in steps of this, s. */
const HAND_STEP_S = 0.02;
/** Between two pictures for an eye that only looks, ms: a finger need not wait for the drawing. */
const EYE_MS = 33;
const START_TURN_DEG = -35;

export function createPracticeStand(choice: {
  readonly seed: number;
  readonly difficulty: Difficulty;
}): PracticeStand {
  let scene: StandScene = practiceScene(choice);
  const motion = standMotion(scene, START_TURN_DEG);
  const picture = standPicture(standModel(scene), motion.pose());
  const hand: TurningHand = turningHand(() => motion.pose().turnDeg);
  let holds = false;
  let presses = false;

  const handNow = (): HandOnWheel => ({
    ...HAND_OFF,
    leads: hand.leads(),
    holds,
    presses: presses ? { forceN: PRESS_N, azimuthDeg: 0 } : null,
  });
  const clock: StandClock = standClock(picture, (stepS) => {
    for (let s = 0; s < stepS; s += HAND_STEP_S) {
      const part = Math.min(HAND_STEP_S, stepS - s);
      hand.advance(part, clock.isMeasured() ? picture.everyMs : EYE_MS);
      motion.advance(part, handNow());
    }
    return motion.pose();
  });
  const stick = (weights: readonly StandWeight[]): void => {
    scene = { ...scene, wheel: { ...scene.wheel, weights: [...weights] } };
    motion.change(scene);
    picture.changeWeights(weights);
  };

  return {
    ...choice,
    setup: { ...filmSetup(picture.model), weightStepG: PIECE_G },
    setupNow: () => ({
      ...filmSetup(picture.model, [{ ...motion.pose(), timeS: 0 }]),
      weightStepG: PIECE_G,
    }),
    canvas: picture.canvas,
    look: (on) => clock.look(on),
    source: {
      kind: 'practice',
      open: () => Promise.resolve(picture.canvas.captureStream()),
      feed: (take) => clock.feed(take),
    },
    pictureBy: picture.by,
    turnDeg: () => motion.pose().turnDeg,
    turnBy: (deltaDeg) => hand.turnBy(deltaDeg),
    release: () => hand.release(),
    flick(rateDegPerS) {
      hand.release();
      motion.flick(rateDegPerS);
    },
    hold(on) {
      if (on) hand.release();
      holds = on;
    },
    press: (on) => (presses = on),
    turnForMe() {
      holds = false;
      hand.turnOn();
    },
    isTurning: () => hand.isTurningOn(),
    weights: () => scene.wheel.weights,
    addWeight(massG, angleDeg) {
      const radiusMm = scene.wheel.weightRadiusMm;
      stick([...scene.wheel.weights, { massG, radiusMm, angleDeg }]);
    },
    removeWeight: (index) => stick(scene.wheel.weights.filter((_, k) => k !== index)),
    truth() {
      const left = wholeUnbalanceGmm(scene);
      return {
        hidden: scene.wheel.unbalance,
        left: { amountGmm: vectorAmount(left), heavySpotDeg: vectorAngleDeg(left) },
      };
    },
    dispose() {
      clock.stop();
      picture.dispose();
    },
  };
}
