import { failed, type Outcome } from '../../contract/outcome.ts';
import type { EdgeObservations } from './edgeObservations.ts';
import type { FaceLine } from './faceLine.ts';
import { pictureWays, type PictureWay } from './pictureWay.ts';
import type { WheelView } from './wheelView.ts';

/**
 * Whether the camera stood still. Laser and camera stand in the room, so the line on the rib's face
 * stays where it is in the picture; where it falls into a groove it lies higher. A good part of a
 * turn in which no picture shows the line in its place says that the camera (or the laser) moved,
 * unless the edge says that the line had to lie in the groove then. Shaking averages out.
 */

/** Part of the turn that must show the line in its place, degrees: the high side hides it for some 90°. */
const WINDOW_DEG = 150;
const WINDOW_STEP_DEG = 10;
/** Of a window's pictures this share may lie in a groove all over. */
const HIDDEN_SHARE = 0.85;
/** In a picture the lower quarter of the blocks is the face's. */
const FACE_QUANTILE = 0.75;
const MIN_BLOCKS = 3;
const MIN_PICTURES = 10;
/** The pooled line's own error and the wheel's creep stay below this, px of a picture 1280 wide. */
const MOVED_PX = 3;
/**
 * A way sideways moves the line at the flanks by a third of it, against each other: 5 px of a picture
 * 1280 wide are 0.7 mm there, which the edge's lean takes for a millimetre or a gram and a half.
 */
const MOVED_SIDEWAYS_PX = 5;
/** What is told of two stretches' ways is believed down to so many standard errors. */
const BELIEVED_ERRORS = 2;
/** Small pictures: rows are not told better than this, px. */
const MOVED_MIN_PX = 2.2;
/**
 * The same place of the wheel, seen a revolution later, stands as high as before: to so much, since
 * the wheel rocks and the turn is not yet closed, mm.
 */
const RETURN_MM = 3.5;
const RETURN_SLACK_DEG = 3;
const MIN_RETURNS = 5;

/** @param isInGroove the line's pooled place lies on a groove's floor: what of it meets the face lies beside that */
export function checkCameraStill(
  observations: EdgeObservations,
  line: FaceLine,
  view: WheelView,
  isInGroove = false,
): Outcome<never, 'camera-moved'> | null {
  const limitPx = Math.max(MOVED_MIN_PX, (MOVED_PX * view.sight.camera.pose.widthPx) / 1280);
  const expected = line.awayPx.map((off, i) => (line.expected[i] ? off : NaN));
  const seen = widestMove(observations, expected, !isInGroove);
  const any = widestMove(observations, line.awayPx, true);
  // Where the edge stands above the sheet the line lies in the groove for long: then what moved is
  // the camera only when the edge did not come back either.
  const inGroove = seen.movedPx <= limitPx && comesBack(observations);
  if (any.movedPx <= limitPx || inGroove) return checkSideways(observations, line, view);
  return failed('camera-moved', {
    movedPx: Math.round(any.movedPx * 10) / 10,
    aboutSecond: Math.round(any.atS),
  });
}

/**
 * Farthest that the line's place in one window of the turn lies from that in another, px, or from where it is
 * pooled, if these sightings belong there.
 */
function widestMove(
  observations: EdgeObservations,
  awayPx: Float32Array,
  fromPool: boolean,
): { movedPx: number; atS: number } {
  const perPicture = Float64Array.from(observations.timeS, (_, i) =>
    facePx(observations, awayPx, i),
  );
  const way = wayTurnedDeg(observations.turnDeg);
  const last = way[way.length - 1] ?? 0;
  let highest = fromPool ? 0 : -Infinity;
  let lowest = fromPool ? 0 : Infinity;
  let atS = 0;
  for (let from = 0; from + WINDOW_DEG <= last; from += WINDOW_STEP_DEG) {
    const inside = perPicture
      .filter((off, i) => off === off && way[i] >= from && way[i] < from + WINDOW_DEG)
      .sort();
    if (inside.length < MIN_PICTURES) continue;
    const off = inside[Math.floor(inside.length * HIDDEN_SHARE)];
    if (off < lowest) {
      lowest = off;
      atS = observations.timeS[way.findIndex((w) => w >= from)];
    }
    highest = Math.max(highest, off);
  }
  return { movedPx: Math.max(0, highest - lowest), atS };
}

/** Whether the edge stands as high as a revolution before; false when no revolution was completed. */
function comesBack({ heightMm, turnDeg, azimuthsDeg }: EdgeObservations): boolean {
  const blocks = azimuthsDeg.length;
  const differences: number[] = [];
  for (let i = 0; i < turnDeg.length; i++) {
    const j = turnDeg.findIndex((t) => Math.abs(Math.abs(t - turnDeg[i]) - 360) < RETURN_SLACK_DEG);
    if (j < 0) continue;
    for (let b = 0; b < blocks; b++) {
      const difference = heightMm[i * blocks + b] - heightMm[j * blocks + b];
      if (difference === difference) differences.push(Math.abs(difference));
    }
  }
  if (differences.length < MIN_RETURNS * blocks) return false;
  differences.sort((a, b) => a - b);
  return differences[differences.length >> 1] < RETURN_MM;
}

function checkSideways(
  observations: EdgeObservations,
  line: FaceLine,
  view: WheelView,
): Outcome<never, 'camera-moved'> | null {
  const way = wayTurnedDeg(observations.turnDeg);
  const limitPx = (MOVED_SIDEWAYS_PX * view.sight.camera.pose.widthPx) / 1280;
  const ways = pictureWays(observations, line, view, way);
  for (let a = 0; a + 1 < ways.length; a++) {
    for (let b = 0; b + 1 < ways.length; b++) {
      const movedPx = leastMovedPx(ways.slice(a, a + 2), ways.slice(b, b + 2));
      if (movedPx.believed <= limitPx) continue;
      return failed('camera-moved', {
        movedPx: Math.round(movedPx.told * 10) / 10,
        aboutSecond: Math.round(Math.max(ways[a].timeS, ways[b].timeS)),
      });
    }
  }
  return null;
}

/**
 * The least way to the right from any of some stretches to any of others, and what of it is believed, px. A
 * camera that moved is elsewhere in the next stretch too; what one stretch says alone is its sightings: where
 * the edge passes the sheet, whole blocks of them fall into the groove together.
 */
function leastMovedPx(
  before: readonly PictureWay[],
  after: readonly PictureWay[],
): { told: number; believed: number } {
  let least = { told: Infinity, believed: Infinity };
  for (const a of before) {
    for (const b of after) {
      const told = b.rightPx - a.rightPx;
      const believed = told - BELIEVED_ERRORS * Math.hypot(a.rightSePx, b.rightSePx);
      if (believed < least.believed) least = { told, believed };
    }
  }
  return least;
}

/** Distance of the face's line from its pooled place in one picture, px down; NaN with too few blocks. */
function facePx(observations: EdgeObservations, awayPx: Float32Array, i: number): number {
  const blocks = observations.azimuthsDeg.length;
  const offs = awayPx
    .slice(i * blocks, (i + 1) * blocks)
    .filter((off) => off === off)
    .sort();
  return offs.length >= MIN_BLOCKS ? offs[Math.floor(offs.length * FACE_QUANTILE)] : NaN;
}

/** Way turned up to each picture, back and forth added, degrees. */
function wayTurnedDeg(turnDeg: Float64Array): Float64Array {
  const way = new Float64Array(turnDeg.length);
  for (let i = 1; i < way.length; i++) way[i] = way[i - 1] + Math.abs(turnDeg[i] - turnDeg[i - 1]);
  return way;
}
