import { cross, dot, turnedAbout, type Vec3 } from '../../drawnWheel/drawnCamera.ts';
import { azimuthDirection } from '../motion/wheelOnBall.ts';
import type { WheelPose } from '../motion/wheelPose.ts';
import type { StandScene } from '../scene/standScene.ts';
import type { TyreProfile } from '../shape/tyreProfile.ts';

/**
 * The tyre's frame at one time: origin on the tyre's axis at the tread's middle, axes in the room.
 * Once-round run-out is in it exactly: lateral as a tilt of the tyre against the bore, radial as
 * a shift of its axis.
 */
export interface TyreFrame {
  readonly origin: Vec3;
  readonly axes: readonly [Vec3, Vec3, Vec3];
}

export interface TyreInWheel {
  readonly origin: Vec3;
  readonly axes: readonly [Vec3, Vec3, Vec3];
}

/** How the tyre sits on the wheel, from the ball's centre. */
export function tyreInWheel(scene: StandScene, profile: TyreProfile): TyreInWheel {
  const { stand, tyre } = scene;
  let tilt: Vec3 = [0, 0, 0];
  for (const { order, amplitudeMm, highAtDeg } of tyre.lateralRunOut) {
    if (order !== 1) continue;
    // high × up turns the high side up.
    const axis = cross(azimuthDirection(highAtDeg), [0, 0, 1]);
    const angle = amplitudeMm / scene.wheel.edgeRadiusMm;
    tilt = [tilt[0] + angle * axis[0], tilt[1] + angle * axis[1], 0];
  }
  const angle = Math.hypot(...tilt);
  const about: Vec3 = angle > 0 ? [tilt[0] / angle, tilt[1] / angle, 0] : [1, 0, 0];
  const edgeAboveBall = stand.lineAbovePlateMm + stand.edgeAboveLineMm - stand.ballDiameterMm / 2;
  const out = azimuthDirection(tyre.radialHighAtDeg);
  return {
    origin: [
      tyre.radialRunOutMm * out[0],
      tyre.radialRunOutMm * out[1],
      edgeAboveBall - profile.edgeHeightMm,
    ],
    axes: ([[1, 0, 0], [0, 1, 0], [0, 0, 1]] as Vec3[]).map((v) =>
      turnedAbout(v, about, angle),
    ) as never,
  };
}

/** The tyre in the room; the room's origin is on the upright wheel's axis in the laser plane. */
export function tyreFrame(scene: StandScene, sits: TyreInWheel, pose: WheelPose): TyreFrame {
  const turned = (v: Vec3): Vec3 =>
    [0, 1, 2].map(
      (k) => pose.axes[0][k] * v[0] + pose.axes[1][k] * v[1] + pose.axes[2][k] * v[2],
    ) as never;
  const offset = turned(sits.origin);
  const ballHeight = scene.stand.ballDiameterMm / 2 - scene.stand.lineAbovePlateMm;
  return {
    origin: [
      pose.ballMm[0] + offset[0],
      pose.ballMm[1] + offset[1],
      pose.ballMm[2] + ballHeight + offset[2],
    ],
    axes: sits.axes.map(turned) as never,
  };
}

export function pointIntoTyre(frame: TyreFrame, p: Vec3): Vec3 {
  const from: Vec3 = [p[0] - frame.origin[0], p[1] - frame.origin[1], p[2] - frame.origin[2]];
  return directionIntoTyre(frame, from);
}

export function directionIntoTyre(frame: TyreFrame, v: Vec3): Vec3 {
  return [dot(frame.axes[0], v), dot(frame.axes[1], v), dot(frame.axes[2], v)];
}

export function pointIntoRoom(frame: TyreFrame, p: Vec3): Vec3 {
  return [0, 1, 2].map(
    (k) =>
      frame.origin[k] +
      frame.axes[0][k] * p[0] +
      frame.axes[1][k] * p[1] +
      frame.axes[2][k] * p[2],
  ) as never;
}

/** Upward normal of the laser sheet, which runs through the room's origin. */
export function sheetNormal(scene: StandScene): Vec3 {
  const { slopeMrad, highAzimuthDeg } = scene.laser;
  const high = azimuthDirection(highAzimuthDeg);
  const slope = slopeMrad / 1000;
  return [-high[0] * Math.sin(slope), -high[1] * Math.sin(slope), Math.cos(slope)];
}

/** Lateral waves of the second order and up: the tread's way is shifted by so much, mm. */
export function lateralWaveMm(scene: StandScene, wheelDeg: number): number {
  let wave = 0;
  for (const { order, amplitudeMm, highAtDeg } of scene.tyre.lateralRunOut) {
    if (order === 1) continue;
    wave += amplitudeMm * Math.cos((order * (wheelDeg - highAtDeg) * Math.PI) / 180);
  }
  return wave;
}
