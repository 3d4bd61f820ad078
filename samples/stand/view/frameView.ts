import { dot, type Vec3 } from '../../drawnWheel/drawnCamera.ts';
import { azimuthDirection } from '../motion/wheelOnBall.ts';
import type { WheelPose } from '../motion/wheelPose.ts';
import { LIGHTING } from './lighting.ts';
import type { StandModel } from './standModel.ts';
import { directionIntoTyre, pointIntoTyre, sheetNormal, tyreFrame } from './tyreFrame.ts';

/** Camera, lamps and laser as one picture's tyre frame sees them: the renderers' whole input. */
export interface FrameView {
  readonly eye: Vec3;
  readonly right: Vec3;
  readonly down: Vec3;
  readonly ahead: Vec3;
  readonly up: Vec3;
  readonly lamp: Vec3;
  readonly window: Vec3;
  /** Height above the laser sheet is `sheetOffsetMm` + `sheet`·p. */
  readonly sheet: Vec3;
  readonly sheetOffsetMm: number;
  readonly laserSource: Vec3;
  /** Light of the laser at its crest on plain rubber; 0 while it is off. */
  readonly laserPeak: number;
}

export function frameView(model: StandModel, pose: WheelPose): FrameView {
  const { scene, camera, sits } = model;
  const frame = tyreFrame(scene, sits, pose);
  const into = (v: Vec3): Vec3 => directionIntoTyre(frame, v);
  const { eye, right, down, ahead } = camera.pinhole;
  const normal = sheetNormal(scene);
  const from = azimuthDirection(scene.laser.sourceAzimuthDeg);
  const away = scene.laser.sourceDistanceMm;
  const off = scene.laser.offAtS;
  return {
    eye: pointIntoTyre(frame, eye),
    right: into(right),
    down: into(down),
    ahead: into(ahead),
    up: into([0, 0, 1]),
    lamp: into([...LIGHTING.lamp]),
    window: into([...LIGHTING.window]),
    sheet: into(normal),
    sheetOffsetMm: dot(normal, frame.origin),
    laserSource: pointIntoTyre(frame, [from[0] * away, from[1] * away, 0]),
    laserPeak: off !== undefined && pose.timeS >= off ? 0 : scene.laser.peak,
  };
}
