import { RAD_PER_DEG, wrapHalfTurnDeg } from '../../../src/quantities/angle.ts';
import { riseAt } from '../../../src/measure/edge/leanFit.ts';
import { projectPoint } from '../../../src/measure/geometry/camera.ts';
import { cylinderPointAtPixel } from '../../../src/measure/geometry/cylinder.ts';
import { edgeHeightsMm } from '../../../src/measure/edge/edgeProposal.ts';
import type { SolvedGeometry, SolvedSweep } from '../../../src/measure/sweep/solvedSweep.ts';
import type { SweepRecording } from '../../../src/measure/sweep/sweepRecording.ts';
import { roomPoint, type WheelView } from '../../../src/measure/sweep/wheelView.ts';
import { interpolate, trueLean, truthAt, type FrameTruth, type StageTruth } from './frameTruth.ts';
import { spreadOf } from './series.ts';

/** What each stage said of a sweep, less its truth; one entry an observation, NaN where unknown. */
export interface StageErrors {
  readonly timeS: Float64Array;
  /** Turn of the truth, degrees: the axis of the pictures. */
  readonly turnDeg: Float64Array;
  readonly turnErrorDeg: Float64Array;
  /** Edge height read less true, over the azimuths of one picture: mean, and root mean square, mm. */
  readonly edgeMeanMm: Float64Array;
  readonly edgeRmsMm: Float64Array;
  /** Row of the followed edge less that of the true one, mean over azimuths, px down. */
  readonly edgePx: Float64Array;
  /** Row of the line less the sheet on the rib's face, where it lands there, mean, px down. */
  readonly linePx: Float64Array;
  /** Fitted tilt (stand, wheel and rocking) less the true one, mrad. */
  readonly towardMrad: Float64Array;
  readonly acrossMrad: Float64Array;
  /** Root mean square of the fit's residual in one picture, mm. */
  readonly residualMm: Float64Array;
  /** Azimuth of the nominal tread's pixels less the true one, at each true azimuth, degrees. */
  readonly azimuthErrorDeg: readonly number[];
  /** Row of the pooled line on the face less its true mean row, by block, px down. */
  readonly pooledLinePx: Float64Array;
  /** True azimuth of each block, degrees. */
  readonly trueAzimuthDeg: Float64Array;
  /** True edge heights at the blocks; observations × blocks, mm. */
  readonly trueHeightMm: Float32Array;
  readonly truth: readonly (FrameTruth | null)[];
}

/** A line that lands this near to the rib's face lies on it, px. */
const ON_FACE_PX = 0.6;
/** The edge is looked for in the sweep's template within this of its place, mm. */
const EDGE_REACH_MM = 3;

export function stageErrors(
  recording: SweepRecording,
  geometry: SolvedGeometry,
  solved: SolvedSweep,
  truth: StageTruth,
): StageErrors {
  const { observations, fit, view } = solved;
  const n = observations.timeS.length;
  const blocks = observations.azimuthsDeg.length;
  const frames = Array.from(observations.timeS, (t) => truthAt(truth, t));
  const map = azimuthMap(view, truth);
  const trueAzimuthDeg = observations.azimuthsDeg.map((a) =>
    interpolate(map.readDeg, truth.azimuthsDeg, a),
  );
  const series = () => new Float64Array(n).fill(NaN);
  const out = {
    turnDeg: series(),
    turnErrorDeg: series(),
    edgeMeanMm: series(),
    edgeRmsMm: series(),
    edgePx: edgeRowErrors(recording, geometry, solved, frames),
    linePx: lineRowErrors(recording, solved, frames),
    towardMrad: series(),
    acrossMrad: series(),
    residualMm: series(),
  };
  const trueHeightMm = new Float32Array(n * blocks).fill(NaN);
  for (let i = 0; i < n; i++) {
    const frame = frames[i];
    if (!frame) continue;
    out.turnDeg[i] = frame.turnDeg;
    out.turnErrorDeg[i] = wrapHalfTurnDeg(observations.turnDeg[i] - frame.turnDeg);
    const miss: number[] = [];
    for (let b = 0; b < blocks; b++) {
      const trueMm = interpolate(truth.azimuthsDeg, frame.edgeHeightMm, trueAzimuthDeg[b]);
      trueHeightMm[i * blocks + b] = trueMm;
      miss.push(observations.heightMm[i * blocks + b] - trueMm);
    }
    out.edgeMeanMm[i] = spreadOf(miss).mean;
    out.edgeRmsMm[i] = spreadOf(miss).rms;
    const lean = trueLean(frame);
    const turn = observations.turnDeg[i] * RAD_PER_DEG;
    const { standMm, tiltMm, rockingMm } = fit;
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    const perMrad = observations.edgeRadiusMm / 1000;
    out.towardMrad[i] =
      (standMm.along0 + tiltMm.along0 * c - tiltMm.along90 * s + rockingMm[2 * i]) / perMrad -
      1000 * lean.toward;
    out.acrossMrad[i] =
      (standMm.along90 + tiltMm.along0 * s + tiltMm.along90 * c + rockingMm[2 * i + 1]) / perMrad -
      1000 * lean.across;
    out.residualMm[i] = spreadOf(fit.residualMm.subarray(i * blocks, (i + 1) * blocks)).rms;
  }
  return {
    timeS: observations.timeS,
    ...out,
    azimuthErrorDeg: map.readDeg.map((read, q) => read - truth.azimuthsDeg[q]),
    pooledLinePx: pooledLineErrors(geometry, truth),
    trueAzimuthDeg,
    trueHeightMm,
    truth: frames,
  };
}

