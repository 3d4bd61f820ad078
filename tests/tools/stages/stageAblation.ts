import { RAD_PER_DEG } from '../../../src/quantities/angle.ts';
import {
  scaleVector,
  subtractVectors,
  vectorAmount,
  vectorFromPolar,
  type PlaneVector,
} from '../../../src/quantities/vector.ts';
import { modelResponse } from '../../../src/balance/response.ts';
import { fitTilt } from '../../../src/measure/fit/fitTilt.ts';
import type { SolvedSweep } from '../../../src/measure/sweep/solvedSweep.ts';
import { creepWay } from '../../../src/measure/sweep/wheelMotion.ts';
import { cylinderPointAtPixel, sightSlope } from '../../../src/measure/geometry/cylinder.ts';
import type { SolvedGeometry } from '../../../src/measure/sweep/solvedSweep.ts';
import type { SweepRecording } from '../../../src/measure/sweep/sweepRecording.ts';
import { placeBlocks } from '../../../src/measure/sweep/templatePlace.ts';
import { plainTiltMm } from './plainFit.ts';
import { interpolate, trueLean, type StageTruth } from './frameTruth.ts';
import { spreadOf, straightLine } from './series.ts';
import type { StageErrors } from './stageErrors.ts';

/** What one stage contributes: the sweep fitted again with that stage replaced by its truth. */
export interface StageShare {
  readonly stage: string;
  /** Change of the unbalance vector when replaced, g at the weight radius. */
  readonly contributesG: number;
  /** Error that is left then, g. */
  readonly leftG: number;
}

type Observations = SolvedSweep['observations'];

/**
 * Every stage alone replaced by its truth. The contributions are vectors and may cancel: they do
 * not add up to the whole error. The response is the formula's throughout.
 */
export function stageShares(
  recording: SweepRecording,
  geometry: SolvedGeometry,
  solved: SolvedSweep,
  errors: StageErrors,
  truth: StageTruth,
): { readonly errorG: number; readonly shares: readonly StageShare[] } {
  const { setup } = solved.view;
  const model = modelResponse({
    massKg: setup.wheel.massKg,
    edgeRadiusMm: setup.wheel.edgeRadiusMm,
    pendulumDepthMm: setup.stand.pendulumDepthMm,
  });
  if (!model.ok) throw new Error('no response from the setup');
  const perMm = -1 / (model.value.mmPerGmm * setup.wheel.weightRadiusMm);
  const trueG = scaleVector(
    vectorFromPolar(truth.unbalance.amountGmm, truth.unbalance.heavySpotDeg),
    1 / setup.wheel.weightRadiusMm,
  );
  const read = scaleVector(solved.fit.tiltMm, perMm);
  const shares = replacements(recording, geometry, solved, errors, truth).map(
    ([stage, replaced]) => {
      const tiltMm = stage === 'rocking' ? plainTiltMm(replaced) : fittedTiltMm(replaced);
      const again = tiltMm ? scaleVector(tiltMm, perMm) : { along0: NaN, along90: NaN };
      return {
        stage,
        contributesG: vectorAmount(subtractVectors(read, again)),
        leftG: vectorAmount(subtractVectors(again, trueG)),
      };
    },
  );
  const trueResponse = truth.edge.riseMm / truth.unbalance.amountGmm;
  const withTrue = scaleVector(read, model.value.mmPerGmm / trueResponse);
  const response: StageShare = {
    stage: 'response',
    contributesG: vectorAmount(subtractVectors(read, withTrue)),
    leftG: vectorAmount(subtractVectors(withTrue, trueG)),
  };
  return {
    errorG: vectorAmount(subtractVectors(read, trueG)),
    shares: truth.unbalance.amountGmm > 0 ? [...shares, response] : shares,
  };
}

function fittedTiltMm(observations: Observations): PlaneVector | null {
  const fit = fitTilt(observations);
  return fit.ok ? fit.value.tiltMm : null;
}

function replacements(
  recording: SweepRecording,
  geometry: SolvedGeometry,
  solved: SolvedSweep,
  errors: StageErrors,
  truth: StageTruth,
): [string, Observations][] {
  const { observations } = solved;
  const tapeDeg = spreadOf(errors.turnErrorDeg).mean;
  const turnDeg = observations.turnDeg.map((t, i) => t - known(errors.turnErrorDeg[i]));
  const withTrueAzimuths = {
    ...observations,
    azimuthsDeg: observations.azimuthsDeg.map((a, b) => errors.trueAzimuthDeg[b] || a),
  };
  const heightMm = errors.trueHeightMm;
  return [
    ['tape', { ...observations, turnDeg: observations.turnDeg.map((t) => t - tapeDeg) }],
    ['turn', { ...observations, turnDeg: turnDeg.map((t) => t + tapeDeg) }],
    ['azimuth map', withTrueAzimuths],
    ['height scale', withTrueScale(observations, errors)],
    ['creep', withTrueCreep(observations, solved, errors)],
    ['edge rows', withTrueRows(recording, geometry, solved, errors, truth)],
    ['edge heights', { ...observations, heightMm }],
    ['rocking', withoutRocking(observations, errors)],
    ['all but the fit', { ...withTrueAzimuths, heightMm, turnDeg }],
  ];
}

