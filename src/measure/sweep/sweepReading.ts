import { correctionAtLightSpot } from '../../balance/correction.ts';
import { addCovariances } from '../../balance/planeCovariance.ts';
import {
  measuredResponse,
  modelResponse,
  type EdgeRise,
  type Response,
} from '../../balance/response.ts';
import type { ResponseAngleJudgement } from '../../balance/responseAngle.ts';
import { unbalanceFromRise, type Unbalance } from '../../balance/unbalance.ts';
import type { AcceptedReading } from '../../contract/reading.ts';
import { failed, succeeded, type Outcome } from '../../contract/outcome.ts';
import type { RefusalCode } from '../../contract/refusals.ts';
import type { SweepReaderOptions } from '../../contract/sweep.ts';
import type { SweepSetup } from '../../contract/setup.ts';
import { RAD_PER_DEG, wrapTurnDeg } from '../../quantities/angle.ts';
import {
  vectorAmount,
  vectorAngleDeg,
  vectorFromPolar,
  type PlaneCovariance,
} from '../../quantities/vector.ts';
import { answerTrouble } from './answerTrouble.ts';
import { edgeRise } from './edgeRise.ts';
import { followedEdge, isOnBandAlone } from './followedEdge.ts';
import { MARK_SD_DEG, scaleRelativeSd } from './heightErrors.ts';
import { viewOfEdge } from './observedEdge.ts';
import { readingWarnings, swayWarnings, warningOf } from './readingWarnings.ts';
import { runOutOf, wholeRunOutSdMm, type RunOutSd } from './runOutOf.ts';
import { standLeanSdMrad } from './standLean.ts';
import { coveredDeg, senseOf } from './sweepChecks.ts';
import type { SolvedSweep } from './solvedSweep.ts';
import type { SweepRecording } from './sweepRecording.ts';
import { UNEVEN_MM } from './unevenEdge.ts';

/** From the fitted tilt to heavy spot, weight and what is left, with an honest ± on each. */

export interface ReadingParts {
  readonly reading: AcceptedReading;
  /** Contributions to the unbalance vector's standard error, g at the weight radius. */
  readonly contributionsG: Readonly<Record<string, number>>;
}

export function sweepReading(
  recording: SweepRecording,
  solved: SolvedSweep,
  options: SweepReaderOptions,
): Outcome<ReadingParts, RefusalCode> {
  const { setup } = recording.view;
  const { fit, closure } = solved;
  const scaleSd = scaleOf(solved);
  const rise = edgeRise(withEdgePlace(solved), scaleSd, markSdDeg(solved));
  const responded = responseOf(setup, rise, options.earlier);
  if (!responded.ok) return responded;
  const { response, answer } = responded.value;
  const runOut = runOutOf(viewOfEdge(solved, solved.view), isOnBandAlone(solved.refined));
  if (runOut === null) return failed('setup-invalid', { problem: 'run-out allowance' });
  const unbalance = unbalanceFromRise({ rise, response, runOutSdMm: wholeRunOutSdMm(runOut) });
  if (!unbalance.ok) return failed('setup-invalid', { problem: unbalance.failure.code });
  const correction = correctionAtLightSpot(unbalance.value.unbalanceGmm, {
    weightStepG: setup.weightStepG,
    weightRadiusMm: setup.wheel.weightRadiusMm,
  });
  if (!correction.ok) return failed('setup-invalid', { problem: correction.failure.code });
  const covered = coveredDeg(recording.turn.turnDeg) * closure.scale;
  const sense = senseOf(recording.turn.turnDeg);
  const warnings = [
    ...readingWarnings(setup, sense, options, answer),
    ...(solved.edge.isAssumed ? [warningOf('edge-assumed')] : []),
    ...(solved.lineInset.insetMm > 0 ? [warningOf('line-in-groove')] : []),
    ...(isOnBandAlone(solved.refined) ? [warningOf('band-alone')] : []),
    ...(solved.edge.outline ? [warningOf('outline-alone')] : []),
    ...swayWarnings(solved.fit.sway),
  ];
  return succeeded({
    reading: {
      format: 'tiltsweep.reading/1',
      status: 'ok',
      refusals: [],
      ...(warnings.length > 0 ? { warnings } : {}),
      turn: {
        coveredDeg: covered,
        sense,
        closureDeg: closure.closureDeg,
      },
      edge: followedEdge(recording, solved),
      tilt: {
        edgeRiseMm: vectorAmount(rise.riseMm),
        highSpotDeg: vectorAngleDeg(rise.riseMm),
        standMrad: (1000 * vectorAmount(fit.standMm)) / setup.wheel.edgeRadiusMm,
        standHighAzimuthDeg: wrapTurnDeg(vectorAngleDeg(fit.standMm) - solved.view.sight.asideDeg),
        standMradStandardError: standLeanSdMrad(solved),
        covarianceMm2: rise.covarianceMm2,
      },
      unbalance: {
        amountGmm: unbalance.value.amountGmm,
        heavySpotDeg: unbalance.value.heavySpotDeg,
        lightSpotDeg: unbalance.value.lightSpotDeg,
        covarianceGmm2: unbalance.value.covarianceGmm2,
        ci95: { amountGmm: unbalance.value.ci95.amount, angleDeg: unbalance.value.ci95.angleDeg },
      },
      response,
      correction: correction.value.weights,
      residualGmm: correction.value.residualAmountGmm,
    },
    contributionsG: contributions(setup, solved, response, runOut, unbalance.value),
  });
}

