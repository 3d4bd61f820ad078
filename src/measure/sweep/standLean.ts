import { failed, type Outcome } from '../../contract/outcome.ts';
import type { RefusalCode } from '../../contract/refusals.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';
import { vectorAmount } from '../../quantities/vector.ts';
import { fitLean } from '../edge/leanFit.ts';
import type { SolvedSweep } from './solvedSweep.ts';
import type { WheelView } from './wheelView.ts';

/** Places of down tilt and roll in the pose's covariance (`PoseFit`), 7×7. */
const DOWN_TILT = 1 * 7 + 1;
const ROLL = 3 * 7 + 3;

/**
 * Standard error of the lean that stays in the room, mrad: the root of the larger variance, which is
 * the one toward the camera. A rise and a lean toward the camera look much alike over the part of the
 * rim that is seen; the edge's absolute place in each block decides between them, and its doubt is in
 * the fit's covariance (`azimuthBiasSdMm`). Down tilt and roll of the camera turn the level by as much
 * as they are unknown: added in full, though line and edge share a part of it. So is the lean that a line
 * taken to lie too deep or too shallow in a groove would show.
 */
export function standLeanSdMrad({ fit, view, lineInset }: SolvedSweep): number {
  const mradPerMm = 1000 / view.setup.wheel.edgeRadiusMm;
  const mradPerDeg = 1000 * RAD_PER_DEG;
  const { covariance } = view.sight.poseFit;
  const [[c00, c01], [, c11]] = fit.standCovarianceMm2;
  const ofDepth = lineInset.insetSdMm * leanPerInsetMrad(view);
  const toward = c00 * mradPerMm ** 2 + covariance[DOWN_TILT] * mradPerDeg ** 2 + ofDepth ** 2;
  const across = c11 * mradPerMm ** 2 + covariance[ROLL] * mradPerDeg ** 2;
  const both = c01 * mradPerMm ** 2;
  return Math.sqrt((toward + across) / 2 + Math.hypot((toward - across) / 2, both));
}

/** Any lift: what it looks like is asked, mm. */
const FREE_LIFT_MM = 100;

/**
 * Lean toward the camera that an edge seems to have when the camera is taken to stand a millimetre too
 * far off, mrad: it looks lower by κ·cos α, which is much like a lift and a lean.
 */
function leanPerInsetMrad({ basis, sightSlopes }: WheelView): number {
  const lowerMm = sightSlopes.map((slope, b) => -slope * basis.cos[b]);
  const even = new Float64Array(lowerMm.length).fill(1);
  const fit = fitLean(basis, lowerMm, even, { liftMm: 0, liftSdMm: FREE_LIFT_MM });
  return fit ? 1000 * fit.toward : 0;
}

/**
 * A plate out of level by 6 mrad already leans a lively wheel by 50: no reading is made on such a
 * stand, and a larger lean says that the edge was mistaken, not that the wheel stood so.
 */
const MAX_STAND_LEAN_MRAD = 50;
/**
 * With the sight far aside less of the rim is seen, and the lean toward the camera is told no better than to
 * 35 mrad: a lean that is not told from none by so many standard errors shows neither.
 */
const SURE_STANDARD_ERRORS = 3;

export function checkStand(solved: SolvedSweep): Outcome<never, RefusalCode> | null {
  const leanMrad = (1000 * vectorAmount(solved.fit.standMm)) / solved.view.setup.wheel.edgeRadiusMm;
  const sureMrad = SURE_STANDARD_ERRORS * standLeanSdMrad(solved);
  if (leanMrad <= Math.max(MAX_STAND_LEAN_MRAD, sureMrad)) return null;
  return failed('lean-too-large', { standLeanMrad: Math.round(leanMrad) });
}
