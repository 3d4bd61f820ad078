import { dot, type Vec3 } from '../../drawnWheel/drawnCamera.ts';
import { azimuthDirection, wholeUnbalanceGmm, wheelOnBall } from '../motion/wheelOnBall.ts';
import type { WheelPose } from '../motion/wheelPose.ts';
import { bandBorderMm } from '../shape/shoulderBand.ts';
import { grooveDepthMm } from '../shape/treadPattern.ts';
import { DEPTH_RANGE_MM } from '../shape/skinTexels.ts';
import { skinPoint } from '../shape/tyreProfile.ts';
import type { StandModel, StandShape } from '../view/standModel.ts';
import type { StandBand, StandScene } from '../scene/standScene.ts';
import { picturedAt } from '../view/standCamera.ts';
import { lateralWaveMm, pointIntoRoom, sheetNormal, tyreFrame } from '../view/tyreFrame.ts';

/** Azimuths at which edge and line are told, as in the rendered sweeps for development. */
export const TRUTH_AZIMUTHS_DEG = Array.from({ length: 21 }, (_, i) => 50 - 5 * i);
/** A cut deeper than this breaks edge and line. */
const BROKEN_MM = 0.4;

/** `tiltsweep.truth/1` of a film: what is so, for scoring only. */
export function filmTruth(model: StandModel, poses: readonly WheelPose[]) {
  const { scene } = model;
  const whole = wholeUnbalanceGmm(scene);
  const amountGmm = Math.hypot(whole.along0, whole.along90);
  const heavySpotDeg = wrapped((Math.atan2(whole.along90, whole.along0) * 180) / Math.PI);
  const stand = standLean(model);
  const onBall = wheelOnBall(scene);
  const perLean = amountGmm / (onBall.body.massKg * 1000 * scene.stand.pendulumDepthMm);
  const turned = poses[poses.length - 1].turnDeg - poses[0].turnDeg;
  return {
    format: 'tiltsweep.truth/1',
    shouldRefuse: scene.shouldRefuse ?? (false as const),
    unbalance: { amountGmm, heavySpotDeg, lightSpotDeg: wrapped(heavySpotDeg + 180) },
    edge: {
      riseMm: scene.wheel.edgeRadiusMm * perLean,
      highSpotDeg: wrapped(heavySpotDeg + 180),
      radiusMm: scene.wheel.edgeRadiusMm,
    },
    runOutMm: scene.tyre.lateralRunOut,
    ...(scene.tyre.band ? { bandOffSquareMm: bandOffSquare(scene.tyre.band) } : {}),
    stand: { leanMrad: stand.mrad, highAzimuthDeg: stand.highDeg },
    sense: turned >= 0 ? 'clockwise' : 'counter-clockwise',
    rockingHz: onBall.rockingRadPerS / (2 * Math.PI),
    spinOverTransverseInertia: scene.wheel.spinOverTransverseInertia,
    mmPerPxAtSight: mmPerPxAtSight(model),
    azimuthsDeg: TRUTH_AZIMUTHS_DEG,
    frames: poses.map((pose) => frameTruth(model, pose, Math.atan(perLean) * 1000)),
  };
}

/** Size of a pixel where the upright wheel's edge passes the sight: along the edge, and in height. */
function mmPerPxAtSight({ scene, camera }: StandModel): { height: number; tangential: number } {
  const { eye, ahead, focalPx } = camera.pinhole;
  const edge: Vec3 = [scene.wheel.edgeRadiusMm, 0, scene.stand.edgeAboveLineMm];
  const from: Vec3 = [edge[0] - eye[0], edge[1] - eye[1], edge[2] - eye[2]];
  const tangential = dot(from, ahead) / focalPx;
  // What is upright is seen shortened from above.
  const flat = Math.hypot(from[0], from[1]) / Math.hypot(...from);
  return { height: round(tangential / flat, 5), tangential: round(tangential, 5) };
}

/** Lean that stays in the room: sin θ = (R/h)·sin ε, high side uphill. */
function standLean(model: StandModel): { mrad: number; highDeg: number } {
  const { stand } = model.scene;
  const sine = (stand.ballDiameterMm / 2 / stand.pendulumDepthMm) * Math.sin(stand.slopeMrad / 1000);
  return { mrad: Math.asin(sine) * 1000, highDeg: wrapped(stand.downhillAzimuthDeg + 180) };
}

