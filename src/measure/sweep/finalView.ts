import { projectPoint, type Camera } from '../geometry/camera.ts';
import type { LinePoints } from '../geometry/circleResiduals.ts';
import { POOLED_POINT_SD_PX } from '../geometry/poseFromLine.ts';
import { cylinderPointAtPixel } from '../geometry/cylinder.ts';
import { sightFromLine, type TurnedSoFar } from '../sight/sightFinder.ts';
import { Z_BOTTOM_MM, Z_TOP_MM } from '../band/treadBand.ts';
import type { SweepRecording } from './sweepRecording.ts';
import { createWheelView, roomPoint, type WheelView } from './wheelView.ts';

/**
 * The camera solved again from the whole sweep's line and the way its texture moved. The pictures were unrolled with a first
 * look's camera, taken while part of the line may have lain in a groove; what they measured is
 * carried over to this better one. Null when the line does not make a camera.
 */
export function finalView(
  recording: SweepRecording,
  line: LinePoints,
  turned: TurnedSoFar,
  lineInsetMm = 0,
): WheelView | null {
  const { view } = recording;
  const { pose } = view.sight.camera;
  const sight = sightFromLine(view.setup, line, {
    widthPx: pose.widthPx,
    heightPx: pose.heightPx,
    pointSdPx: POOLED_POINT_SD_PX,
    ...turned,
    isWholeSweep: true,
    lineInsetMm,
    originColumnPx: view.sight.originColumnPx,
    laserColour: view.sight.laserColour,
    lineSpreadPx: view.sight.lineSpreadPx,
  });
  return sight.ok ? createWheelView(view.setup, sight.value, view.band.tables.yStride) : null;
}

/** Heights carried from one camera's band to another's along one block's azimuth. */
export interface HeightMap {
  /** Azimuth in the new view of the block's line height. */
  readonly azimuthDeg: number;
  toNewMm(oldZMm: number): number;
}

const STEP_MM = 2;

/** The way from old to new heights at one azimuth: through the pixel in which both are seen. */
export function heightMap(from: WheelView, to: WheelView, azimuthDeg: number): HeightMap | null {
  const count = Math.round((Z_TOP_MM - Z_BOTTOM_MM) / STEP_MM) + 1;
  const table = new Float64Array(count);
  const { xMm, yMm } = roomPoint(from, azimuthDeg);
  let atLineDeg = NaN;
  for (let i = 0; i < count; i++) {
    const zMm = Z_BOTTOM_MM + i * STEP_MM;
    const point = throughPixel(
      from.sight.camera,
      to.sight.camera,
      to.setup.wheel.edgeRadiusMm,
      xMm,
      yMm,
      zMm,
    );
    if (!point) return null;
    table[i] = point.zMm;
    if (zMm === 0) atLineDeg = point.bearingDeg - to.sight.sightBearingDeg;
  }
  return {
    azimuthDeg: atLineDeg,
    toNewMm(oldZMm: number): number {
      const at = Math.max(0, Math.min(count - 1.0001, (oldZMm - Z_BOTTOM_MM) / STEP_MM));
      const i = Math.floor(at);
      return table[i] + (at - i) * (table[i + 1] - table[i]);
    },
  };
}

function throughPixel(
  from: Camera,
  to: Camera,
  radiusMm: number,
  xMm: number,
  yMm: number,
  zMm: number,
) {
  const at = new Float64Array(2);
  if (!projectPoint(from, xMm, yMm, zMm, at)) return null;
  return cylinderPointAtPixel(to, radiusMm, at[0], at[1]);
}
