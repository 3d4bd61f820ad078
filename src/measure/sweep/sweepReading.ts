import { correctionAtLightSpot } from '../../balance/correction.ts';
import { addCovariances, outerCovariance } from '../../balance/planeCovariance.ts';
import {
  measuredResponse,
  modelResponse,
  type EdgeRise,
  type Response,
} from '../../balance/response.ts';
import { runOutSdMm } from '../../balance/runOutAllowance.ts';
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
  type PlaneVector,
} from '../../quantities/vector.ts';
import { heightScaleRelativeSd } from '../geometry/heightScale.ts';
import { answerTrouble } from './answerTrouble.ts';
import { readingWarnings } from './readingWarnings.ts';
import { coveredDeg, senseOf } from './sweepChecks.ts';
import type { SolvedSweep } from './solvedSweep.ts';
import type { SweepRecording } from './sweepRecording.ts';

/** From the fitted tilt to heavy spot, weight and what is left, with an honest ± on each. */

/** The tape's middle is found to a fraction of a degree; a hand sticks it on to about this, degrees. */
const MARK_SD_DEG = 0.4;

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
  const rise = riseOf(solved);
  const response = responseOf(setup, rise, options.earlier);
  if (!response.ok) return response;
  const runOut = runOutSdMm();
  if (!runOut.ok) return failed('setup-invalid', { problem: 'run-out allowance' });
  const unbalance = unbalanceFromRise({ rise, response: response.value, runOutSdMm: runOut.value });
  if (!unbalance.ok) return failed('setup-invalid', { problem: unbalance.failure.code });
  const correction = correctionAtLightSpot(unbalance.value.unbalanceGmm, {
    weightStepG: setup.weightStepG,
    weightRadiusMm: setup.wheel.weightRadiusMm,
  });
  if (!correction.ok) return failed('setup-invalid', { problem: correction.failure.code });
  const { fit, closure } = solved;
  const covered = coveredDeg(recording.turn.turnDeg) * closure.scale;
  const sense = senseOf(recording.turn.turnDeg);
  const warnings = readingWarnings(setup, sense, options.mayMirror ?? false);
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
      tilt: {
        edgeRiseMm: vectorAmount(rise.riseMm),
        highSpotDeg: vectorAngleDeg(rise.riseMm),
        standMrad: (1000 * vectorAmount(fit.standMm)) / setup.wheel.edgeRadiusMm,
        standHighAzimuthDeg: wrapTurnDeg(vectorAngleDeg(fit.standMm) - solved.view.sight.asideDeg),
        covarianceMm2: rise.covarianceMm2,
      },
      unbalance: {
        amountGmm: unbalance.value.amountGmm,
        heavySpotDeg: unbalance.value.heavySpotDeg,
        lightSpotDeg: unbalance.value.lightSpotDeg,
        covarianceGmm2: unbalance.value.covarianceGmm2,
        ci95: { amountGmm: unbalance.value.ci95.amount, angleDeg: unbalance.value.ci95.angleDeg },
      },
      response: response.value,
      correction: correction.value.weights,
      residualGmm: correction.value.residualAmountGmm,
    },
    contributionsG: contributions(setup, solved, response.value, runOut.value, unbalance.value),
  });
}

/** The fitted rise with what the fit cannot know: the height scale and where the mark stands. */
function riseOf(solved: SolvedSweep): EdgeRise {
  const { fit, closure, view } = solved;
  const scaleSd = heightScaleRelativeSd(view.sight.poseFit, view.setup.wheel.edgeRadiusMm);
  const angleSd = Math.hypot(MARK_SD_DEG, closure.standardErrorDeg) * RAD_PER_DEG;
  const acrossRise: PlaneVector = { along0: -fit.tiltMm.along90, along90: fit.tiltMm.along0 };
  return {
    riseMm: fit.tiltMm,
    covarianceMm2: addCovariances(
      fit.tiltCovarianceMm2,
      addCovariances(
        outerCovariance(fit.tiltMm, scaleSd ** 2),
        outerCovariance(acrossRise, angleSd ** 2),
      ),
    ),
  };
}

/**
 * The response measured by the weights added since an earlier sweep, else by the formula; also by the
 * formula where the weights changed too little to measure anything by.
 */
function responseOf(
  setup: SweepSetup,
  rise: EdgeRise,
  earlier: AcceptedReading | undefined,
): Outcome<Response, RefusalCode> {
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
    if (measured.value.angle.finding !== 'not-known') return succeeded(measured.value.response);
  }
  const model = modelResponse({
    massKg: setup.wheel.massKg,
    edgeRadiusMm: setup.wheel.edgeRadiusMm,
    pendulumDepthMm: setup.stand.pendulumDepthMm,
  });
  return model.ok ? model : failed('setup-invalid', { problem: model.failure.code });
}

function contributions(
  setup: SweepSetup,
  solved: SolvedSweep,
  response: Response,
  runOutMm: number,
  unbalance: Unbalance,
): Record<string, number> {
  const perMm = 1 / (response.mmPerGmm * setup.wheel.weightRadiusMm);
  const amountG = unbalance.amountGmm / setup.wheel.weightRadiusMm;
  const [[c00], [, c11]] = solved.fit.tiltCovarianceMm2;
  const scaleSd = heightScaleRelativeSd(solved.view.sight.poseFit, setup.wheel.edgeRadiusMm);
  return {
    'reading and rocking': Math.sqrt((c00 + c11) / 2) * perMm,
    'height scale': amountG * scaleSd,
    mark: amountG * MARK_SD_DEG * RAD_PER_DEG,
    response: (amountG * response.standardError) / response.mmPerGmm,
    'run-out allowance': runOutMm * perMm,
  };
}
