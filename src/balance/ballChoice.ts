import { failed, succeeded } from '../contract/outcome.ts';
import { ballBehaviour, type BallBehaviour, type WheelOnBall } from './ballBehaviour.ts';
import type { BalanceFailureCode, BalanceOutcome } from './failures.ts';
import { NOT_NEGATIVE, rejectNumbers } from './inputs.ts';

export type BallFinding = 'good' | 'dull' | 'tall-order' | 'touchy' | 'tips-over' | 'through-bore';

interface RankedBall {
  readonly ballDiameterMm: number;
  readonly finding: BallFinding;
  readonly reason: string;
  /** Null where the wheel does not stand on it. */
  readonly behaviour: BallBehaviour | null;
}

export interface BallChoice {
  /** Best first. */
  readonly ranked: readonly RankedBall[];
  /** Null when the wheel stands safely on none of them. */
  readonly recommended: RankedBall | null;
}

export interface BallWishes {
  /** How well d is known, mm; the wheel must stand with three of these to spare. */
  readonly centreDepthSdMm: number;
  /** Smallest weight that should be seen, g. */
  readonly weightStepG: number;
  /** Largest unbalance that must not run out of the picture, g·mm. */
  readonly expectedUnbalanceGmm: number;
}

/** R/h above this makes a level plate a day's work (practice: four to ten times). */
const AMPLIFICATION_MAX = 10;
/** Rocking slower than this takes too long to settle, s (practice: 3 to 8 s). */
const PERIOD_MAX_S = 8;
/** One weight step must lift the edge by this to be plain to the eye too, mm. */
const PLAIN_RISE_MM = 1;
/** Depths are trusted within this many of their standard deviations. */
const SAFE_SIGMAS = 3;

const REASONS: Readonly<Record<BallFinding, string>> = {
  good: 'Steady, and one weight step is plain to see.',
  dull: 'Very steady, but one weight step lifts the edge by less than a millimetre.',
  'tall-order': 'The wheel may lean out of the picture before weights are on.',
  touchy: 'Stands, but barely: slow to settle and fussy about a level plate.',
  'tips-over': 'The centre of mass lies above the ball’s centre: the wheel will not stand.',
  'through-bore': 'The ball is no larger than the bore: the wheel falls over it.',
};

const ORDER: readonly BallFinding[] = [
  'good',
  'dull',
  'tall-order',
  'touchy',
  'tips-over',
  'through-bore',
];
/** Balls that are worth a try at all. */
const USABLE: readonly BallFinding[] = ['good', 'dull', 'tall-order'];

/**
 * The balls on hand, best first: those that are steady and show a weight step plainly, the
 * liveliest (largest rise per gram) leading; then dull ones, those that lean too far and touchy
 * ones, and last those on which the wheel does not stand.
 */
export function chooseBall(
  wheel: WheelOnBall,
  ballDiametersMm: readonly number[],
  wishes: BallWishes,
): BalanceOutcome<BallChoice> {
  const bad = rejectNumbers({
    centreDepthSdMm: [wishes.centreDepthSdMm, NOT_NEGATIVE],
    weightStepG: [wishes.weightStepG, NOT_NEGATIVE],
    expectedUnbalanceGmm: [wishes.expectedUnbalanceGmm, NOT_NEGATIVE],
  });
  if (bad) return bad;
  if (ballDiametersMm.length === 0) return failed('no-balls', {});
  const ranked: RankedBall[] = [];
  for (const ballDiameterMm of ballDiametersMm) {
    const outcome = ballBehaviour(wheel, ballDiameterMm);
    const notStanding = outcome.ok ? undefined : NOT_STANDING[outcome.failure.code];
    if (!outcome.ok && !notStanding) return outcome;
    const behaviour = outcome.ok ? outcome.value : null;
    const finding = behaviour ? findingOf(behaviour, wishes) : notStanding!;
    ranked.push({ ballDiameterMm, finding, reason: REASONS[finding], behaviour });
  }
  ranked.sort(betterBall);
  const best = ranked[0]!;
  return succeeded({ ranked, recommended: USABLE.includes(best.finding) ? best : null });
}

/** Failures that are a finding about the ball and not about a value entered. */
const NOT_STANDING: Partial<Record<BalanceFailureCode, BallFinding>> = {
  'wheel-tips-over': 'tips-over',
  'ball-through-bore': 'through-bore',
};

function findingOf(ball: BallBehaviour, wishes: BallWishes): BallFinding {
  const touchy =
    ball.pendulumDepthMm < SAFE_SIGMAS * wishes.centreDepthSdMm ||
    ball.slopeAmplification > AMPLIFICATION_MAX ||
    ball.rockingPeriodS > PERIOD_MAX_S;
  if (touchy) return 'touchy';
  if (ball.largestUnbalanceGmm < wishes.expectedUnbalanceGmm) return 'tall-order';
  return ball.risePerGramMm * wishes.weightStepG < PLAIN_RISE_MM ? 'dull' : 'good';
}

/** By finding; among equals the livelier, and the steadier where the lean is the trouble. */
function betterBall(a: RankedBall, b: RankedBall): number {
  const byFinding = ORDER.indexOf(a.finding) - ORDER.indexOf(b.finding);
  if (byFinding !== 0) return byFinding;
  if (!a.behaviour || !b.behaviour) return 0;
  const livelier = b.behaviour.risePerGramMm - a.behaviour.risePerGramMm;
  return a.finding === 'good' || a.finding === 'dull' ? livelier : -livelier;
}
