import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import type { YuvPicture } from '../../contract/picture.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import { cameraFromPose, projectPoint, type Camera } from '../geometry/camera.ts';
import { cylinderPointAtPixel } from '../geometry/cylinder.ts';
import { FIRST_LOOK_POINT_SD_PX, poseFromLine, type PoseFit } from '../geometry/poseFromLine.ts';
import type { LinePoints } from '../geometry/circleResiduals.ts';
import type { LaserColour } from '../laser/laserColour.ts';
import { findLaserHue } from '../laser/laserHue.ts';
import { findLaserLine } from '../laser/laserLine.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';

/**
 * Finds the sight: the laser's colour, its line on the tread, and from that the camera. The line
 * is pooled over pictures, since the camera and the laser stand still while slots pass.
 */
export interface Sight {
  readonly laserColour: LaserColour;
  readonly camera: Camera;
  readonly poseFit: PoseFit;
  /** Bearing of azimuth 0 from the camera's own direction, degrees. */
  readonly sightBearingDeg: number;
  readonly sightPx: { readonly xPx: number; readonly yPx: number };
  /** Typical RMS width of the line, px. */
  readonly lineSpreadPx: number;
}

export interface SightFinder {
  readonly setup: SweepSetup;
  pictures: number;
  colour: LaserColour | null;
  /** Rows seen in each bin of columns, one list a bin; the latest {@link POOL_PICTURES} pictures. */
  bins: number[][];
  spreads: number[];
  size: string;
}

/** The line is measured every so many pixels of a picture 1280 wide, and pooled in bins of as many. */
const BINS_PER_PICTURE = 160;
/** Pictures to pool before a first try, and between tries: half a second and a quarter. */
const FIRST_TRY_PICTURES = 10;
const TRY_EVERY = 5;
const POOL_PICTURES = 48;
/** A bin counts when the line was there in this share of the pictures. */
const BIN_SHARE = 0.35;
/**
 * What a first look must show: a good part of the bins on one circle. Part of the line may lie in
 * a groove; the camera is solved again from the whole sweep, and judged then.
 */
const MIN_INLIER_SHARE = 0.35;
const MAX_RESIDUAL_PX = 1.1;
/** The line must be seen across this much of the tread for a camera to be told from it, degrees. */
const MIN_SPAN_DEG = 45;

export function createSightFinder(setup: SweepSetup): SightFinder {
  return { setup, pictures: 0, colour: null, bins: [], spreads: [], size: '' };
}

/** Takes one picture; an answer when a try was due and made, null otherwise. */
export function lookForSight(
  finder: SightFinder,
  picture: YuvPicture,
): Outcome<Sight, 'line-lost'> | null {
  const size = `${picture.widthPx}×${picture.heightPx}`;
  if (size !== finder.size) resetPool(finder, size);
  if (!finder.colour) {
    const hue = findLaserHue(picture);
    if (!hue.ok) return failed('line-lost', hue.failure.evidence);
    finder.colour = hue.value.colour;
  }
  poolLine(finder, picture);
  finder.pictures++;
  if (
    finder.pictures < FIRST_TRY_PICTURES ||
    (finder.pictures - FIRST_TRY_PICTURES) % TRY_EVERY !== 0
  )
    return null;
  return solveSight(finder, picture);
}

function resetPool(finder: SightFinder, size: string): void {
  finder.size = size;
  finder.pictures = 0;
  finder.colour = null;
  finder.bins = Array.from({ length: BINS_PER_PICTURE }, () => []);
  finder.spreads = [];
}

function poolLine(finder: SightFinder, picture: YuvPicture): void {
  const step = Math.max(1, Math.floor(picture.widthPx / BINS_PER_PICTURE));
  const line = findLaserLine(picture, finder.colour!, { columnStepPx: step });
  for (let i = 0; i < line.rowPx.length; i++) {
    const bin = finder.bins[Math.floor((line.columnsPx[i] / picture.widthPx) * BINS_PER_PICTURE)];
    if (!bin) continue;
    bin.push(line.rowPx[i]);
    if (bin.length > POOL_PICTURES) bin.shift();
    if (line.rowPx[i] === line.rowPx[i]) finder.spreads.push(line.spreadPx[i]);
  }
  if (finder.spreads.length > 8000) finder.spreads.splice(0, 4000);
}

