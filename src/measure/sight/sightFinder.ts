import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import type { YuvPicture } from '../../contract/picture.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import { cameraFromPose, projectPoint, type Camera } from '../geometry/camera.ts';
import {
  FIRST_LOOK_POINT_SD_PX,
  poseFromLineInSteps,
  type PoseFit,
} from '../geometry/poseFromLine.ts';
import type { KnownOfCamera } from '../geometry/poseBelief.ts';
import type { TurnedSpan } from '../geometry/turnedSpans.ts';
import type { LinePoints } from '../geometry/circleResiduals.ts';
import type { PictureRegion } from '../laser/cellGrid.ts';
import type { LaserColour } from '../laser/laserColour.ts';
import { findLaserHue } from '../laser/laserHue.ts';
import { finished, nothingLeft, type SlicedWork } from '../pace/slicedWork.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { bulgesUpward } from './lineBulge.ts';
import { createLinePool, pooledLine, poolLine, type LinePool } from './linePool.ts';
import { isScaleTold } from './scaleTold.ts';
import { sightOnLine } from './sightOnLine.ts';
import { spanOnWheelDeg } from './spanOnWheel.ts';

/**
 * Finds the sight: the laser's colour, its line on the tread, and from that the camera. The line
 * is pooled over pictures, since the camera and the laser stand still while slots pass.
 */
export interface Sight {
  readonly laserColour: LaserColour;
  readonly camera: Camera;
  readonly poseFit: PoseFit;
  /**
   * Bearing of azimuth 0 from the camera's own direction, degrees: the sight's own, or, when the sight
   * lies far aside, one from which the tread is seen on both sides.
   */
  readonly sightBearingDeg: number;
  /** Picture column in which azimuth 0 lies on the line: the middle one, or nearer to the camera's side. */
  readonly originColumnPx: number;
  /** Azimuth of the sight itself, degrees: 0 unless it lies far aside. */
  readonly asideDeg: number;
  readonly sightPx: { readonly xPx: number; readonly yPx: number };
  /** Typical RMS width of the line, px. */
  readonly lineSpreadPx: number;
}

export type SightTrouble = 'line-lost' | 'picture-upside-down';

export interface SightFinder {
  readonly setup: SweepSetup;
  pool: LinePool;
  colour: LaserColour | null;
  /** Pictures pooled so far, and the count at which the next try is due. */
  pooled: number;
  tryAt: number;
}

/** The line is pooled so often, s: what the camera sees hardly changes in less. */
const POOL_EVERY_S = 0.07;
/** Pictures to pool before a first try: most of a second. */
const FIRST_TRY_PICTURES = 10;
/**
 * Pictures between tries: a third of a second. A try that fails costs a good part of that: later on
 * each waits until the pool has grown by a tenth, by two seconds at most. What was seen meanwhile is
 * kept, so that waiting loses nothing.
 */
const TRY_EVERY = 5;
const TRY_GROWTH = 0.1;
const TRY_EVERY_AT_MOST = 30;
/**
 * What a first look must show: a good part of the bins on one circle, and few of them where no part
 * of the tread can be. What lies in a groove is explained; the camera is solved again from more of
 * the turn, and judged then.
 */
const MIN_INLIER_SHARE = 0.3;
const MAX_STRAY_SHARE = 0.3;
const MAX_RESIDUAL_PX = 1.1;
/** The line must be seen across this much of the tread for a camera to be told from it alone, degrees. */
const MIN_SPAN_DEG = 45;

export function createSightFinder(setup: SweepSetup): SightFinder {
  return {
    ...{ setup, pool: createLinePool(0, 0), colour: null },
    ...{ pooled: 0, tryAt: FIRST_TRY_PICTURES },
  };
}

/** Takes one picture; a try when one is due, null otherwise. */
export function lookForSight(
  finder: SightFinder,
  picture: YuvPicture,
): SlicedWork<Outcome<Sight, SightTrouble>> | null {
  const { pool } = finder;
  if (picture.widthPx !== pool.widthPx || picture.heightPx !== pool.heightPx) {
    finder.pool = createLinePool(picture.widthPx, picture.heightPx);
    finder.colour = null;
    finder.pooled = 0;
    finder.tryAt = FIRST_TRY_PICTURES;
  }
  if (!finder.colour) {
    const hue = findLaserHue(picture);
    if (!hue.ok) return nothingLeft(failed('line-lost', hue.failure.evidence));
    finder.colour = hue.value.colour;
  }
  if (!poolMore(finder, picture, POOL_EVERY_S)) return null;
  finder.pooled++;
  if (finder.pooled < finder.tryAt) return null;
  const growth = Math.ceil(TRY_GROWTH * finder.pooled);
  finder.tryAt = finder.pooled + Math.min(Math.max(growth, TRY_EVERY), TRY_EVERY_AT_MOST);
  return sightOfPool(finder);
}

/** Pools the line of a picture, or of a region, when the last one pooled is old enough; whether it did. */
export function poolMore(
  finder: SightFinder,
  picture: YuvPicture,
  everyS: number,
  region?: PictureRegion,
): boolean {
  if (!finder.colour || picture.timeS - finder.pool.lastS < everyS) return false;
  poolLine(finder.pool, picture, finder.colour, region);
  return true;
}

/** How the tread was seen to go by while the line was pooled. */
export type TurnedSoFar = Pick<KnownOfCamera, 'spans' | 'isTurnScaleOpen'>;

