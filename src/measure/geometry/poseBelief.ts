import { RAD_PER_DEG } from '../../quantities/angle.ts';
import type { ParameterPrior } from '../fit/levenbergMarquardt.ts';
import type { CameraPose } from './camera.ts';
import type { TurnedSpan } from './turnedSpans.ts';

/** What is known of a camera before the line is looked at, and a pose as a row of parameters. */
export interface KnownOfCamera {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly downTiltDeg: number;
  /** Undefined: the spread of ordinary tablets' and phones' lenses is assumed. */
  readonly horizontalFovDeg?: number;
  readonly edgeRadiusMm: number;
  /**
   * How far inside of the edge the line's circle lies, mm: left out or 0 on the rib's face, a groove's
   * depth where the line runs along its floor.
   */
  readonly lineInsetMm?: number;
  /** Standard deviation of a line point, px: how much the line is trusted beside what is known. */
  readonly pointSdPx: number;
  /** How the tread was seen to move while the wheel turned; missing before it has. */
  readonly spans?: readonly TurnedSpan[];
  /** Whether the spans' turns are known beside each other alone: before the turn has closed. */
  readonly isTurnScaleOpen?: boolean;
}

/** A tablet's own sensor: about 0.3° (data sheets of such sensors; common practice). */
const DOWN_TILT_SD_DEG = 0.3;
/** An entered field of view is good to a degree or two. */
const FOV_SD_DEG = 1.5;
/** Ordinary rear cameras see 55° to 75° across a landscape picture (common practice). */
const UNKNOWN_FOV_DEG = 64;
const UNKNOWN_FOV_SD_DEG = 7;
/** A tablet on an arm hangs level to some degrees, and faces the wheel roughly. */
const ROLL_SD_DEG = 6;
const YAW_SD_DEG = 12;
/** Cameras of phones and tablets straighten most of their lens's bend; 0.03 to 0.1 is left at worst. */
const RADIAL_SD = 0.03;

/** ln(focal/believed focal), downTiltDeg, yawDeg, rollDeg, distanceMm, heightMm, radial. */
export const POSE_PARAMETER_SIZES = [0.1, 1, 1, 1, 100, 100, 0.1];

export function focalFromFov(horizontalFovDeg: number, widthPx: number): number {
  return widthPx / 2 / Math.tan((horizontalFovDeg / 2) * RAD_PER_DEG);
}

/** Radius of the circle that the line draws, mm. */
export function lineRadiusMm({ edgeRadiusMm, lineInsetMm = 0 }: KnownOfCamera): number {
  return edgeRadiusMm - lineInsetMm;
}

export function believedFocalPx(known: KnownOfCamera): number {
  return focalFromFov(known.horizontalFovDeg ?? UNKNOWN_FOV_DEG, known.widthPx);
}

export function posePriors(known: KnownOfCamera): ParameterPrior[] {
  const fovDeg = known.horizontalFovDeg ?? UNKNOWN_FOV_DEG;
  const fovSdDeg = known.horizontalFovDeg === undefined ? UNKNOWN_FOV_SD_DEG : FOV_SD_DEG;
  return [
    { index: 0, mean: 0, sd: focalSpread(fovDeg, fovSdDeg) },
    { index: 1, mean: known.downTiltDeg, sd: DOWN_TILT_SD_DEG },
    { index: 2, mean: 0, sd: YAW_SD_DEG },
    { index: 3, mean: 0, sd: ROLL_SD_DEG },
    { index: 6, mean: 0, sd: RADIAL_SD },
  ];
}

/** Relative spread of the focal length that goes with a spread of the field of view. */
function focalSpread(fovDeg: number, fovSdDeg: number): number {
  return (fovSdDeg * RAD_PER_DEG) / Math.sin(fovDeg * RAD_PER_DEG);
}

export function poseOfParameters(p: ArrayLike<number>, known: KnownOfCamera): CameraPose {
  return {
    widthPx: known.widthPx,
    heightPx: known.heightPx,
    focalPx: believedFocalPx(known) * Math.exp(p[0]),
    downTiltDeg: p[1],
    yawDeg: p[2],
    rollDeg: p[3],
    distanceMm: p[4],
    heightMm: p[5],
    radial: p[6],
  };
}

export function parametersOfPose(pose: CameraPose, known: KnownOfCamera): Float64Array {
  const { downTiltDeg, yawDeg, rollDeg, distanceMm, heightMm, radial } = pose;
  const focal = Math.log(pose.focalPx / believedFocalPx(known));
  return Float64Array.of(focal, downTiltDeg, yawDeg, rollDeg, distanceMm, heightMm, radial);
}
