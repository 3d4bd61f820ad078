import { cross, dot, type Vec3 } from '../../drawnWheel/drawnCamera.ts';
import { normalFrom, seededRandom } from '../../drawnWheel/seededRandom.ts';
import type { StandScene } from '../scene/standScene.ts';
import { intoRoom, rolledOn, type RollingState } from './rollingBody.ts';
import { azimuthDirection, wheelOnBall } from './wheelOnBall.ts';
import { wheelPose, type WheelPose } from './wheelPose.ts';

/** What the hand does at the moment. */
export interface HandOnWheel {
  /** Leads the wheel to this turn at this rate, clockwise; null when the hand is off. */
  readonly leads: { readonly turnDeg: number; readonly rateDegPerS: number } | null;
  /** Holds the rim lightly, so that it settles. */
  readonly holds: boolean;
  /** Presses the rim down. */
  readonly presses: { readonly forceN: number; readonly azimuthDeg: number } | null;
}

export const HAND_OFF: HandOnWheel = { leads: null, holds: false, presses: null };

export interface StandMotion {
  pose(): WheelPose;
  /** Lets the wheel move on under the hand. */
  advance(durationS: number, hand: HandOnWheel): WheelPose;
  /** A push along the rim: the wheel has this much more speed, degrees a second clockwise. */
  flick(rateDegPerS: number): void;
  /** Another scene (weights stuck on, plate levelled) under the same wheel where it now stands. */
  change(scene: StandScene): void;
}

/** Step of integration: well under a hand's grip and a hundredth of the quickest rocking. */
const STEP_S = 0.008;
/** A hand brings the rim to its own speed in about this time. */
const GRIP_S = 0.07;
/** And makes up for a turn it is behind by, per second. */
const CATCH_UP_PER_S = 5;
/** A wheel let go spins down by bearing air and ball in so long, s. */
const SPIN_DOWN_S = 14;
/** Damping of a held rim, of critical. */
const HOLD_DAMPING = 0.8;
/** Time over which an unsteady hand's push keeps its direction, s. */
const HAND_TIME_S = 0.5;
/** A held wheel has come to rest after some three periods. */
const SETTLING_S = 14;

/** The wheel on its ball from rest at `startTurnDeg`, settled but for the scene's starting swing. */
export function standMotion(scene: StandScene, startTurnDeg: number): StandMotion {
  let wheel = wheelOnBall(scene);
  let current = scene;
  const normal = normalFrom(seededRandom(scene.seed + 41));
  let unsteady: [number, number] = [0, 0];
  let left = 0;
  let timeS = -SETTLING_S;
  const half = (-startTurnDeg * Math.PI) / 360;
  let state: RollingState = {
    turn: [Math.cos(half), 0, 0, Math.sin(half)],
    rate: [0, 0, 0],
    ballMm: [0, 0, 0],
  };
  let pose = wheelPose(state, 0, startTurnDeg);

  const step = (hand: HandOnWheel): void => {
    shakeHand(hand);
    const { leads } = hand;
    const behindDeg = leads ? leads.turnDeg - pose.turnDeg : 0;
    const wantedDegPerS = leads ? leads.rateDegPerS + CATCH_UP_PER_S * behindDeg : 0;
    state = rolledOn(wheel.body, state, (at) => torqueOf(at, hand, wantedDegPerS), STEP_S);
    timeS += STEP_S;
    pose = wheelPose(state, timeS, pose.turnDeg);
  };

  /** Torque about the contact, kg·mm²/s². */
  const torqueOf = (at: RollingState, hand: HandOnWheel, wantedDegPerS: number): Vec3 => {
    const n = wheel.body.plateNormal;
    const spin = dot(at.rate, n);
    const ratio = current.stand.dampingRatio + (hand.holds ? HOLD_DAMPING : 0);
    const drag = 2 * ratio * wheel.rockingRadPerS * wheel.contactKgMm2;
    const gripped = hand.leads || hand.holds;
    const wanted = gripped ? (-wantedDegPerS * Math.PI) / 180 : 0;
    const about = (wheel.body.spinKgMm2 * (wanted - spin)) / (gripped ? GRIP_S : SPIN_DOWN_S);
    // What moves the axis in the room is damped: a lean that turns with the wheel lags a little.
    const axis = intoRoom(at.turn, [0, 0, 1]);
    const alongAxis = dot(axis, at.rate);
    const push = hand.presses ? pressTorque(hand.presses) : [0, 0, 0];
    return [0, 1, 2].map(
      (k) => n[k] * about - drag * (at.rate[k] - alongAxis * axis[k]) + push[k] + (unsteady[k] ?? 0),
    ) as never;
  };

  const pressTorque = ({ forceN, azimuthDeg }: { forceN: number; azimuthDeg: number }): Vec3 => {
    const at = azimuthDirection(azimuthDeg).map((v) => v * current.wheel.edgeRadiusMm) as never;
    return cross(at, [0, 0, -1000 * forceN]);
  };

  /** A moving hand also pushes a little up and down: correlated noise about the wanted swing. */
  const shakeHand = (hand: HandOnWheel): void => {
    const moves = hand.leads && Math.abs(hand.leads.rateDegPerS) > 0.5;
    const size = (wheel.restoring * current.stand.handSwingMm) / current.wheel.edgeRadiusMm;
    const keep = Math.exp(-STEP_S / HAND_TIME_S);
    const fresh = moves ? 0.5 * size * Math.sqrt(1 - keep * keep) : 0;
    unsteady = [unsteady[0] * keep + fresh * normal(), unsteady[1] * keep + fresh * normal()];
  };

  for (let s = 0; s < SETTLING_S; s += STEP_S) {
    step({ ...HAND_OFF, holds: true, leads: { turnDeg: startTurnDeg, rateDegPerS: 0 } });
  }
  timeS = 0;
  // The ball's way is told from where it would stand under the upright wheel.
  const swing = scene.stand.startSwingMm / scene.wheel.edgeRadiusMm;
  state = { ...state, rate: [0, swing * wheel.rockingRadPerS, 0] };
  pose = wheelPose(state, timeS, startTurnDeg);

  return {
    pose: () => pose,
    advance(durationS, hand) {
      for (left += durationS; left >= STEP_S / 2; left -= STEP_S) step(hand);
      return pose;
    },
    flick(rateDegPerS) {
      const add = (-rateDegPerS * Math.PI) / 180;
      const n = wheel.body.plateNormal;
      state = { ...state, rate: state.rate.map((v, k) => v + add * n[k]) as never };
    },
    change(next) {
      current = next;
      wheel = wheelOnBall(next);
    },
  };
}