/** The sight that the line pooled so far shows, and the way of the tread if it has turned. */
export function* sightOfPool(
  finder: SightFinder,
  turned: TurnedSoFar = {},
): SlicedWork<Outcome<Sight, SightTrouble>> {
  const { pool, colour } = finder;
  if (!colour) return failed('line-lost', { linePoints: 0 });
  const { points, lineSpreadPx } = pooledLine(pool);
  // Said at once, before a camera is looked for that cannot be.
  if (bulgesUpward(points, pool.widthPx)) return failed('picture-upside-down');
  yield;
  return yield* sightFromLineInSteps(finder.setup, points, {
    ...{ widthPx: pool.widthPx, heightPx: pool.heightPx, lineSpreadPx },
    ...{ pointSdPx: FIRST_LOOK_POINT_SD_PX, laserColour: colour, ...turned },
  });
}

export interface LineLook {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pointSdPx: number;
  readonly laserColour: LaserColour;
  readonly lineSpreadPx: number;
  readonly spans?: readonly TurnedSpan[];
  readonly isTurnScaleOpen?: boolean;
  /** Whether line and spans are those of a whole sweep: the line where the edge says that it lies on the face. */
  readonly isWholeSweep?: boolean;
  /** How far inside of the edge the line lands, mm; left out: on the rib's face. */
  readonly lineInsetMm?: number;
  /** Where azimuth 0 lies, when an earlier look has settled it; a wheel angle hangs on it. */
  readonly originColumnPx?: number;
}

type PictureLook = Pick<
  LineLook,
  'widthPx' | 'heightPx' | 'pointSdPx' | 'spans' | 'isTurnScaleOpen' | 'lineInsetMm'
>;

/** What the person entered of the camera, for pictures of this size. */
export function knownOfCamera(setup: SweepSetup, look: PictureLook): KnownOfCamera {
  const { downTiltDeg, horizontalFovDeg } = setup.camera;
  return {
    ...{ widthPx: look.widthPx, heightPx: look.heightPx, pointSdPx: look.pointSdPx },
    ...{ downTiltDeg, edgeRadiusMm: setup.wheel.edgeRadiusMm },
    ...(horizontalFovDeg === undefined ? {} : { horizontalFovDeg }),
    ...(look.spans ? { spans: look.spans } : {}),
    ...(look.isTurnScaleOpen ? { isTurnScaleOpen: true } : {}),
    ...(look.lineInsetMm ? { lineInsetMm: look.lineInsetMm } : {}),
  };
}

/** The sight from pooled line points: one picture's, or a whole sweep's. */
export function sightFromLine(
  setup: SweepSetup,
  points: LinePoints,
  look: LineLook,
): Outcome<Sight, 'line-lost'> {
  return finished(sightFromLineInSteps(setup, points, look));
}

function* sightFromLineInSteps(
  setup: SweepSetup,
  points: LinePoints,
  look: LineLook,
): SlicedWork<Outcome<Sight, 'line-lost'>> {
  const fit = yield* poseFromLineInSteps(points, knownOfCamera(setup, look));
  if (!fit.ok) return fit;
  const radiusMm = setup.wheel.edgeRadiusMm;
  const { residualPx, inlierShare, strayShare, pose } = fit.value;
  const strays = strayShare > MAX_STRAY_SHARE;
  if (strays || inlierShare < MIN_INLIER_SHARE || residualPx > MAX_RESIDUAL_PX) {
    return failed('line-lost', { inlierShare, strayShare, residualPx });
  }
  const camera = cameraFromPose(pose);
  const spanDeg = spanOnWheelDeg(camera, radiusMm, points, fit.value.inliers);
  const isTold = look.isWholeSweep && isScaleTold(fit.value, radiusMm, look);
  if (spanDeg < MIN_SPAN_DEG && !isTold) return failed('line-lost', { spanDeg });
  return sightOfPose(setup, fit.value, look);
}

/** The sight of a pose that is known: where the picture's centre column crosses the line. */
export function sightOfPose(
  setup: SweepSetup,
  poseFit: PoseFit,
  look: Pick<LineLook, 'laserColour' | 'lineSpreadPx' | 'originColumnPx'>,
): Outcome<Sight, 'line-lost'> {
  const camera = cameraFromPose(poseFit.pose);
  const radiusMm = setup.wheel.edgeRadiusMm;
  const sight = sightOnLine(camera, radiusMm, poseFit.pose.widthPx / 2);
  if (!sight) return failed('line-lost', { inlierShare: poseFit.inlierShare });
  const originColumnPx = look.originColumnPx ?? originColumn(camera, radiusMm, sight.bearingDeg);
  const origin = sightOnLine(camera, radiusMm, originColumnPx) ?? sight;
  return succeeded({
    laserColour: look.laserColour,
    camera,
    poseFit,
    sightBearingDeg: origin.bearingDeg,
    originColumnPx,
    asideDeg: sight.bearingDeg - origin.bearingDeg,
    sightPx: sight.px,
    lineSpreadPx: look.lineSpreadPx,
  });
}

/** Farther aside than this too little of the tread is seen beyond the sight, degrees. */
const MOST_ASIDE_DEG = 20;

/** Column of azimuth 0: the middle of the picture, or the place of the line at the most bearing. */
function originColumn(camera: Camera, radiusMm: number, sightBearingDeg: number): number {
  const middlePx = camera.pose.widthPx / 2;
  if (Math.abs(sightBearingDeg) <= MOST_ASIDE_DEG) return middlePx;
  const b = Math.sign(sightBearingDeg) * MOST_ASIDE_DEG * RAD_PER_DEG;
  const at = new Float64Array(2);
  const seen = projectPoint(camera, radiusMm * Math.cos(b), radiusMm * Math.sin(b), 0, at);
  return seen ? at[0] : middlePx;
}
