import { turnAt } from '../../drawnWheel/motion.ts';
import type { StandScene, TurnPoint } from '../scene/standScene.ts';
import { HAND_OFF, standMotion, type HandOnWheel } from './standMotion.ts';
import type { WheelPose } from './wheelPose.ts';

const DIFFERENCE_S = 0.02;

/** What a hand that follows a plan of turns does at a time; off before and after. */
function scriptedHand(points: readonly TurnPoint[], timeS: number): HandOnWheel {
  const endS = points[points.length - 1].timeS;
  if (timeS > endS) return HAND_OFF;
  const turnDeg = turnAt(points, timeS);
  const rateDegPerS = (turnAt(points, timeS + DIFFERENCE_S) - turnDeg) / DIFFERENCE_S;
  return { ...HAND_OFF, leads: { turnDeg, rateDegPerS } };
}

/** The wheel's place in every picture of a scene's film. */
export function scriptedPoses(scene: StandScene): WheelPose[] {
  const points = scene.hand.turn;
  const motion = standMotion(scene, points[0].turnDeg);
  const stepS = 1 / scene.camera.frameRateHz;
  const poses: WheelPose[] = [];
  const count = Math.floor(points[points.length - 1].timeS / stepS) + 1;
  for (let k = 0; k < count; k++) {
    const timeS = k * stepS;
    poses.push({ ...motion.pose(), timeS });
    // The hand's aim is renewed ten times a picture: it moves evenly, not in jerks.
    for (let part = 0; part < 10; part++) {
      motion.advance(stepS / 10, scriptedHand(points, timeS + (part * stepS) / 10));
    }
  }
  return poses;
}