function scaleOf({ view, edge, refined, lineInset }: SolvedSweep): number {
  return scaleRelativeSd(view, edge, refined.unevenMm > UNEVEN_MM, lineInset.insetSdMm);
}

/** The fit, with what the place of an edge that was only assumed adds. */
function withEdgePlace({ fit, edgePlaceMm2 }: SolvedSweep): Parameters<typeof edgeRise>[0] {
  const { tiltMm, tiltCovarianceMm2 } = fit;
  if (!edgePlaceMm2) return fit;
  return { tiltMm, tiltCovarianceMm2: addCovariances(tiltCovarianceMm2, edgePlaceMm2) };
}

/** How far the valve itself may be from where the turn was counted from, one standard deviation, degrees. */
function markSdDeg({ closure }: SolvedSweep): number {
  return Math.hypot(MARK_SD_DEG, closure.standardErrorDeg);
}

interface Responded {
  readonly response: Response;
  /** What the wheel's answer to the added weights said of the sign; null where none was seen. */
  readonly answer: ResponseAngleJudgement | null;
}

/**
 * The response measured by the weights added since an earlier sweep, else by the formula; also by the
 * formula where the weights changed too little to measure anything by.
 */
function responseOf(
  setup: SweepSetup,
  rise: EdgeRise,
  earlier: AcceptedReading | undefined,
): Outcome<Responded, RefusalCode> {
  if (setup.after) {
    if (!earlier) return failed('earlier-sweep-missing', { earlierSweep: setup.after.sweep });
    const before: EdgeRise = {
      riseMm: vectorFromPolar(earlier.tilt.edgeRiseMm, earlier.tilt.highSpotDeg),
      covarianceMm2: earlier.tilt.covarianceMm2,
    };
    const measured = measuredResponse({ before, after: rise, added: setup.after.added });
    if (!measured.ok)
      return failed('setup-invalid', { where: 'after.added', problem: measured.failure.code });
    const trouble = answerTrouble({ before, after: rise, added: setup.after.added });
    if (trouble) return trouble;
    const { response, angle } = measured.value;
    if (angle.finding !== 'not-known') return succeeded({ response, answer: angle });
  }
  const model = modelResponse({
    massKg: setup.wheel.massKg,
    edgeRadiusMm: setup.wheel.edgeRadiusMm,
    pendulumDepthMm: setup.stand.pendulumDepthMm,
  });
  if (!model.ok) return failed('setup-invalid', { problem: model.failure.code });
  return succeeded({ response: model.value, answer: null });
}

function contributions(
  setup: SweepSetup,
  solved: SolvedSweep,
  response: Response,
  runOut: RunOutSd,
  unbalance: Unbalance,
): Record<string, number> {
  const perMm = 1 / (response.mmPerGmm * setup.wheel.weightRadiusMm);
  const amountG = unbalance.amountGmm / setup.wheel.weightRadiusMm;
  const { edgePlaceMm2 } = solved;
  const placeName = solved.edge.outline ? 'creep beside the outline' : 'place of the edge';
  const [[c00], [, c11]] = solved.fit.tiltCovarianceMm2;
  const readSdMm = readingSdMm(solved);
  const scaleSd = scaleOf(solved);
  return {
    'reading noise': readSdMm * perMm,
    rocking: Math.sqrt(Math.max(0, (c00 + c11) / 2 - readSdMm ** 2)) * perMm,
    'height scale': amountG * scaleSd,
    mark: amountG * markSdDeg(solved) * RAD_PER_DEG,
    response: (amountG * response.standardError) / response.mmPerGmm,
    'run-out allowance': runOut.lateralSdMm * perMm,
    'radial run-out allowance': runOut.radialSdMm * perMm,
    ...(edgePlaceMm2 ? { [placeName]: meanSdMm(edgePlaceMm2) * perMm } : {}),
    ...(runOut.bandSdMm > 0 ? { 'band allowance': runOut.bandSdMm * perMm } : {}),
  };
}

/** Standard deviation of a component, as the mean of both. */
function meanSdMm([[c00], [, c11]]: PlaneCovariance): number {
  return Math.sqrt((c00 + c11) / 2);
}

/**
 * What the heights alone would leave of each component of the rise, mm, were nothing rocking and all
 * else known: √(2/Σ 1/σ²), with the factor by which planes scatter more than their heights say.
 */
function readingSdMm({ fit, observations }: SolvedSweep): number {
  const { heightMm, standardErrorMm } = observations;
  let information = 0;
  for (let i = 0; i < heightMm.length; i++) {
    if (heightMm[i] === heightMm[i]) information += 1 / standardErrorMm[i] ** 2;
  }
  const scale = Math.max(fit.whiteScale, fit.planeScale);
  return information > 0 ? scale * Math.sqrt(2 / information) : 0;
}
