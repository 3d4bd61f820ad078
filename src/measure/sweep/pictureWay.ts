import { projectPoint } from '../geometry/camera.ts';
import type { EdgeObservations } from './edgeObservations.ts';
import type { FaceLine } from './faceLine.ts';
import { deviationAboutZero } from './unevenEdge.ts';
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
/**
 * Rows of a block go astray together by about this: the wheel's creep and the tread's own run-out, px of 1280.
 * Beside that counts how far its sightings lie apart: where the edge steps from block to block, or stands
 * but just below the line, some of them fell into the groove.
 */
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
      if (seen.length < MIN_SIGHTINGS) return null;
      const rowPx = middle(seen);
      const apartPx = deviationAboutZero(seen.map((row) => row - rowPx));
      return { rowPx, sePx: Math.hypot(sePx, apartPx) };
    });
    const way = wayOfRows(rows, slopes);
    if (way) found.push({ ...way, timeS: timeS[inside[inside.length >> 1]] });
  }
  return found;
}

interface BlockRow {
  readonly rowPx: number;
  readonly sePx: number;
}

/** row = down − slope·right, weighted least squares over the blocks that were seen. */
function wayOfRows(rows: readonly (BlockRow | null)[], slopes: Float64Array) {
  let [n, w0, w1, w2, r0, r1] = [0, 0, 0, 0, 0, 0];
  rows.forEach((row, b) => {
    if (!row) return;
    const weight = 1 / row.sePx ** 2;
    n++;
    w0 += weight;
    w1 += weight * slopes[b];
    w2 += weight * slopes[b] ** 2;
    r0 += weight * row.rowPx;
    r1 += weight * slopes[b] * row.rowPx;
  });
  const det = w0 * w2 - w1 * w1;
  if (n < MIN_BLOCKS || !(det > 1e-9 * w0 * w0)) return null;
  const rightPx = -(w0 * r1 - w1 * r0) / det;
  return { rightPx, downPx: (r0 + rightPx * w1) / w0, rightSePx: Math.sqrt(w0 / det) };
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