/** Azimuth that the program gives to the pixels in which the face's line stands, by true azimuth. */
function azimuthMap(view: WheelView, truth: StageTruth): { readDeg: number[] } {
  const radiusMm = view.setup.wheel.edgeRadiusMm;
  const readDeg = truth.azimuthsDeg.map((_, q) => {
    const [x, y] = meanPixel(truth.frames, q);
    const point = cylinderPointAtPixel(view.sight.camera, radiusMm, x, y);
    return point ? wrapHalfTurnDeg(point.bearingDeg - view.sight.sightBearingDeg) : NaN;
  });
  return { readDeg };
}

function meanPixel(frames: readonly FrameTruth[], q: number): [number, number] {
  let [x, y] = [0, 0];
  for (const frame of frames) {
    x += frame.lineOnFacePx[q][0] / frames.length;
    y += frame.lineOnFacePx[q][1] / frames.length;
  }
  return [x, y];
}

function rowAt(points: readonly (readonly [number, number])[], xPx: number): number {
  return interpolate(
    points.map((p) => p[0]),
    points.map((p) => p[1]),
    xPx,
  );
}

/** The sweep's own template tells where the edge stands; every block's shift carries it. */
function edgeRowErrors(
  recording: SweepRecording,
  geometry: SolvedGeometry,
  solved: SolvedSweep,
  frames: readonly (FrameTruth | null)[],
): Float64Array {
  const { refined } = geometry;
  const { view, edge, tilt } = recording;
  const expected = Float64Array.from(
    view.layout.azimuthsDeg,
    (_, b) => edge.heightMm + riseAt(tilt.basis, edge.lean, b),
  );
  const edges = edgeHeightsMm(refined.template, expected, EDGE_REACH_MM);
  const blocks = expected.length;
  const at = new Float64Array(2);
  return Float64Array.from(frames, (frame, i) => {
    if (!frame) return NaN;
    const misses: number[] = [];
    for (let b = 0; b < blocks; b++) {
      const shift = refined.shiftMm[solved.observations.frameIndex[i] * blocks + b];
      const { xMm, yMm } = roomPoint(view, view.layout.azimuthsDeg[b]);
      if (!projectPoint(view.sight.camera, xMm, yMm, edges[b] + shift, at)) continue;
      misses.push(at[1] - rowAt(frame.edgePx, at[0]));
    }
    return spreadOf(misses).mean;
  });
}

function lineRowErrors(
  recording: SweepRecording,
  solved: SolvedSweep,
  frames: readonly (FrameTruth | null)[],
): Float64Array {
  const { blockOfColumn, curvePx } = recording.lineWatch;
  const blocks = recording.view.layout.azimuthsDeg.length;
  const columns = Array.from({ length: blocks }, (_, b) =>
    Math.round((blockOfColumn.indexOf(b) + blockOfColumn.lastIndexOf(b)) / 2),
  );
  return Float64Array.from(frames, (frame, i) => {
    if (!frame) return NaN;
    const { lineOffsetPx } = recording.frames[solved.observations.frameIndex[i]];
    const misses = columns.map((x, b) => {
      const landed = x >= 0 ? rowAt(frame.linePx, x + 0.5) : NaN;
      const face = x >= 0 ? rowAt(frame.lineOnFacePx, x + 0.5) : NaN;
      return Math.abs(landed - face) < ON_FACE_PX ? curvePx[x] + lineOffsetPx[b] - face : NaN;
    });
    return spreadOf(misses).mean;
  });
}

function pooledLineErrors(geometry: SolvedGeometry, truth: StageTruth): Float64Array {
  const mean = truth.azimuthsDeg.map((_, q) => meanPixel(truth.frames, q));
  const { xPx, yPx } = geometry.line.points;
  return Float64Array.from(xPx, (x, i) => yPx[i] - rowAt(mean, x));
}
