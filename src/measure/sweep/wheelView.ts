import type { SweepSetup } from '../../contract/setup.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { createTreadBand, rowOfZ, type TreadBand } from '../band/treadBand.ts';
import { layoutBlocks, type BlockLayout } from '../edge/blockProfiles.ts';
import { leanBasis, type Lean, type LeanBasis } from '../edge/leanFit.ts';
import { sightSlope } from '../geometry/cylinder.ts';
import type { Sight } from '../sight/sightFinder.ts';

/**
 * How this camera sees this wheel: the unrolled band, its blocks, and how much each azimuth's edge
 * moves in the picture for a lean.
 */
export interface WheelView {
  readonly setup: SweepSetup;
  readonly sight: Sight;
  readonly band: TreadBand;
  readonly layout: BlockLayout;
  readonly basis: LeanBasis;
  /** Slope κ of the line of sight at each block. */
  readonly sightSlopes: Float64Array;
  /** Height of the laser plane above the ball's centre, mm. */
  readonly lineAboveBallMm: number;
  /** cos, sin and gain of every band column, for placing the edge in it. */
  readonly columnBasis: LeanBasis;
  /** By how much the followed point lies farther out than the nominal cylinder at an azimuth, mm; missing: nowhere. */
  readonly outOfCylinderMm?: (azimuthDeg: number) => number;
}

/** Where the line is thrown when nobody measured it: beside the shoulder of a car tyre lying flat, mm. */
const ASSUMED_LINE_ABOVE_PLATE_MM = 52;

export function createWheelView(setup: SweepSetup, sight: Sight, yStride: number): WheelView {
  const radiusMm = setup.wheel.edgeRadiusMm;
  const band = createTreadBand(sight.camera, radiusMm, sight.sightBearingDeg, yStride);
  const layout = layoutBlocks(band);
  const lineAboveBallMm =
    (setup.stand.lineAbovePlateMm ?? ASSUMED_LINE_ABOVE_PLATE_MM) - setup.stand.ballDiameterMm / 2;
  const slopeAt = (azimuthDeg: number) =>
    sightSlope(sight.camera, radiusMm, azimuthDeg + sight.sightBearingDeg, 0);
  const sightSlopes = layout.azimuthsDeg.map(slopeAt);
  const gainAt = (slope: number) => radiusMm + slope * lineAboveBallMm;
  return {
    setup,
    sight,
    band,
    layout,
    basis: leanBasis(layout.azimuthsDeg, sightSlopes.map(gainAt)),
    sightSlopes,
    lineAboveBallMm,
    columnBasis: leanBasis(
      band.azimuthDeg,
      band.azimuthDeg.map((a) => gainAt(slopeAt(a))),
    ),
  };
}

/**
 * Rise of the followed point on the nominal cylinder for a radian of lean: its radius, and κ times its
 * height above the ball's centre, by which it swings inward. Where it lies farther out along its line
 * of sight both grow, and it looks larger for being nearer.
 */
export function edgeGainMm(
  { sight, setup, lineAboveBallMm, outOfCylinderMm }: WheelView,
  azimuthDeg: number,
  edgeHeightMm: number,
): number {
  const radiusMm = setup.wheel.edgeRadiusMm;
  const bearingDeg = azimuthDeg + sight.sightBearingDeg;
  const slope = sightSlope(sight.camera, radiusMm, bearingDeg, 0);
  const gainMm = radiusMm + slope * (lineAboveBallMm + edgeHeightMm);
  const outMm = outOfCylinderMm?.(azimuthDeg) ?? 0;
  if (outMm === 0) return gainMm;
  const nearMm = sight.camera.pose.distanceMm * Math.cos(bearingDeg * RAD_PER_DEG) - radiusMm;
  return (gainMm + (1 + slope * slope) * outMm) * (nearMm / (nearMm - outMm));
}

/** Band row of the edge in every column for a lean, fractional. */
export function edgeRows(
  view: WheelView,
  edgeHeightMm: number,
  lean: Lean,
  out: Float32Array,
): void {
  const { gainMm, cos, sin } = view.columnBasis;
  for (let c = 0; c < out.length; c++) {
    out[c] = rowOfZ(
      edgeHeightMm + lean.liftMm + gainMm[c] * (lean.toward * cos[c] + lean.across * sin[c]),
    );
  }
}

/** Room point of the nominal tread at an azimuth and height. */
export function roomPoint(view: WheelView, azimuthDeg: number): { xMm: number; yMm: number } {
  const bearing = (azimuthDeg + view.sight.sightBearingDeg) * RAD_PER_DEG;
  const radiusMm = view.setup.wheel.edgeRadiusMm;
  return { xMm: radiusMm * Math.cos(bearing), yMm: radiusMm * Math.sin(bearing) };
}

/** The block of azimuth in which the sight lies. */
export function sightBlock({ layout, sight }: WheelView): number {
  const away = layout.azimuthsDeg.map((azimuthDeg) => Math.abs(azimuthDeg - sight.asideDeg));
  return away.indexOf(Math.min(...away));
}
