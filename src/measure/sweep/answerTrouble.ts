import { measuredResponse, type EdgeRise, type TrialSweeps } from '../../balance/response.ts';
import type { ResponseAngleJudgement } from '../../balance/responseAngle.ts';
import { failed, type Outcome } from '../../contract/outcome.ts';

/** A light weight's answer scatters by tens of degrees: only what lies so many standard errors off refuses. */
const SURE_ERRORS = 3;

/**
 * Whether the wheel answered where the weights were put. The side with the added weight sinks, by
 * nature; where it did not, the picture is mirrored, or weight or tape is elsewhere than entered. A
 * figure from such a pair of sweeps would be wrong in place and amount, however small its ±.
 */
export function answerTrouble(
  trial: TrialSweeps,
): Outcome<never, 'picture-mirrored' | 'weight-elsewhere'> | null {
  const seen = answer(trial);
  if (!seen || seen.finding === 'sound' || seen.finding === 'not-known') return null;
  if (Math.abs(seen.angleDeg) <= SURE_ERRORS * seen.standardErrorDeg) return null;
  const evidence = { answerOffDeg: Math.round(seen.angleDeg) };
  // Both sweeps mirrored, or this one alone: then it answers soundly in a mirror.
  const bothMirrored = seen.finding === 'turn-sense-wrong';
  const thisMirrored = answer({ ...trial, after: mirrored(trial.after) })?.finding === 'sound';
  return failed(bothMirrored || thisMirrored ? 'picture-mirrored' : 'weight-elsewhere', evidence);
}

function answer(trial: TrialSweeps): ResponseAngleJudgement | null {
  const measured = measuredResponse(trial);
  return measured.ok ? measured.value.angle : null;
}

/** As a mirror shows it, whose plane holds the axis and the valve. */
function mirrored({ riseMm, covarianceMm2 }: EdgeRise): EdgeRise {
  const [[a, b], [c, d]] = covarianceMm2;
  return {
    riseMm: { along0: riseMm.along0, along90: -riseMm.along90 },
    covarianceMm2: [
      [a, -b],
      [-c, d],
    ],
  };
}
