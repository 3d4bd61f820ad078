import type { PictureOverlay } from '../../contract/sweep.ts';
import { wrapHalfTurnDeg } from '../../quantities/angle.ts';
import { projectPoint } from '../geometry/camera.ts';
import { absoluteLean, treadEdgeMm, type SweepRecording } from './sweepRecording.ts';
import { roomPoint } from './wheelView.ts';

/** Lines have a point every so many degrees of azimuth. */
const OVERLAY_STEP_DEG = 4;

/**
 * Line and edge as they are known in this moment, for showing.
 *
 * @param markTurnDeg turn since the mark stood at azimuth 0, degrees; null while it is not known
 */
export function pictureOverlay(
  recording: SweepRecording,
  markTurnDeg: number | null,
): PictureOverlay {
  const { view, edgeView, edge, tilt } = recording;
  const { pose } = view.sight.camera;
  const lean = absoluteLean(recording, tilt.last);
  const azimuths = [...view.layout.azimuthsDeg];
  const reach = azimuths[azimuths.length - 1];
  const line: number[] = [];
  const rim: number[] = [];
  const rimAzimuths: number[] = [];
  const at = new Float64Array(2);
  for (let azimuth = reach; azimuth >= -reach; azimuth -= OVERLAY_STEP_DEG) {
    const { xMm, yMm } = roomPoint(view, azimuth);
    if (projectPoint(view.sight.camera, xMm, yMm, 0, at)) line.push(at[0], at[1]);
    const a = (azimuth * Math.PI) / 180;
    const gain = interpolateGain(edgeView.basis.gainMm, azimuths, azimuth);
    const z = edge.heightMm + gain * (lean.toward * Math.cos(a) + lean.across * Math.sin(a));
    const rimAt = roomPoint(edgeView, azimuth);
    if (!projectPoint(edgeView.sight.camera, rimAt.xMm, rimAt.yMm, z, at)) continue;
    rim.push(at[0], at[1]);
    rimAzimuths.push(azimuth - view.sight.asideDeg);
  }
  return {
    widthPx: pose.widthPx,
    heightPx: pose.heightPx,
    linePx: Float32Array.from(line),
    edgePx: Float32Array.from(rim),
    edgeAzimuthDeg: Float32Array.from(rimAzimuths),
    sightPx: view.sight.sightPx,
    markPx: markTurnDeg === null ? null : markNow(recording, markTurnDeg),
    laserColour: view.sight.laserColour,
  };
}

function interpolateGain(
  gainMm: Float64Array,
  azimuths: readonly number[],
  azimuth: number,
): number {
  const step = azimuths[1] - azimuths[0];
  const at = Math.max(0, Math.min(azimuths.length - 1.001, (azimuth - azimuths[0]) / step));
  const i = Math.floor(at);
  return gainMm[i] + (at - i) * (gainMm[i + 1] - gainMm[i]);
}

/** Where the tape stands in the picture, while it is in view. */
function markNow(
  recording: SweepRecording,
  markTurnDeg: number,
): { xPx: number; yPx: number } | null {
  const { view } = recording;
  const azimuth = wrapHalfTurnDeg(markTurnDeg);
  if (Math.abs(azimuth) > view.layout.azimuthsDeg[view.layout.azimuthsDeg.length - 1]) return null;
  const { xMm, yMm } = roomPoint(view, azimuth);
  const at = new Float64Array(2);
  return projectPoint(view.sight.camera, xMm, yMm, treadEdgeMm(recording) + 10, at)
    ? { xPx: at[0], yPx: at[1] }
    : null;
}
