import { addCovariances, outerCovariance } from '../../balance/planeCovariance.ts';
import type { EdgeRise } from '../../balance/response.ts';
import { RAD_PER_DEG } from '../../quantities/angle.ts';
import type { PlaneVector } from '../../quantities/vector.ts';
import type { TiltFit } from '../fit/tiltFit.ts';

/**
 * The fitted rise with what the fit cannot know: the scale of the heights stretches it along itself,
 * the valve's mark turns it.
 *
 * @param scaleRelativeSd standard deviation of the height scale, as a part of it
 * @param markSdDeg standard deviation of the wheel angle's zero, degrees
 */
export function edgeRise(
  fit: Pick<TiltFit, 'tiltMm' | 'tiltCovarianceMm2'>,
  scaleRelativeSd: number,
  markSdDeg: number,
): EdgeRise {
  const { tiltMm, tiltCovarianceMm2 } = fit;
  const across: PlaneVector = { along0: -tiltMm.along90, along90: tiltMm.along0 };
  return {
    riseMm: tiltMm,
    covarianceMm2: addCovariances(
      tiltCovarianceMm2,
      addCovariances(
        outerCovariance(tiltMm, scaleRelativeSd ** 2),
        outerCovariance(across, (markSdDeg * RAD_PER_DEG) ** 2),
      ),
    ),
  };
}
