import { failed, type Outcome } from '../../contract/outcome.ts';
import type { EdgeObservations } from './edgeObservations.ts';
import type { FaceLine } from './faceLine.ts';
import type { WheelView } from './wheelView.ts';

/**
 * Whether the camera stood still. Laser and camera stand in the room, so the line on the rib's face
 * stays where it is in the picture; where it falls into a groove it lies higher, but never for
 * long, since the wheel's low side comes round with every turn. A good part of a turn in which no
 * picture shows the line in its place says that the camera (or the laser) moved. Shaking averages
 * out.
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
/** Small pictures: rows are not told better than this, px. */
const MOVED_MIN_PX = 2.2;
/** What a groove 8 mm deep does to the line where it cannot be told from the face, px of a picture 1280 wide. */
const GROOVE_PX = 10;

export function checkCameraStill(
  observations: EdgeObservations,
  line: FaceLine,
  view: WheelView,
): Outcome<never, 'camera-moved'> | null {
  const perPicture = Float64Array.from(observations.timeS, (_, i) => facePx(observations, line, i));
  const perWidth = view.sight.camera.pose.widthPx / 1280;
  const groovePx = line.expectedOnly ? 0 : GROOVE_PX * perWidth;
  const limitPx = Math.max(MOVED_MIN_PX, MOVED_PX * perWidth) + groovePx;
  const way = wayTurnedDeg(observations.turnDeg);
  const last = way[way.length - 1] ?? 0;
  let highest = 0;
  let lowest = 0;
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
  if (highest - lowest <= limitPx) return null;
  return failed('camera-moved', {
    movedPx: Math.round((highest - lowest) * 10) / 10,
    aboutSecond: Math.round(atS),
  });
}

/** Distance of the face's line from its pooled place in one picture, px down; NaN with too few blocks. */
function facePx(observations: EdgeObservations, line: FaceLine, i: number): number {
  const blocks = observations.azimuthsDeg.length;
  const offs = line.awayPx
    .slice(i * blocks, (i + 1) * blocks)
    .filter((off) => off === off)
    .sort();
  return offs.length >= MIN_BLOCKS ? offs[Math.floor(offs.length * FACE_QUANTILE)] : NaN;
}

/** Way turned up to each picture, back and forth added, degrees. */
export function wayTurnedDeg(turnDeg: Float64Array): Float64Array {
  const way = new Float64Array(turnDeg.length);
  for (let i = 1; i < way.length; i++) way[i] = way[i - 1] + Math.abs(turnDeg[i] - turnDeg[i - 1]);
  return way;
}
