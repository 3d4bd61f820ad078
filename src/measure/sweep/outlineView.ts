import type { OutlinePlace } from '../edge/edgeProposal.ts';
import {
  outlineDropMm,
  SHOULDER_SD,
  USUAL_SHOULDER,
  type ShoulderShape,
} from '../edge/shoulderShape.ts';
import { createTreadBand } from '../band/treadBand.ts';
import { leanBasis } from '../edge/leanFit.ts';
import { cameraFromPose } from '../geometry/camera.ts';
import { sightSlope } from '../geometry/cylinder.ts';
import { edgeGainMm, type WheelView } from './wheelView.ts';

/**
 * How the camera sees the outline of the lower shoulder before what lies behind it: as it sees a tread
 * edge, on a cylinder of the outline's own radius, heights counted from a plane near it instead of the
 * laser's. A rounded shoulder that moves shows another of its points at the outline, but all that lie
 * there run along the line of sight: to first order the outline moves as the one that is there.
 */
export function outlineView(
  view: WheelView,
  { planeMm }: Pick<OutlinePlace, 'planeMm'>,
  shoulder: ShoulderShape = USUAL_SHOULDER,
): WheelView {
  const { setup, sight, layout, band } = view;
  const { pose } = sight.camera;
  const camera = cameraFromPose({ ...pose, heightMm: pose.heightMm - planeMm });
  const treadRadiusMm = setup.wheel.edgeRadiusMm;
  const slopeOn = (radiusMm: number, azimuthDeg: number) =>
    sightSlope(camera, radiusMm, azimuthDeg + sight.sightBearingDeg, 0);
  const radiusMm = treadRadiusMm - outlineDropMm(slopeOn(treadRadiusMm, 0), shoulder);
  const outOfCylinderMm = (azimuthDeg: number) =>
    treadRadiusMm - outlineDropMm(slopeOn(radiusMm, azimuthDeg), shoulder) - radiusMm;
  const bearing = sight.sightBearingDeg;
  const { yStride } = band.tables;
  const outlined = {
    setup: { ...setup, wheel: { ...setup.wheel, edgeRadiusMm: radiusMm } },
    sight: { ...sight, camera },
    band: createTreadBand(camera, radiusMm, bearing, yStride, band.azimuthDeg[0]),
    layout,
    sightSlopes: layout.azimuthsDeg.map((azimuthDeg) => slopeOn(radiusMm, azimuthDeg)),
    lineAboveBallMm: view.lineAboveBallMm + planeMm,
    outOfCylinderMm,
    ...{ basis: view.basis, columnBasis: view.columnBasis },
  };
  const gainAt = (azimuthDeg: number) => edgeGainMm(outlined, azimuthDeg, 0);
  return {
    ...outlined,
    basis: leanBasis(layout.azimuthsDeg, layout.azimuthsDeg.map(gainAt)),
    columnBasis: leanBasis(outlined.band.azimuthDeg, outlined.band.azimuthDeg.map(gainAt)),
  };
}

/** A ruler beside the plate reads the line's height to so much, mm. */
const LINE_HEIGHT_SD_MM = 2;

/**
 * Relative standard deviation of leans told by the outline, from what is not known of the shoulder:
 * how round it is, how far it drops, and with the line's height its own above the ball.
 */
export function outlineScaleSd(
  view: WheelView,
  { planeMm }: Pick<OutlinePlace, 'planeMm'>,
): number {
  const usual = outlineView(view, { planeMm });
  const usualMm = usual.setup.wheel.edgeRadiusMm;
  const slope = usual.sightSlopes[usual.sightSlopes.length >> 1];
  /** Picture rows for a radian, all blocks together, by any one measure. */
  const rowsPerLean = ({ basis: { gainMm }, setup, sight }: WheelView) =>
    gainMm.reduce((sum, gain) => sum + gain, 0) /
    (sight.camera.pose.distanceMm - setup.wheel.edgeRadiusMm);
  const offWith = (shoulder: ShoulderShape) => {
    const radiusMm = outlineView(view, { planeMm }, shoulder).setup.wheel.edgeRadiusMm;
    // Another point of the same line of sight: farther in it lies lower.
    const alongSight = { planeMm: planeMm + slope * (radiusMm - usualMm) };
    return rowsPerLean(outlineView(view, alongSight, shoulder)) / rowsPerLean(usual) - 1;
  };
  const { crownDropMm, roundingMm } = USUAL_SHOULDER;
  return Math.hypot(
    offWith({ crownDropMm: crownDropMm + SHOULDER_SD.crownDropMm, roundingMm }),
    offWith({ crownDropMm, roundingMm: roundingMm + SHOULDER_SD.roundingMm }),
    (slope * LINE_HEIGHT_SD_MM) / usual.basis.gainMm[usual.basis.gainMm.length >> 1],
  );
}

/**
 * What a creep that the outline cannot tell adds to each component of the rise, one standard deviation, mm. A
 * wheel turned by φ on a lean δ of its stand creeps R·φ·δ; over one turn its once-round wave, as a height by
 * the slope of the line of sight, is κ·R·δ, and larger by the way from the outline out to the edge. The
 * line on the face tells a part of it, how much hangs on the tread's crown: none is taken off here.
 */
export function outlineCreepSdMm(
  view: WheelView,
  { planeMm }: Pick<OutlinePlace, 'planeMm'>,
  standLeanSd: number,
): number {
  const { sightSlopes, basis } = outlineView(view, { planeMm });
  const mean = (values: Float64Array) => values.reduce((sum, x) => sum + x, 0) / values.length;
  const ballRadiusMm = view.setup.stand.ballDiameterMm / 2;
  const creptMm = mean(sightSlopes) * ballRadiusMm * standLeanSd;
  return (creptMm * view.setup.wheel.edgeRadiusMm) / mean(basis.gainMm);
}
