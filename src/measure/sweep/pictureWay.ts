import { projectPoint } from '../geometry/camera.ts';
import type { EdgeObservations } from './edgeObservations.ts';
import type { FaceLine } from './faceLine.ts';
import { roomPoint, type WheelView } from './wheelView.ts';

/**
 * How far the picture itself moved, stretch by stretch, from the laser's line: it stands still in the
 * room, so what it seems to do the picture did. Along an arc a way down moves all rows alike, a way
 * sideways moves them by the arc's slope, left and right against each other.
 */
export interface PictureWay {
  readonly timeS: number;
  readonly rightPx: number;
  readonly downPx: number;
  /** Standard error of `rightPx`, px; `downPx` is known better. */
  readonly rightSePx: number;
}

/** Way of the wheel over which sightings are put together, and from one such stretch to the next, degrees. */
const STRETCH_DEG = 40;
const STRETCH_STEP_DEG = 20;
/** So far above the edge the line is on the rib's face for certain, mm. */
const ON_FACE_MM = 0.7;
/** Sightings of a block in a stretch, and blocks. */
const MIN_SIGHTINGS = 5;
const MIN_BLOCKS = 6;
/** Rows of a block go astray together by about this: the wheel's creep and the tread's own run-out, px of 1280. */
const BLOCK_SE_PX = 0.6;

export function pictureWays(
  observations: EdgeObservations,
  line: FaceLine,
  view: WheelView,
  wayDeg: Float64Array,
): PictureWay[] {
  const { azimuthsDeg, timeS } = observations;
  const blocks = azimuthsDeg.length;
  const slopes = azimuthsDeg.map((a) => rowsPerColumn(view, a));
  const sePx = (BLOCK_SE_PX * view.sight.camera.pose.widthPx) / 1280;
  const onFace = faceSightings(observations, view);
  const last = wayDeg[wayDeg.length - 1] ?? 0;
  const found: PictureWay[] = [];
  for (let from = 0; from < last; from += STRETCH_STEP_DEG) {
    const inside = [...wayDeg.keys()].filter(
      (i) => wayDeg[i] >= from && wayDeg[i] < from + STRETCH_DEG,
    );
    const rows = Array.from({ length: blocks }, (_, b) => {
      const seen = inside
        .filter((i) => onFace(i, b))
        .map((i) => line.awayPx[i * blocks + b])
        .filter((away) => away === away);
      return seen.length < MIN_SIGHTINGS ? NaN : middle(seen);
    });
    const way = wayOfRows(rows, slopes, sePx);
    if (way) found.push({ ...way, timeS: timeS[inside[inside.length >> 1]] });
  }
  return found;
}

/** row = down − slope·right, least squares over the blocks that were seen. */
function wayOfRows(rows: readonly number[], slopes: Float64Array, sePx: number) {
  let [n, s1, s2, r0, r1] = [0, 0, 0, 0, 0];
  rows.forEach((row, b) => {
    if (row !== row) return;
    n++;
    s1 += slopes[b];
    s2 += slopes[b] ** 2;
    r0 += row;
    r1 += slopes[b] * row;
  });
  const det = n * s2 - s1 * s1;
  if (n < MIN_BLOCKS || !(det > 1e-9)) return null;
  const rightPx = -(n * r1 - s1 * r0) / det;
  return {
    rightPx,
    downPx: (r0 + rightPx * s1) / n,
    rightSePx: sePx * Math.sqrt(n / det),
  };
}

/** Whether the line lay on the rib above the edge in a picture and block. */
function faceSightings(observations: EdgeObservations, view: WheelView) {
  const { azimuthsDeg, offsetMm, leans } = observations;
  const radiusMm = view.setup.wheel.edgeRadiusMm;
  const cos = azimuthsDeg.map((a) => Math.cos((a * Math.PI) / 180));
  const sin = azimuthsDeg.map((a) => Math.sin((a * Math.PI) / 180));
  return (i: number, b: number): boolean =>
    offsetMm + radiusMm * (leans[i].toward * cos[b] + leans[i].across * sin[b]) < -ON_FACE_MM;
}

/** Slope of the line in the picture at an azimuth, rows down a column to the right. */
function rowsPerColumn(view: WheelView, azimuthDeg: number): number {
  const at = new Float64Array(2);
  const before = roomPoint(view, azimuthDeg + 0.5);
  projectPoint(view.sight.camera, before.xMm, before.yMm, 0, at);
  const [x, y] = at;
  const after = roomPoint(view, azimuthDeg - 0.5);
  projectPoint(view.sight.camera, after.xMm, after.yMm, 0, at);
  return (at[1] - y) / (at[0] - x);
}

function middle(values: number[]): number {
  return values.sort((a, b) => a - b)[values.length >> 1];
}
