import { failed, type Outcome } from '../../contract/outcome.ts';
import type { EdgeObservations } from './edgeObservations.ts';
import type { FaceLine } from './faceLine.ts';
import type { WheelView } from './wheelView.ts';
import { gapMm } from './gap.ts';

/**
 * Whether the camera stood still: laser and camera stand in the room, so the line on the rib's face
 * stays where it is in the picture. A picture in which all of it lies elsewhere says that something
 * moved; shaking averages out over a second, a sagging arm or a knock does not.
 */

/** The line lies in full view on the face where the edge stands so far below it, mm. */
const FACE_GAP_MM = -3;
/** Blocks that must show the face before a picture counts. */
const MIN_BLOCKS = 3;
/** Pictures are taken together over this time, s, at least so many of them. */
const WINDOW_S = 1;
const MIN_PICTURES = 6;
/** The face line's own pooled error and creep stay below this, px of a picture 1280 wide. */
const MOVED_PX = 2.2;
/** A block's row farther off than this is a reflection, px. */
const STRAY_PX = 25;

export function checkCameraStill(
  observations: EdgeObservations,
  line: FaceLine,
  view: WheelView,
): Outcome<never, 'camera-moved'> | null {
  const perPicture = Float64Array.from(observations.timeS, (_, i) => rowOff(observations, line, i));
  const known = perPicture.filter((off) => off === off).sort();
  if (known.length < MIN_PICTURES) return null;
  const usual = known[known.length >> 1];
  const limitPx = (MOVED_PX * view.sight.camera.pose.widthPx) / 1280;
  const worst = worstWindow(observations.timeS, perPicture, usual);
  if (Math.abs(worst.offPx) <= limitPx) return null;
  return failed('camera-moved', {
    movedPx: Math.round(worst.offPx * 10) / 10,
    atSecond: Math.round(worst.timeS * 10) / 10,
  });
}

/** Middle of the blocks' distances from their pooled rows in one picture, px; NaN with too few. */
function rowOff(observations: EdgeObservations, line: FaceLine, i: number): number {
  const blocks = observations.azimuthsDeg.length;
  const offs: number[] = [];
  for (let b = 0; b < blocks; b++) {
    const off = line.awayPx[i * blocks + b];
    if (Math.abs(off) < STRAY_PX && gapMm(observations, i, b) < FACE_GAP_MM) offs.push(off);
  }
  return offs.length >= MIN_BLOCKS ? offs.sort((a, b) => a - b)[offs.length >> 1] : NaN;
}

/** The second whose middle picture is farthest from the usual. */
function worstWindow(timeS: Float64Array, offPx: Float64Array, usualPx: number): { offPx: number; timeS: number } {
  let worst = { offPx: 0, timeS: timeS[0] };
  let from = 0;
  for (let i = 0; i < timeS.length; i++) {
    while (timeS[i] - timeS[from] > WINDOW_S) from++;
    const window = offPx.slice(from, i + 1).filter((off) => off === off).sort();
    if (window.length < MIN_PICTURES) continue;
    const off = window[window.length >> 1] - usualPx;
    if (Math.abs(off) > Math.abs(worst.offPx)) worst = { offPx: off, timeS: timeS[i] };
  }
  return worst;
}