/**
 * The rows in which the true edge appears, taken through the program's own camera, creep and gain:
 * what is left is the fault of those.
 */
function withTrueRows(
  recording: SweepRecording,
  geometry: SolvedGeometry,
  solved: SolvedSweep,
  errors: StageErrors,
  truth: StageTruth,
): Observations {
  const { observations, view } = solved;
  const radiusMm = observations.edgeRadiusMm;
  const { blocks } = placeBlocks(recording, geometry.refined, view);
  const way = creepWay(
    observations.leans,
    observations.turnDeg,
    view.setup.stand.ballDiameterMm / 2,
  );
  const heightMm = observations.heightMm.map((h, at) => {
    const i = Math.floor(at / blocks.length);
    const b = at % blocks.length;
    const frame = errors.truth[i];
    if (!frame) return NaN;
    const xPx = interpolate(
      truth.azimuthsDeg,
      frame.edgePx.map((p) => p[0]),
      errors.trueAzimuthDeg[b],
    );
    const yPx = interpolate(
      truth.azimuthsDeg,
      frame.edgePx.map((p) => p[1]),
      errors.trueAzimuthDeg[b],
    );
    const point = cylinderPointAtPixel(view.sight.camera, radiusMm, xPx, yPx);
    if (!point || h !== h) return NaN;
    const a = blocks[b].azimuthDeg * RAD_PER_DEG;
    const outwardMm = way.toward[i] * Math.cos(a) + way.across[i] * Math.sin(a);
    const seenMm = point.zMm - observations.offsetMm + blocks[b].slope * outwardMm;
    // The edge itself stands on the nominal tread, at its own height over the ball.
    const gainMm = radiusMm + blocks[b].slope * (view.lineAboveBallMm + observations.offsetMm);
    return observations.offsetMm + (seenMm * radiusMm) / gainMm;
  });
  return { ...observations, heightMm };
}

const known = (value: number): number => (value === value ? value : 0);

/** Heights with the gain that a straight line through read and true ones asks for. */
function withTrueScale(observations: Observations, errors: StageErrors): Observations {
  const scale = heightScaleRead(observations, errors);
  const middle = spreadOf(observations.heightMm).mean;
  return {
    ...observations,
    heightMm: observations.heightMm.map((h) => middle + (h - middle) / scale),
  };
}

/** Height read for each millimetre of true height, each azimuth about its own mean. */
export function heightScaleRead(observations: Observations, errors: StageErrors): number {
  const blocks = observations.azimuthsDeg.length;
  const read: number[] = [];
  const real: number[] = [];
  for (let b = 0; b < blocks; b++) {
    const at = Array.from(observations.timeS, (_, i) => i * blocks + b).filter(
      (k) =>
        observations.heightMm[k] === observations.heightMm[k] &&
        errors.trueHeightMm[k] === errors.trueHeightMm[k],
    );
    const readMean = spreadOf(at.map((k) => observations.heightMm[k])).mean;
    const realMean = spreadOf(at.map((k) => errors.trueHeightMm[k])).mean;
    for (const k of at) {
      read.push(observations.heightMm[k] - readMean);
      real.push(errors.trueHeightMm[k] - realMean);
    }
  }
  return straightLine(real, read).slope;
}

/** The sideways way taken out again as the true leans and the true turn would have it. */
function withTrueCreep(
  observations: Observations,
  solved: SolvedSweep,
  errors: StageErrors,
): Observations {
  const { view } = solved;
  const radiusMm = observations.edgeRadiusMm;
  const ballMm = view.setup.stand.ballDiameterMm / 2;
  const leans = errors.truth.map((frame, i) =>
    frame ? { liftMm: 0, ...trueLean(frame) } : observations.leans[i],
  );
  const turns = observations.turnDeg.map((t, i) => t - known(errors.turnErrorDeg[i]));
  const ours = creepWay(observations.leans, observations.turnDeg, ballMm);
  const real = creepWay(leans, turns, ballMm);
  const blocks = observations.azimuthsDeg.length;
  return {
    ...observations,
    heightMm: observations.heightMm.map((h, at) => {
      const i = Math.floor(at / blocks);
      const azimuthDeg = observations.azimuthsDeg[at % blocks];
      const a = azimuthDeg * RAD_PER_DEG;
      const slope = sightSlope(
        view.sight.camera,
        radiusMm,
        azimuthDeg + view.sight.sightBearingDeg,
        0,
      );
      const more =
        (real.toward[i] - ours.toward[i]) * Math.cos(a) +
        (real.across[i] - ours.across[i]) * Math.sin(a);
      return h + slope * more;
    }),
  };
}

function withoutRocking(observations: Observations, errors: StageErrors): Observations {
  const blocks = observations.azimuthsDeg.length;
  return {
    ...observations,
    heightMm: observations.heightMm.map((h, at) => {
      const frame = errors.truth[Math.floor(at / blocks)];
      const a = observations.azimuthsDeg[at % blocks] * RAD_PER_DEG;
      const [toward, across] = frame?.tiltRockingMrad ?? [0, 0];
      const riseMm = toward * Math.cos(a) + across * Math.sin(a);
      return h - (riseMm * observations.edgeRadiusMm) / 1000;
    }),
  };
}
