import { projectPoint } from '../geometry/camera.ts';
import type { EdgeObservations } from './edgeObservations.ts';
import type { SweepRecording } from './sweepRecording.ts';
import type { creepWay } from './wheelMotion.ts';
import { roomPoint, type WheelView } from './wheelView.ts';

/** Wider gaps land on another rib, whose crown is not this one's slope, mm. */
const MAX_GAP_MM = 25;

/**
 * With its edge so far below the sheet a block shows the line on the rib above it, mm: the sheet's own
 * width and the edge's rounding. With the edge above the sheet the line lies in the groove, or is
 * hidden behind the rib.
 */
const ON_FACE_MM = 1;

/** So far the edge of a rib goes up and down by itself within {@link ON_FACE_MM}, two standard deviations, mm. */
const EVEN_MM = 1;

/**
 * Whether the line is on the face with its edge at this height above the sheet; where blocks step up
 * and down, on that of the higher ones as well.
 */
export function isExpected(gapMm: number, unevenMm: number): boolean {
  return gapMm < -ON_FACE_MM - Math.max(0, 2 * unevenMm - EVEN_MM);
}

/** Sightings of the line in one block. */
export interface LineSamples {
  /** Index of each sighting's observation. */
  readonly at: number[];
  /** Row below the first look's curve, px; what the wheel's own way moves it, px; gap, mm. One entry a sighting. */
  readonly rowPx: Float64Array;
  readonly movedPx: Float64Array;
  readonly gapMm: Float64Array;
  readonly pxPerOutwardMm: number;
}

export function samplesOf(
  recording: SweepRecording,
  observations: EdgeObservations,
  view: WheelView,
  way: ReturnType<typeof creepWay>,
  block: number,
): LineSamples {
  const azimuthDeg = observations.azimuthsDeg[block];
  const [cos, sin] = [
    Math.cos((azimuthDeg * Math.PI) / 180),
    Math.sin((azimuthDeg * Math.PI) / 180),
  ];
  const pxPerOutwardMm = rowsPerOutwardMm(view, azimuthDeg);
  const at: number[] = [];
  const rowPx: number[] = [];
  const movedPx: number[] = [];
  const gapMm: number[] = [];
  for (let i = 0; i < observations.timeS.length; i++) {
    const row = recording.frames[observations.frameIndex[i]].lineOffsetPx[block];
    if (row !== row) continue;
    const lean = observations.leans[i];
    const towardHere = lean.toward * cos + lean.across * sin;
    const gap = observations.offsetMm + view.setup.wheel.edgeRadiusMm * towardHere;
    if (Math.abs(gap) > MAX_GAP_MM) continue;
    // At the sheet's own height the face swings inward by lean times height above the ball.
    const outwardMm = way.toward[i] * cos + way.across[i] * sin - view.lineAboveBallMm * towardHere;
    at.push(i);
    rowPx.push(row);
    movedPx.push(outwardMm * pxPerOutwardMm);
    gapMm.push(gap);
  }
  return {
    at,
    rowPx: Float64Array.from(rowPx),
    movedPx: Float64Array.from(movedPx),
    gapMm: Float64Array.from(gapMm),
    pxPerOutwardMm,
  };
}

/** Rows down the picture for a millimetre that the lit point comes out toward the camera. */
export function rowsPerOutwardMm(view: WheelView, azimuthDeg: number): number {
  const at = new Float64Array(2);
  const { xMm, yMm } = roomPoint(view, azimuthDeg);
  const radiusMm = view.setup.wheel.edgeRadiusMm;
  projectPoint(view.sight.camera, xMm, yMm, 0, at);
  const [x0, y0] = at;
  projectPoint(
    view.sight.camera,
    (xMm * (radiusMm + 1)) / radiusMm,
    (yMm * (radiusMm + 1)) / radiusMm,
    0,
    at,
  );
  const [x1, y1] = at;
  // The moved point appears in another column; rows are compared in one, along the line's own slope.
  const step = 0.5;
  const beside = roomPoint(view, azimuthDeg + step);
  projectPoint(view.sight.camera, beside.xMm, beside.yMm, 0, at);
  const rowsPerColumn = (at[1] - y0) / (at[0] - x0);
  return y1 - y0 - (x1 - x0) * rowsPerColumn;
}

/** Rows as they would be with the wheel upright, in its mean place, the sheet at the edge's height. */
export function uprightRows(s: LineSamples, crownSlope: number): Float64Array {
  return s.rowPx.map((row, i) => row - s.movedPx[i] - crownSlope * s.gapMm[i] * s.pxPerOutwardMm);
}
