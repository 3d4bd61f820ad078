import { RAD_PER_DEG } from '../../quantities/angle.ts';
import type { SolvedSweep } from './solvedSweep.ts';

/** Places of down tilt and roll in the pose's covariance (`PoseFit`), 7×7. */
const DOWN_TILT = 1 * 7 + 1;
const ROLL = 3 * 7 + 3;

/**
 * Standard error of the lean that stays in the room, mrad: the root of the larger variance, which is
 * the one toward the camera. A rise and a lean toward the camera look much alike over the part of the
 * rim that is seen; the edge's absolute place in each block decides between them, and its doubt is in
 * the fit's covariance (`azimuthBiasSdMm`). Down tilt and roll of the camera turn the level by as much
 * as they are unknown: added in full, though line and edge share a part of it.
 */
export function standLeanSdMrad({ fit, view }: SolvedSweep): number {
  const mradPerMm = 1000 / view.setup.wheel.edgeRadiusMm;
  const mradPerDeg = 1000 * RAD_PER_DEG;
  const { covariance } = view.sight.poseFit;
  const [[c00, c01], [, c11]] = fit.standCovarianceMm2;
  const toward = c00 * mradPerMm ** 2 + covariance[DOWN_TILT] * mradPerDeg ** 2;
  const across = c11 * mradPerMm ** 2 + covariance[ROLL] * mradPerDeg ** 2;
  const both = c01 * mradPerMm ** 2;
  return Math.sqrt((toward + across) / 2 + Math.hypot((toward - across) / 2, both));
}