function solveSight(finder: SightFinder, picture: YuvPicture): Outcome<Sight, 'line-lost'> {
  const xPx: number[] = [];
  const yPx: number[] = [];
  finder.bins.forEach((bin, i) => {
    const seen = bin.filter((row) => row === row).sort((a, b) => a - b);
    if (seen.length < BIN_SHARE * bin.length || seen.length === 0) return;
    xPx.push(((i + 0.5) / BINS_PER_PICTURE) * picture.widthPx);
    yPx.push(seen[seen.length >> 1]);
  });
  const spreads = Float64Array.from(finder.spreads).sort();
  return sightFromLine(
    finder.setup,
    { xPx, yPx },
    {
      widthPx: picture.widthPx,
      heightPx: picture.heightPx,
      pointSdPx: FIRST_LOOK_POINT_SD_PX,
      laserColour: finder.colour!,
      lineSpreadPx: spreads[spreads.length >> 1] ?? 1.5,
    },
  );
}

export interface LineLook {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pointSdPx: number;
  readonly laserColour: LaserColour;
  readonly lineSpreadPx: number;
}

/** The sight from pooled line points: one picture's, or a whole sweep's. */
export function sightFromLine(
  setup: SweepSetup,
  points: LinePoints,
  look: LineLook,
): Outcome<Sight, 'line-lost'> {
  const fit = poseFromLine(points, {
    widthPx: look.widthPx,
    heightPx: look.heightPx,
    pointSdPx: look.pointSdPx,
    downTiltDeg: setup.camera.downTiltDeg,
    edgeRadiusMm: setup.wheel.edgeRadiusMm,
    ...(setup.camera.horizontalFovDeg === undefined
      ? {}
      : { horizontalFovDeg: setup.camera.horizontalFovDeg }),
  });
  if (!fit.ok) return fit;
  const radiusMm = setup.wheel.edgeRadiusMm;
  const { residualPx, inlierShare, pose } = fit.value;
  if (inlierShare < MIN_INLIER_SHARE || residualPx > MAX_RESIDUAL_PX) {
    return failed('line-lost', { inlierShare, residualPx });
  }
  const camera = cameraFromPose(pose);
  const spanDeg = spanOnWheelDeg(camera, radiusMm, points, fit.value.inliers);
  if (spanDeg < MIN_SPAN_DEG) return failed('line-lost', { spanDeg });
  return sightOfPose(setup, fit.value, look);
}

/** The sight of a pose that is known: where the picture's centre column crosses the line. */
export function sightOfPose(
  setup: SweepSetup,
  poseFit: PoseFit,
  look: Pick<LineLook, 'laserColour' | 'lineSpreadPx'>,
): Outcome<Sight, 'line-lost'> {
  const camera = cameraFromPose(poseFit.pose);
  const sight = sightOnLine(camera, setup.wheel.edgeRadiusMm, poseFit.pose.widthPx / 2);
  if (!sight) return failed('line-lost', { inlierShare: poseFit.inlierShare });
  return succeeded({
    laserColour: look.laserColour,
    camera,
    poseFit,
    sightBearingDeg: sight.bearingDeg,
    sightPx: sight.px,
    lineSpreadPx: look.lineSpreadPx,
  });
}

function spanOnWheelDeg(
  camera: Camera,
  radiusMm: number,
  points: LinePoints,
  inliers: Uint8Array,
): number {
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < inliers.length; i++) {
    if (!inliers[i]) continue;
    const point = cylinderPointAtPixel(camera, radiusMm, points.xPx[i], points.yPx[i]);
    if (!point) continue;
    low = Math.min(low, point.bearingDeg);
    high = Math.max(high, point.bearingDeg);
  }
  return high - low;
}

/** The point of the line's circle that appears at a picture column, nearest to the camera. */
function sightOnLine(
  camera: Camera,
  radiusMm: number,
  xPx: number,
): { bearingDeg: number; px: { xPx: number; yPx: number } } | null {
  const at = new Float64Array(2);
  const columnOf = (bearingDeg: number): number => {
    const b = bearingDeg * RAD_PER_DEG;
    return projectPoint(camera, radiusMm * Math.cos(b), radiusMm * Math.sin(b), 0, at)
      ? at[0]
      : NaN;
  };
  // Columns fall as bearings rise: halve the interval.
  let low = -50;
  let high = 50;
  if (!(columnOf(low) > xPx && columnOf(high) < xPx)) return null;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (columnOf(middle) > xPx) low = middle;
    else high = middle;
  }
  columnOf(low);
  return { bearingDeg: low, px: { xPx: at[0], yPx: at[1] } };
}
