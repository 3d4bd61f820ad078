import { failed, succeeded } from '../contract/outcome.ts';
import { shortWayDeg } from '../quantities/angle.ts';
import {
  divideAsComplex,
  multiplyAsComplex,
  subtractVectors,
  vectorAmount,
  vectorAngleDeg,
  vectorFromPolar,
  type PlaneCovariance,
  type PlaneVector,
} from '../quantities/vector.ts';
import type { BalanceOutcome } from './failures.ts';
import {
  DIRECTION_DEG,
  NOT_NEGATIVE,
  POSITIVE,
  rejectCovariances,
  rejectNumbers,
  rejectVectors,
} from './inputs.ts';
import { addCovariances, covarianceTimesComplex } from './planeCovariance.ts';

export interface IndexedSweep {
  readonly unbalanceGmm: PlaneVector;
  readonly covarianceGmm2: PlaneCovariance;
}

export interface TyreAndRim {
  /** Part that stays with the rim (and valve), g·mm, wheel frame. */
  readonly rimGmm: PlaneVector;
  readonly rimCovarianceGmm2: PlaneCovariance;
  /** Part that goes with the tyre, as it lay in the FIRST sweep, g·mm. */
  readonly tyreGmm: PlaneVector;
  readonly tyreCovarianceGmm2: PlaneCovariance;
  /** Turn of the tyre on the rim from the first position that leaves the least, [−180, 180). */
  readonly bestTurnDeg: number;
  /** The same from where the tyre lies now, after the index turn. */
  readonly turnFromNowDeg: number;
  /** What is left then, without any weight. */
  readonly leastGmm: number;
  /** Weight saved at the weight radius against the better of the two positions tried, g. */
  readonly savedG: number;
}

/** The error grows as 1/(2·sin(δ/2)): nearly sixfold here, degrees. */
const INDEX_TURN_MIN_DEG = 10;

/**
 * Index test: U₁ = P + T before and U₂ = P + T·e^{iδ} after turning the tyre by δ on the rim, so
 * T = (U₂ − U₁)/(e^{iδ} − 1), P = U₁ − T = (U₁·e^{iδ} − U₂)/(e^{iδ} − 1). At δ = 180° these are half
 * the difference and half the sum. Least is ||P| − |T||, with the tyre's heavy spot on the rim's
 * light spot. Source: ISO 21940-14, index balancing; any turn by complex algebra.
 *
 * @param tyreTurnDeg δ, clockwise seen from above as the wheel lies
 */
export function tyreAndRim(
  first: IndexedSweep,
  second: IndexedSweep,
  tyreTurnDeg: number,
  weightRadiusMm: number,
): BalanceOutcome<TyreAndRim> {
  const bad =
    rejectVectors({ first: first.unbalanceGmm, second: second.unbalanceGmm }) ??
    rejectCovariances({ first: first.covarianceGmm2, second: second.covarianceGmm2 }) ??
    rejectNumbers({
      tyreTurnDeg: [tyreTurnDeg, DIRECTION_DEG],
      weightRadiusMm: [weightRadiusMm, POSITIVE],
    });
  if (bad) return bad;
  if (Math.abs(shortWayDeg(0, tyreTurnDeg)) < INDEX_TURN_MIN_DEG) {
    return failed('tyre-turn-too-small', { tyreTurnDeg });
  }
  const turned = vectorFromPolar(1, tyreTurnDeg);
  const perTurn = divideAsComplex(
    { along0: 1, along90: 0 },
    subtractVectors(turned, { along0: 1, along90: 0 }),
  );
  const change = subtractVectors(second.unbalanceGmm, first.unbalanceGmm);
  const tyreGmm = multiplyAsComplex(change, perTurn);
  const rimGmm = subtractVectors(first.unbalanceGmm, tyreGmm);
  const ofSecond = covarianceTimesComplex(second.covarianceGmm2, perTurn);
  const tyreOfFirst = covarianceTimesComplex(first.covarianceGmm2, perTurn);
  const rimOfFirst = covarianceTimesComplex(
    first.covarianceGmm2,
    multiplyAsComplex(perTurn, turned),
  );
  const bestTurnDeg = shortWayDeg(vectorAngleDeg(tyreGmm), vectorAngleDeg(rimGmm) + 180);
  const leastGmm = Math.abs(vectorAmount(rimGmm) - vectorAmount(tyreGmm));
  const tried = Math.min(vectorAmount(first.unbalanceGmm), vectorAmount(second.unbalanceGmm));
  return succeeded({
    rimGmm,
    rimCovarianceGmm2: addCovariances(rimOfFirst, ofSecond),
    tyreGmm,
    tyreCovarianceGmm2: addCovariances(tyreOfFirst, ofSecond),
    bestTurnDeg,
    turnFromNowDeg: shortWayDeg(tyreTurnDeg, bestTurnDeg),
    leastGmm,
    savedG: Math.max(0, tried - leastGmm) / weightRadiusMm,
  });
}

/** From this much weight on it pays to try the tyre elsewhere on the rim, g (common practice). */
const INDEX_TEST_FROM_G = 60;

/** Whether to suggest an index test for a weight asked for. */
export function suggestsIndexTest(wantedG: number): BalanceOutcome<boolean> {
  const bad = rejectNumbers({ wantedG: [wantedG, NOT_NEGATIVE] });
  if (bad) return bad;
  return succeeded(wantedG > INDEX_TEST_FROM_G);
}
