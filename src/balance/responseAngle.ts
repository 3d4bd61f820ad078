import { DEG_PER_RAD, shortWayDeg, wrapHalfTurnDeg } from '../quantities/angle.ts';
import {
  vectorAmount,
  vectorAngleDeg,
  type PlaneCovariance,
  type PlaneVector,
} from '../quantities/vector.ts';
import { across, varianceAlong } from './planeCovariance.ts';

/**
 * What the angle of a measured response tells about the set-up. The response is a positive number by
 * nature; an angle other than 0 is a sign, mark or sense that is not what was assumed.
 */
export type ResponseAngleFinding =
  | 'sound'
  | 'side-reversed'
  | 'turn-sense-wrong'
  | 'valve-mark-moved'
  | 'not-known';

export interface ResponseAngleJudgement {
  readonly finding: ResponseAngleFinding;
  /** arg k̂, degrees in [−180, 180). */
  readonly angleDeg: number;
  /** Standard error of the angle, degrees, at most 180. */
  readonly standardErrorDeg: number;
  /** Other findings that this angle fits as well: a trial at another place would tell them apart. */
  readonly alsoPossible: readonly ResponseAngleFinding[];
}

export const RESPONSE_ANGLE_WORDS: Readonly<Record<ResponseAngleFinding, string>> = {
  sound: 'The wheel answered where the weight was put.',
  'side-reversed':
    'The wheel answered on the opposite side: high and low, or heavy and light, are exchanged.',
  'turn-sense-wrong': 'The wheel answered as in a mirror: the sense of turning is taken wrongly.',
  'valve-mark-moved':
    'The wheel answered beside the weight: the valve mark moved, or the weight was put elsewhere.',
  'not-known': 'The weight changed too little to be seen: use a heavier one.',
};

/** A weight stuck a hand's width off or a tape off by a tread block still counts as sound, degrees. */
const SOUND_ANGLE_DEG = 20;
/** With a larger standard error than this the four findings cannot be told apart, degrees. */
const TELLING_ERROR_DEG = 40;
/** Width of the acceptance band in standard errors (95 % of a normal error). */
const BAND_SIGMAS = 2;

/**
 * Judges arg k̂ against: 0 (sound); 180° (side reversed); −2·arg W (mirror: with the turn sense
 * wrong every angle read is negated, so k̂ = k·W̄/W); anything else (mark moved). The first
 * finding within max(20°, 2 standard errors) is taken, in that order; the rest are named beside it.
 *
 * @param coefficient k̂ as a complex number, mm per g·mm
 * @param momentGmm W, wheel frame, not zero
 */
export function judgeResponseAngle(
  coefficient: PlaneVector,
  covariance: PlaneCovariance,
  momentGmm: PlaneVector,
): ResponseAngleJudgement {
  const amount = vectorAmount(coefficient);
  const angleDeg = wrapHalfTurnDeg(vectorAngleDeg(coefficient));
  if (amount === 0)
    return { finding: 'not-known', angleDeg, standardErrorDeg: 180, alsoPossible: [] };
  const sideways = Math.sqrt(varianceAlong(covariance, across(coefficient)));
  const standardErrorDeg = Math.min(180, (sideways / amount) * DEG_PER_RAD);
  if (standardErrorDeg > TELLING_ERROR_DEG) {
    return { finding: 'not-known', angleDeg, standardErrorDeg, alsoPossible: [] };
  }
  const bandDeg = Math.max(SOUND_ANGLE_DEG, BAND_SIGMAS * standardErrorDeg);
  const candidates: readonly (readonly [ResponseAngleFinding, number])[] = [
    ['sound', 0],
    ['side-reversed', 180],
    ['turn-sense-wrong', -2 * vectorAngleDeg(momentGmm)],
  ];
  const near = candidates
    .map(([finding, at]) => ({ finding, offDeg: Math.abs(shortWayDeg(at, angleDeg)) }))
    .filter(({ offDeg }) => offDeg <= bandDeg)
    .map(({ finding }) => finding);
  return {
    finding: near[0] ?? 'valve-mark-moved',
    angleDeg,
    standardErrorDeg,
    alsoPossible: near.slice(1),
  };
}