function frameTruth(model: StandModel, pose: WheelPose, wheelMrad: number) {
  const whole = wholeUnbalanceGmm(model.scene);
  const light = Math.atan2(whole.along90, whole.along0) + Math.PI + rad(pose.turnDeg);
  const stand = standLean(model);
  const ofWheel = [wheelMrad * Math.cos(light), wheelMrad * Math.sin(light)];
  const ofStand = [stand.mrad * Math.cos(rad(stand.highDeg)), stand.mrad * Math.sin(rad(stand.highDeg))];
  const off = model.scene.laser.offAtS;
  const laserOn = off !== undefined && pose.timeS >= off ? 0 : 1;
  const edges = TRUTH_AZIMUTHS_DEG.map((azimuth) => edgeSeenAt(model, pose, azimuth));
  const lines = TRUTH_AZIMUTHS_DEG.map((azimuth) => lineOnFaceAt(model, pose, azimuth));
  const px = (p: { xPx: number; yPx: number }) => [round(p.xPx, 2), round(p.yPx, 2)];
  return {
    timeS: round(pose.timeS, 4),
    turnDeg: round(pose.turnDeg, 4),
    laserOn,
    tiltWheelMrad: ofWheel.map((v) => round(v, 4)),
    tiltStandMrad: ofStand.map((v) => round(v, 4)),
    tiltRockingMrad: [0, 1].map((k) => round(pose.leanMrad[k] - ofWheel[k] - ofStand[k], 4)),
    edgePx: edges.map(px),
    edgeSeen: TRUTH_AZIMUTHS_DEG.map((azimuth) => (edgeIsSeen(model, pose, azimuth) ? 1 : 0)),
    linePx: lines.map((l) => px(l.landed)),
    lineOnFacePx: lines.map(px),
    lineSeen: lines.map((l) => (l.seen && laserOn ? 1 : 0)),
    edgeHeightMm: edges.map((e) => round(e.heightMm, 4)),
  };
}

export interface SeenPoint {
  readonly xPx: number;
  readonly yPx: number;
  /** Above the laser sheet, mm. */
  readonly heightMm: number;
}

/** What of the band's border turns with the wheel as an unbalance does. */
function bandOffSquare({ offSquareMm, highAtDeg }: StandBand) {
  return { amplitudeMm: offSquareMm, highAtDeg };
}

/** The tread edge, or the border of the band stuck along it, where it stands at an azimuth. */
export function edgeSeenAt(model: StandShape, pose: WheelPose, azimuthDeg: number): SeenPoint {
  const wheelDeg = azimuthDeg - pose.turnDeg;
  const { band } = model.scene.tyre;
  const borderMm = band ? bandBorderMm(model.scene, band)(wheelDeg) : 0;
  const wayMm = model.profile.edgeWayMm + lateralWaveMm(model.scene, wheelDeg) + borderMm;
  const point = skinInRoom(model, pose, wheelDeg, wayMm);
  return { ...picturedAt(model.camera, point), heightMm: aboveSheet(model.scene, point) };
}

function edgeIsSeen(model: StandModel, pose: WheelPose, azimuthDeg: number): boolean {
  const wayMm = model.profile.edgeWayMm + 0.6;
  return cutDepthMm(model, azimuthDeg - pose.turnDeg, wayMm) < BROKEN_MM;
}

/** The line at an azimuth: where it would be on a tread without grooves, and where it lands. */
export interface LineSeen extends SeenPoint {
  /** The rib's face is there. */
  readonly seen: boolean;
  readonly landed: { readonly xPx: number; readonly yPx: number };
}

/** Where the sheet would meet the tread if it had no grooves; in a cut it goes on level to its floor. */
export function lineOnFaceAt(
  model: StandModel,
  pose: WheelPose,
  azimuthDeg: number,
): LineSeen {
  const wheelDeg = azimuthDeg - pose.turnDeg;
  let low = -model.scene.tyre.treadHalfWidthMm;
  let high = model.scene.tyre.treadHalfWidthMm;
  for (let round = 0; round < 40; round++) {
    const middle = (low + high) / 2;
    if (aboveSheet(model.scene, skinInRoom(model, pose, wheelDeg, middle)) > 0) high = middle;
    else low = middle;
  }
  const point = skinInRoom(model, pose, wheelDeg, low);
  const wayMm = low - lateralWaveMm(model.scene, wheelDeg);
  const depth = Math.max(
    cutDepthMm(model, wheelDeg, wayMm),
    grooveDepthMm(model.scene.tyre.grooves, wayMm),
  );
  const out = azimuthDirection(azimuthDeg);
  const floor: Vec3 = [point[0] - depth * out[0], point[1] - depth * out[1], point[2]];
  const landed = picturedAt(model.camera, floor);
  return { ...picturedAt(model.camera, point), heightMm: 0, seen: depth < BROKEN_MM, landed };
}

function skinInRoom(model: StandShape, pose: WheelPose, wheelDeg: number, wayMm: number): Vec3 {
  const [r, z] = skinPoint(model.profile, wayMm);
  const out = azimuthDirection(wheelDeg);
  const frame = tyreFrame(model.scene, model.sits, pose);
  return pointIntoRoom(frame, [r * out[0], r * out[1], z]);
}

function aboveSheet(scene: StandScene, point: Vec3): number {
  return dot(sheetNormal(scene), point);
}

function cutDepthMm(model: StandModel, wheelDeg: number, wayMm: number): number {
  const { columns, rows, texels, fromWayMm, wayPerRowMm } = model.tread;
  const column = Math.round((wrapped(wheelDeg) / 360) * columns) % columns;
  const row = Math.max(0, Math.min(rows - 1, Math.round((wayMm - fromWayMm) / wayPerRowMm)));
  return (texels[4 * (row * columns + column) + 3] * DEPTH_RANGE_MM) / 255;
}

const rad = (deg: number): number => (deg * Math.PI) / 180;
const wrapped = (deg: number): number => ((deg % 360) + 360) % 360;
const round = (value: number, digits: number): number => Number(value.toFixed(digits));
